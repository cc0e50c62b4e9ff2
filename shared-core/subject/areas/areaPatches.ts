import type { SubjectAreaId } from './subjectAreas.ts'

/** A vertex of the subject's asset, as the asset has it. */
export interface PatchCorner {
  /** Its part in the area's place on the facet; the three add up to 1. */
  readonly weight: number
  readonly position: readonly [number, number, number]
  readonly normal: readonly [number, number, number]
  /** Index into `meshMaterials`. */
  readonly material: number
  /** Directions in which the subject stands in its own light, as in asset/selfShadow.ts: 32 words of eight hexadecimal digits. */
  readonly shadow: string
}

/** The facet on which a named area lies; the heaviest corner first. */
export type AreaPatch = readonly [PatchCorner, PatchCorner, PatchCorner]

/**
 * What the subject's asset has at each named area. Made by tests/derivations/areaPatches.ts, so that the numbers need no
 * mesh and yet stand on the picture's own surface.
 */
export const areaPatches: Readonly<Record<SubjectAreaId, AreaPatch>> = {
  'nose': [
    {
      weight: 0.5345, position: [-0.000697192387, -0.118199043, 1.58346081], normal: [-0.0974674821, -0.986821175, 0.129166633],
      material: 0,
      shadow:
        '0000000000000000000000000000000000000000000000000000000000000000' +
        '0000000000000000000000000000000000000000000000000000000000000000' +
        'ff000000fff80000ffffffc0fffffff8fffffff8fffffffcfffffffcfffffffc' +
        'fffffffcfffffffefffffffefffffffefffffffefffffffe7ffffffe7ffffffe',
    },
    {
      weight: 0.3951, position: [0.000804532494, -0.118183143, 1.58348322], normal: [0.122417226, -0.982679248, 0.139124289],
      material: 0,
      shadow:
        '8000000100000001000000030000000300000003000000030000000100000001' +
        '000000010000000100000001000000010000000000000000000000000000000e' +
        '000000ff00000fff00001fff1ffeffff1fffffff3fffffff3fffffff7fffffff' +
        '7fffffff7fffffffffffffffffffffffffffffffffffffffffffffffffffffff',
    },
    {
      weight: 0.0704, position: [0.000768082857, -0.118151337, 1.58120584], normal: [0.111730747, -0.979106069, -0.169904605],
      material: 0,
      shadow:
        '0000000000000000000000000000000000000000000000000000000000000000' +
        '0000000000000000000000000000000000000000000000000003ffe0003ffff8' +
        '03ffffff07ffffff07ffffff1ffffffe1ffffffe1ffffffe1ffffffe1ffffffe' +
        '1ffffffe1ffffffc1ffffffc3ffffffc3ffffffc3ffffffc3ffffffc7ffffffe',
    },
  ],
  'lips': [
    {
      weight: 0.3858, position: [0.000571254874, -0.105502084, 1.54572856], normal: [0.0841398761, -0.993638456, -0.0748535395],
      material: 1,
      shadow:
        '0000000000000000000000000000000000000000000000000000000000000000' +
        '00000000000000000000000000000000000180000003c0000007e000001fffb0' +
        '007fffff007fffff07ffffff1fffffff1fffffff1ffffffe1ffffffe1ffffffe' +
        '3ffffffe3ffffffe3ffffffe3ffffffc3ffffffc3ffffffc7ffffffe7ffffffe',
    },
    {
      weight: 0.3508, position: [-0.00062429317, -0.105490163, 1.54561698], normal: [-0.0531716384, -0.995384097, -0.0798952132],
      material: 1,
      shadow:
        '0000000000000000000000000000000000000000000000000000000000000000' +
        '00000000000000000000000000000000000180000003c0000007e00001fff800' +
        '00fffc007fffffe07ffffffc7ffffffc7ffffffc7ffffffc7ffffffc7ffffffc' +
        '7ffffffc3ffffffc3ffffffc3ffffffc3ffffffc3ffffffc7ffffffe7ffffffe',
    },
    {
      weight: 0.2634, position: [-0.00000464936784, -0.105593517, 1.54786074], normal: [0.0223889574, -0.962111771, 0.271734476],
      material: 1,
      shadow:
        'c000000380000003800000018000000180000001800000018000000100000001' +
        '000000010000000100000001000000000003c0000003c0000007e000007ffe00' +
        '03ffffc007fffff63ffffffe3fffffff7fffffff7fffffffffffffffffffffff' +
        'ffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff',
    },
  ],
  'neck': [
    {
      weight: 0.4774, position: [0.000892011623, -0.0447006039, 1.47451735], normal: [0.0622869395, -0.98694092, -0.14855288],
      material: 0,
      shadow:
        'c0000003c0000003800000018000000180000001800000010000000000018000' +
        '0003c0000007e000000ff000000ff000001ff800001ff800003ffc00003ff800' +
        '00ffffff0fffffff3fffffff3fffffff3fffffff3ffffffe7ffffffc7ffffffc' +
        'fffffffdfffffffdfffffffffffffffffffffffbffffffffffffffffffffffff',
    },
    {
      weight: 0.4499, position: [-0.00112729811, -0.0445614681, 1.47374701], normal: [-0.0794829801, -0.982889533, -0.166164413],
      material: 0,
      shadow:
        'c0000003c0000003800000018000000180000001800000010000000000018000' +
        '0003c0000007e000000ff000000ff000001ff800001ff800003ffc000ffff800' +
        'ffffffe0fffffffcfffffffc7ffffffc7ffffffc7ffffffc7ffffffa7ffffffa' +
        'fffffffbfffffffbfffffffbfffffffbfffffffbfffffffffffffffffffffff7',
    },
    {
      weight: 0.0727, position: [0.00111799932, -0.0442911498, 1.47227347], normal: [0.0759577528, -0.977689087, -0.195842877],
      material: 0,
      shadow:
        'c0000003c0000003800000018000000180000001800000010000000000000000' +
        '0003c0000007e0000007f000000ff000001ff800001ff800003ff800007fff80' +
        '03ffffff0fffffff3fffffff3fffffff3fffffff1ffffffe7ffffffc7ffffffc' +
        'fffffffdfffffff9fffffffbfffffffbeffffffbeffffff7effffff7effffff7',
    },
  ],
  'hair': [
    {
      weight: 0.4981, position: [-0.00125122687, -0.0478490032, 1.73972595], normal: [-0.138955936, -0.449183166, 0.882567704],
      material: 3,
      shadow:
        'ffc003ffff8001ffff8000ffff00007fff00007ffe00003ffe00001ffc00001f' +
        'fc00000ff8000007f0000003f0000003e0000001e0000000c0000000c0000000' +
        'c0000000f0000000f8000000fc000003ff00001fff80003fffc000ffffe003ff' +
        'fff003fffffc1ffffffe7fffffffffffffffffffffffffffffffffffffffffff',
    },
    {
      weight: 0.2638, position: [0.00124192808, -0.0454956517, 1.74097621], normal: [0.0454443209, -0.433235854, 0.900134146],
      material: 3,
      shadow:
        'ff8001ffff0000ffff0000ffff00007ffe0000fffc00003ffc00003ff800001f' +
        'f000001fe000000fe000000fc000000780000007000000030000000100000001' +
        '00000001000000038000000fc000001ff800007ffe0000ffff0003ffffc007ff' +
        'fff00ffffff83ffffffe7fffffffffffffffffffffffffffffffffffffffffff',
    },
    {
      weight: 0.2381, position: [0.00124921801, -0.0478967056, 1.73978174], normal: [0.047258988, -0.457290202, 0.888060987],
      material: 3,
      shadow:
        'ff8001ffff0000ffff0000fffe00007ffc00007ffc00003ff800003ff800001f' +
        'f000000ff000000fe00000078000000380000003000000010000000000000000' +
        '000000000000000100000007c000000ff800003ffe0000ffff0001ffffe007ff' +
        'fff00ffffffc1ffffffe7fffffffffffffffffffffffffffffffffffffffffff',
    },
  ],
  'breastbone': [
    {
      weight: 0.4997, position: [-0.00162301317, -0.0477655232, 1.39361632], normal: [-0.0144287841, -0.999636352, 0.0227822922],
      material: 0,
      shadow:
        'c0000003c0000003c0000003c0000003c0000003c0000003c000000380000001' +
        '800000018000000100000000000000000003c0000003c0000007e000000ff000' +
        'e1ffffc0fffffffe7ffffffc7ffffffc7ffffffd7ffffffd7ffffffd7ffffffd' +
        '7ffffffe7ffffffe7fffffff7ffffffffffffffdfffffffdbffffffdbffffffd',
    },
    {
      weight: 0.3858, position: [0.00162100431, -0.0477655232, 1.39361632], normal: [0.0165030807, -0.999578953, 0.0238659941],
      material: 0,
      shadow:
        'c0000003c0000003c0000003c0000003c0000003c0000003c000000380000001' +
        '800000018000000100000000000000000003c0000003c0000007e000000ff000' +
        '03ffffdf01ffffff3fffffff3fffffffbfffffffbfffffffbfffffff3fffffff' +
        '7ffffffe7ffffffe7fffffff7fffffffffffffffbfffffffbffffffdbffffffd',
    },
    {
      weight: 0.1145, position: [0.00162100431, -0.0477138422, 1.39652991], normal: [0.00873358827, -0.999871075, 0.0134746786],
      material: 0,
      shadow:
        'c0000003c0000003c0000003c0000003c0000003c0000003c000000380000001' +
        '800000018000000100000000000000000003c0000003c0000007e000000ff000' +
        '07ffffdf01ffffff3fffffff3fffffffbfffffffbfffffffbfffffff3fffffff' +
        '7ffffffe7ffffffe7fffffff7fffffffffffffffbfffffffbffffffdbffffffd',
    },
  ],
  'cheek-left': [
    {
      weight: 0.889, position: [-0.052390065, -0.0722888559, 1.59102964], normal: [-0.707195461, -0.705774665, 0.0419131406],
      material: 0,
      shadow:
        '0000000080000000c0000000e0000000f0000000f8000000f8000000fc000000' +
        'fe000000ff000000ff800000ffc00000ffc00000fff00000fff80000fffc0000' +
        'fffe0000ffff0000ffff8000ffffc000ffffc000ffffe000fffff000fffff800' +
        'fffffe00ffffff00ffffff8cfffffffefffffffefffffffefffffffeffffffff',
    },
    {
      weight: 0.0766, position: [-0.0524265133, -0.0723405331, 1.58887506], normal: [-0.715365529, -0.698672533, 0.0104331383],
      material: 0,
      shadow:
        '000000000000000000000000c0000000e0000000f8000000fc000000fe000000' +
        'ff000000ff800000ffc00000ffe00000fff00000fff80000fffc0000fffe0000' +
        'ffff0000ffff8000ffff8000ffffc000ffffc000ffffe000fffff000fffff800' +
        'fffffc00fffffe00ffffff0cffffff9effffffdefffffffefffffffeffffffff',
    },
    {
      weight: 0.0344, position: [-0.0509320796, -0.0737278983, 1.58914304], normal: [-0.649747491, -0.75973165, 0.0252193082],
      material: 0,
      shadow:
        '00000000000000000000000080000000c0000000e0000000f0000000f8000000' +
        'fc000000fe000000ff800000ffc00000ffc00000fff00000fff80000fffc0000' +
        'fffe0000ffff8000ffff8000ffffc000ffffe000fffff800fffffc00fffffe00' +
        'ffffff00ffffff80ffffffccfffffffefffffffefffffffefffffffeffffffff',
    },
  ],
  'cheek-right': [
    {
      weight: 0.889, position: [0.0523880534, -0.0722888559, 1.59102964], normal: [0.7050969, -0.707241118, 0.0514617115],
      material: 0,
      shadow:
        '0000000000000001000000070000000f0000001f0000001f0000001f0000003f' +
        '0000007f000000ff000000ff000007ff000007ff00000fff00001fff00003fff' +
        '00007fff0000ffff0003ffff0003ffff0007ffff0007ffff000fffff001fffff' +
        '007fffff00ffffff31ffffff77ffffff7fffffff7fffffff7fffffffffffffff',
    },
    {
      weight: 0.0771, position: [0.0524317957, -0.0723405331, 1.58887506], normal: [0.713235378, -0.700630367, 0.0203081258],
      material: 0,
      shadow:
        '000000000000000100000003000000070000000f0000001f0000001f0000007f' +
        '000000ff000001ff000002ff000007ff00000fff00001fff00003fff00007fff' +
        '00007fff0000ffff0003ffff0003ffff0007ffff0007ffff000fffff001fffff' +
        '007fffff00ffffff31ffffff7fffffff7fffffff7fffffff7fffffffffffffff',
    },
    {
      weight: 0.0339, position: [0.0509300679, -0.0737278983, 1.58914304], normal: [0.646961212, -0.76177305, 0.0338096209],
      material: 0,
      shadow:
        '0000000000000000000000030000000500000003000000070000000f0000001f' +
        '0000003f0000007f000000ff000003ff000007ff00000fff00001fff00003fff' +
        '00007fff0000ffff0003ffff0003ffff0007ffff001fffff003fffff007fffff' +
        '00ffffff01ffffff33ffffff7fffffff7fffffff7fffffff7fffffffffffffff',
    },
  ],
  'jaw-left': [
    {
      weight: 0.5579, position: [-0.0511143245, -0.0295866933, 1.55288434], normal: [-0.945466101, -0.205267921, -0.252901047],
      material: 0,
      shadow:
        'c0030003c00f8003c07f8001c3ff8001bfff8000ffffc000ffffc000ffffc000' +
        'ffffc000ffffc000ffffe000ffffe000ffffe000fffff000fffff000fffff000' +
        'fffff000fffff000fffff000fffff000ffffd000ffffd000ffffd000ffffd000' +
        'ffffd000fffff007fffff00ffffff00ffffff81ffffffc3fffffec7ffffff2ff',
    },
    {
      weight: 0.4405, position: [-0.0501520559, -0.031661775, 1.55088603], normal: [-0.944496751, -0.150699556, -0.291916907],
      material: 0,
      shadow:
        'c0010003c00f8003c07f8001c03f800187ffc000ffffc000ffffc000ffffc000' +
        'ffffc000ffffc000ffffe000ffffe000ffffe000fffff000fffff000fffff000' +
        'fffff000fffff000fffff000fffff000fffff000fffff000ffffd000fffff000' +
        'fffff000fffff007fffff00ffffff00ffffff01ffffff83ffffff87ffffffdff',
    },
    {
      weight: 0.0016, position: [-0.0505675822, -0.0290420838, 1.55041718], normal: [-0.930052996, -0.246575475, -0.272400439],
      material: 0,
      shadow:
        'c0010003c00f0003c07f8001c3ff8001bfff8000ffffc000ffffc000ffffc000' +
        'ffffc000ffffc000ffffc000ffffe000ffffe000ffffe000fffff000fffff000' +
        'fffff000fffff000fffff000fffff000ffffd000ffffd000ffffd000ffffd000' +
        'ffffd000fffff007fffff00ffffff00ffffff81ffffff83fffffe47ffffff0ff',
    },
  ],
  'jaw-right': [
    {
      weight: 0.5577, position: [0.0511196069, -0.0295866933, 1.55288434], normal: [0.94625628, -0.20704703, -0.248456433],
      material: 0,
      shadow:
        'c000c003c001f0038001fe038001ffc30001ffff0003ffff0003ffff0003ffff' +
        '0003ffff0003ffff0007ffff0007ffff0007ffff000fffff000fffff000fffff' +
        '000fffff000fffff000fffff000fffff000fffff000fffff000fffff000bffff' +
        '000fffffe00ffffff00ffffff00ffffff81ffffffc3bfffffe33ffffff47ffff',
    },
    {
      weight: 0.4407, position: [0.050150048, -0.031661775, 1.55088603], normal: [0.9451949, -0.154089451, -0.28785944],
      material: 0,
      shadow:
        'c0008003c001f0038001fe038001fca30003ffe10003ffff0003ffff0003ffff' +
        '0003ffff0003ffff0007ffff0007ffff0007ffff000fffff000fffff000fffff' +
        '000fffff000fffff000fffff000fffff000fffff000fffff000bffff000fffff' +
        '000fffffe00ffffff00ffffff00ffffff80ffffffc1ffffffe1fffffffbfffff',
    },
    {
      weight: 0.0016, position: [0.0505655743, -0.0290420838, 1.55041718], normal: [0.930385888, -0.249305218, -0.268754572],
      material: 0,
      shadow:
        'c0008003c000f0038001fe038001ffe30001ffff0003ffff0003ffff0003ffff' +
        '0003ffff0003ffff0003ffff0007ffff0007ffff0007ffff000fffff000fffff' +
        '000fffff000fffff000fffff000fffff000fffff000fffff000fffff000bffff' +
        '000fffffe00ffffff00ffffff00ffffff81ffffffc13fffffe23ffffff07ffff',
    },
  ],
  'rear-jaw-left': [
    {
      weight: 0.632, position: [-0.0536658019, 0.0016826425, 1.5533644], normal: [-0.818662226, 0.518576324, -0.24672012],
      material: 0,
      shadow:
        'f7ffff87ffffff87ffffff07fffffe03fffffc03fffff803fffff801fffff800' +
        'fffff800fffff800fffff800fffff800fffff800fffff800fffff800fffffc00' +
        'fffffc00fffffc00fffffc00ffffdc00ffffc000fff9c000fffb8000ffff0000' +
        'ff9e0001fe3f0003f3ff0007ffff0007fffe000ffffe000fff00001ffe00003f',
    },
    {
      weight: 0.3093, position: [-0.0521713644, 0.00487477006, 1.55477095], normal: [-0.885867357, 0.430756181, -0.17230247],
      material: 0,
      shadow:
        'f3ffff8fffffff07fffffe07fffffc03fffffe03fffffc03fffffc01fffff801' +
        'fffff800fffff800fffff800fffff800fffff800fffff800fffffc00fffffe00' +
        'fffffe00fffffe00fffffe00ffffdc00ffffc000fffdc000fffb8000ffff0000' +
        'ffff0001ffdf8003fe3f8007e1ff8007ffff800fffff000fffff001ffe0f003f',
    },
    {
      weight: 0.0587, position: [-0.0536147729, 0.00325286714, 1.55669105], normal: [-0.793373168, 0.562150478, -0.233550444],
      material: 0,
      shadow:
        'f1ffff8ff7ffff07efffff07fffffe03fffffc03fffffc03fffffc01fffff800' +
        'fffff800fffff800fffff800fffff800fffff800fffff800fffffc00fffffe00' +
        'fffffe00fffffe00fffffe00ffffdc00ffffc000ffffc000ffff8000ffff0000' +
        'fe3e0001f0fe000387ff0007ffff0007ffff000fffff000fff3e001ffe00003f',
    },
  ],
  'rear-jaw-right': [
    {
      weight: 0.6561, position: [0.0537294, 0.00177804846, 1.55378854], normal: [0.81967926, 0.514574289, -0.251672894],
      material: 0,
      shadow:
        'e1ffffefe1ffffffe0ffffffc07fffffc03fffffc01fffff801fffff001fffff' +
        '001fffff001fffff001fffff001fffff001fffff001fffff001fffff003fffff' +
        '003fffff003fffff003fffff003bffff0003ffff0003dfff0001cfff0000f3ff' +
        '800079ffc000fc7fe000ffcfe000fffdf0007ffff0007ffff80000fffc00007f',
    },
    {
      weight: 0.2873, position: [0.0521693565, 0.00487477006, 1.55477095], normal: [0.893205225, 0.417934954, -0.165875822],
      material: 0,
      shadow:
        'f0ffffcfe0ffffffe07ffffdc03ffffec07fffffc03fffff803fffff803fffff' +
        '001fffff001fffff001fffff001fffff001fffff001fffff003fffff007fffff' +
        '007fffff007fffff007fffff003fffff0003ffff0003ffff0001dfff0000efff' +
        '8000f7ffc001f3ffe001f87fe001ff87f001fffbf000fffff800fffffc00f07f',
    },
    {
      weight: 0.0566, position: [0.052380763, 0.00349138235, 1.55242658], normal: [0.878713131, 0.436963767, -0.192160979],
      material: 0,
      shadow:
        'f0ffffcfe0ffffffe07fffffc03ffffec01fffffc01fffff801fffff801fffff' +
        '001fffff001fffff001fffff001fffff001fffff001fffff001fffff003fffff' +
        '007fffff007fffff003fffff003bffff0003ffff0003ffff0001dfff0000efff' +
        '8000f7ffc001fbffe001fc7fe000ffc7f000fffff000fffff800fffffc00007f',
    },
  ],
  'shoulder-left': [
    {
      weight: 0.6099, position: [-0.195870399, 0.00388493226, 1.40898824], normal: [-0.473480314, -0.395847321, 0.786842585],
      material: 4,
      shadow:
        'ffc001ffffc000ffff80007fff80003fff80001fff00000fff000007ff000003' +
        'fe000001fe000000fe000000fc000000fcc00000fde00000fff00000ffe00000' +
        'ffe00000fff00000ffe00000ff000000ff800000ffc00000ffe00001fff0000f' +
        'fff8007ffff800fffffc03fffffe1fffffffffffffffffffffffffffffffffff',
    },
    {
      weight: 0.3451, position: [-0.19277218, 0.0061945538, 1.41171217], normal: [-0.407473654, -0.343525618, 0.846141458],
      material: 4,
      shadow:
        'ffc001ffffc000ffff80007fff80003fff80001fff00000fff000007ff000003' +
        'fe000001fe000000fe000000fc000000fdc00000ffe00000fff00000fff00000' +
        'fff00000fff00000ffe00000ff000000ff800000ffc00000ffe00007fff0001f' +
        'fff8007ffff800fffffc03fffffe1fffffffffffffffffffffffffffffffffff',
    },
    {
      weight: 0.045, position: [-0.191102788, 0.00234253425, 1.41067398], normal: [-0.363627821, -0.438970536, 0.821632326],
      material: 4,
      shadow:
        'ff8001ffff8000ffff00007fff00003fff00001ffe00000ffe000007fe000003' +
        'fc000001fc000000f8000000f8000000f8c00000f1e00000fff00000fff00000' +
        'fff00000fff00000ffe00000ff000000ff800000ffc00000ffe0000ffff0007f' +
        'fff800fffffc07fffffe3fffffffffffffffffffffffffffffffffffffffffff',
    },
  ],
  'shoulder-right': [
    {
      weight: 0.6102, position: [0.195868388, 0.00388493226, 1.40898824], normal: [0.474558443, -0.396881372, 0.785671353],
      material: 4,
      shadow:
        'ff8003ffff0003fffe0001fffc0001fff80001fff00000ffe00000ffc00000ff' +
        '8000007f0000007f0000007f0000003f0000033f000007bf00000fff00000fff' +
        '00000fff00000fff000007ff000001ff000001ff000003ff000007fff0000fff' +
        'fe001fffffc01fffffc03ffffff87fffffffffffffffffffffffffffffffffff',
    },
    {
      weight: 0.345, position: [0.192770168, 0.0061945538, 1.41171217], normal: [0.409632206, -0.345590562, 0.844256282],
      material: 4,
      shadow:
        'ff8003ffff0003fffe0001fffc0001fff80001fff00000ffe00000ffc00000ff' +
        '8000007f0000007f0000007f0000003f000003bf000007ff00000fff00000fff' +
        '00000fff00000fff000007ff000000ff000001ff000003ff000007fff0000fff' +
        'fe001fffffc01fffffc03ffffff87fffffffffffffffffffffffffffffffffff',
    },
    {
      weight: 0.0448, position: [0.191100776, 0.00234253425, 1.41067398], normal: [0.367441237, -0.440532237, 0.819096029],
      material: 4,
      shadow:
        'ff8001ffff0001fffe0000fffc0000fff80000fff000007fe000007fc000007f' +
        '8000003f8000003f0000001f0000001f0000031f0000078f00000fff00000fff' +
        '00000fff00000fff000007ff000000ff000001ff000003fff00007fffe000fff' +
        'ffc01fffffe03ffffffc7fffffffffffffffffffffffffffffffffffffffffff',
    },
  ],
}
