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
      weight: 0.5515, position: [-0.000698695192, -0.118199043, 1.58346081], normal: [-0.0974674821, -0.986821175, 0.129166633],
      material: 0,
      shadow:
        '0000000000000000000000000000000000000000000000000000000000000000' +
        '0000000000000000000000000000000000000000000000000000000000000000' +
        'f8000000fff80000ffffffe0fffffff8fffffff8fffffffcfffffffcfffffffc' +
        'fffffffcfffffffefffffffefffffffefffffffefffffffe7ffffffe7ffffffe',
    },
    {
      weight: 0.3722, position: [0.000800859416, -0.118183166, 1.58348322], normal: [0.122417226, -0.982679248, 0.139124289],
      material: 0,
      shadow:
        '8000000100000001000000010000000100000001000000010000000100000001' +
        '0000000100000001000000010000000100000000000000000000000000000000' +
        '00000007000001ff01ffffff1fffffff1fffffff3fffffff3fffffff7fffffff' +
        '7fffffff7fffffffffffffffffffffffffffffffffffffffffffffffffffffff',
    },
    {
      weight: 0.0763, position: [0.00113409385, -0.118127577, 1.58139563], normal: [0.167698428, -0.975785434, -0.140427843],
      material: 0,
      shadow:
        '0000000000000000000000000000000000000000000000000000000000000000' +
        '0000000000000000000000000000000000000001000000010000fff9000fffff' +
        '00ffffff00ffffff01ffffff07ffffff0fffffff0fffffff1fffffff1fffffff' +
        '1fffffff1ffffffe1ffffffe3ffffffe3ffffffc3ffffffc3ffffffc7ffffffe',
    },
  ],
  'lips': [
    {
      weight: 0.593, position: [-0.00000324958364, -0.105593637, 1.54786074], normal: [0.0223889574, -0.962111771, 0.271734476],
      material: 1,
      shadow:
        'c000000380000003800000018000000180000001800000018000000100000001' +
        '000000010000000000000000000000000003c0000003c0000007e000007ffe00' +
        '03ffffc03fffffc63ffff9fe3fffffff7fffffff7fffffffffffffffffffffff' +
        'ffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff',
    },
    {
      weight: 0.215, position: [0.000569044205, -0.105502322, 1.54572856], normal: [0.0841398761, -0.993638456, -0.0748535395],
      material: 1,
      shadow:
        '0000000000000000000000000000000000000000000000000000000000000000' +
        '00000000000000000000000000000000000180000003c0000007e000001ff800' +
        '00ffffff3fffffff07ffffff1fffffff3fffffff1ffffffe1ffffffe1ffffffe' +
        '3ffffffe3ffffffe3ffffffe3ffffffc3ffffffc3ffffffc7ffffffe7ffffffe',
    },
    {
      weight: 0.192, position: [-0.000626252964, -0.105490409, 1.54561698], normal: [-0.0531716384, -0.995384097, -0.0798952132],
      material: 1,
      shadow:
        '0000000000000000000000000000000000000000000000000000000000000000' +
        '00000000000000000000000000000000000180000003c0000007e0000ffff800' +
        'ffffff007fffffe07ffffffc7ffffffc7ffffffc7ffffffc7ffffffc7ffffffc' +
        '7ffffffc3ffffffc3ffffffc3ffffffc3ffffffc3ffffffc7ffffffe7ffffffe',
    },
  ],
  'neck': [
    {
      weight: 0.4769, position: [0.000895034347, -0.0446986109, 1.47451735], normal: [0.0622869395, -0.98694092, -0.14855288],
      material: 0,
      shadow:
        'c0000003c0000003c0000003c000000380000001800000018000000100018000' +
        '0003c0000007e000000ff000000ff000001ff800001ff800003ffc00003fffd8' +
        '00fffffc0ffffffe3ffffffe3ffffffe3ffffffe7ffffffc7ffffffc7ffffffc' +
        'fffffffdfffffffdfffffffffffffffffffffffbffffffffffffffffffffffff',
    },
    {
      weight: 0.4509, position: [-0.0011261045, -0.0445596538, 1.47374701], normal: [-0.0794829801, -0.982889533, -0.166164413],
      material: 0,
      shadow:
        'c0000003c0000003c0000003c000000380000001800000018000000100018000' +
        '0003c0000007e000000ff000000ff000001ff800001ff800001ffc000ffff800' +
        'fffffe00ffffffe0fffffff87ffffff87ffffff87ffffffe7ffffffe7ffffffe' +
        'fffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff7',
    },
    {
      weight: 0.0722, position: [0.00111960538, -0.0442896821, 1.47227347], normal: [0.0759577528, -0.977689087, -0.195842877],
      material: 0,
      shadow:
        'c0000003c0000003c0000003c000000380000001800000018000000100000000' +
        '0003c0000007e0000007f000000ff000001ff800001ff800003ffb80007fffd8' +
        '03fffffc0ffffffe3ffffffe3ffffffc3ffffffc7ffffffc7ffffffc7ffffffc' +
        'fffffffdfffffff9fffffffbfffffffbeffffffbfffffff7fffffff7ffffffff',
    },
  ],
  'hair': [
    {
      weight: 0.5003, position: [-0.00097397581, -0.0134451473, 1.75010788], normal: [-0.231596678, -0.122723691, 0.965039849],
      material: 3,
      shadow:
        'fff00ffffff007ffffe003ffffe001ffffc000ffff80007fff00003fff00001f' +
        'fe00000ffc00000ffc000007f8000001f0000000e0000000c0000000c0000000' +
        'c0000000e0000000f0000000f8000000fc000003fe000007ff00000fff80001f' +
        'ffc0003fffc000ffffe001fffff003fffff80ffffffc1ffffffe3fffffff7fff',
    },
    {
      weight: 0.3144, position: [0.00119204761, -0.0150173483, 1.75018609], normal: [-0.0211701188, -0.145932689, 0.989067972],
      material: 3,
      shadow:
        'fff00fffffe007ffffc003ffffc001ffff8000ffff0000fffe00007ffc00003f' +
        'fc00001ff800000ff0000007e0000003c0000001800000010000000100000000' +
        '0000000000000001c0000003e0000007f000001ffc00001ffe00003fff00007f' +
        'ff8000ffffc003ffffe007fffff00ffffff81ffffffc3fffffff7fffffffffff',
    },
    {
      weight: 0.1853, position: [0.000648730726, -0.0115712099, 1.75061023], normal: [-0.0869279131, -0.114256419, 0.989640832],
      material: 3,
      shadow:
        'fff80ffffff00fffffe007ffffc003ffffc001ffff8000ffff00007ffe00003f' +
        'fc00001ffc00000ff8000007f0000003e0000001c00000018000000000000000' +
        '00000000c0000000e0000001f0000003f800000ffc00001ffe00001fff00003f' +
        'ff80007fffc000ffffe003fffff007fffff80ffffffc1ffffffe3ffffffe7fff',
    },
  ],
  'breastbone': [
    {
      weight: 0.5001, position: [-0.00161871186, -0.0489943735, 1.39361632], normal: [-0.0105375573, -0.999011815, 0.0431782827],
      material: 0,
      shadow:
        'e0000007e0000007c0000003c0000003c0000003c0000003c0000003c0000001' +
        '800000018000000100000000000000000003c0000003c0000007e000000ff000' +
        '01cff3007ffffff8fffffffcfffffffd7ffffffd7ffffffd7ffffffd7ffffffd' +
        '7fffffff7ffffffe7ffffffe7ffffffe7ffffffe7ffffffe7fffffffffffffff',
    },
    {
      weight: 0.2962, position: [0.00161945692, -0.0489943735, 1.39361632], normal: [0.0126192858, -0.99898386, 0.043266125],
      material: 0,
      shadow:
        'e0000007e0000007c0000003c0000003c0000003c0000003c000000380000003' +
        '800000018000000100000000000000000003c0000003c0000007e000000ff000' +
        '00cff3ef3fffffff3fffffff3fffffffbfffffffbfffffffbfffffff3fffffff' +
        '7fffffff7ffffffe7ffffffe7ffffffe7ffffffe7ffffffe7fffffffffffffff',
    },
    {
      weight: 0.2037, position: [0.00161945692, -0.0488832109, 1.39652991], normal: [0.00481347367, -0.999429107, 0.0334409736],
      material: 0,
      shadow:
        'e0000007c0000003c0000003c0000003c0000003c0000003c000000380000001' +
        '800000018000000100000000000000000003c0000003c0000007e000000ff000' +
        '03cff1ef3fffffff3fffffff3fffffffbfffffffbfffffffbfffffff3fffffff' +
        '7fffffff7ffffffe7ffffffe7ffffffe7ffffffe7ffffffe7fffffffffffffff',
    },
  ],
  'cheek-left': [
    {
      weight: 0.8983, position: [-0.0523862429, -0.0722915456, 1.59102964], normal: [-0.707195461, -0.705774665, 0.0419131406],
      material: 0,
      shadow:
        '0000000080000000c0000000e0000000f0000000f8000000f8000000fc000000' +
        'fe000000ff000000ff000000ff800000ffe00000fff00000fff80000fffc0000' +
        'fffe0000ffff0000ffff8000ffffc000ffffc000ffffe000fffff000fffff800' +
        'fffffe00ffffff00ffffff8cfffffffcfffffffefffffffeffffffffffffffff',
    },
    {
      weight: 0.0732, position: [-0.0524297096, -0.072339192, 1.58887506], normal: [-0.715365529, -0.698672533, 0.0104331383],
      material: 0,
      shadow:
        '000000000000000000000000c0000000e0000000f8000000fc000000fe000000' +
        'ff000000ff800000ffc00000ffe00000fff00000fff80000fffc0000fffe0000' +
        'ffff0000ffff8000ffff8000ffffc000ffffc000ffffe000fffff000fffff800' +
        'fffffc00fffffe00ffffff0cffffff9cffffffdefffffffeffffffffffffffff',
    },
    {
      weight: 0.0285, position: [-0.0507273152, -0.0739233047, 1.58849549], normal: [-0.64364928, -0.765053034, 0.0202339608],
      material: 0,
      shadow:
        '00000000000000000000000080000000c0000000e0000000f0000000f8000000' +
        'fe000000ff000000ff000000ff800000ffe00000fff00000fff80000fffc0000' +
        'fffe0000ffff8000ffffc000ffffc000ffffe000fffff800fffffc00fffffe00' +
        'ffffff00ffffff80ffffffccfffffffcfffffffefffffffeffffffffffffffff',
    },
  ],
  'cheek-right': [
    {
      weight: 0.8466, position: [0.0524304546, -0.072339192, 1.58887506], normal: [0.713235378, -0.700630367, 0.0203081258],
      material: 0,
      shadow:
        '000000000000000100000003000000070000000f0000001f0000001f0000003f' +
        '0000007f000000ff000000ff000005ff00000fff00001fff00003fff00007fff' +
        '00007fff0000ffff0003ffff0003ffff0007ffff0007ffff000fffff001fffff' +
        '007fffff00ffffff31ffffff3fffffff7fffffff7fffffffffffffffffffffff',
    },
    {
      weight: 0.1531, position: [0.0521406829, -0.0726528317, 1.58668709], normal: [0.709176123, -0.705022871, 0.0034610841],
      material: 0,
      shadow:
        '00000000000000000000000300000007000000070000001f0000003f0000007f' +
        '000000ff000001ff000003ff000007ff00000fff00001fff00003fff00007fff' +
        '0000ffff0001ffff0003ffff0003ffff0007ffff0007ffff000fffff001fffff' +
        '003fffff007fffff30ffffff39ffffff7bffffff7fffffffffffffffffffffff',
    },
    {
      weight: 0.0003, position: [0.0537199266, -0.0709099174, 1.58886397], normal: [0.770417273, -0.637455344, 0.0103876488],
      material: 0,
      shadow:
        '00000000000000000000000300000007000000170000003f0000003f0000007f' +
        '000000ff000001ff000003ff00000fff00001fff00001fff00003fff00007fff' +
        '0000ffff0001ffff0003ffff0003ffff0007ffff0007ffff000fffff001fffff' +
        '003fffff007fffff30ffffff39ffffff7bffffff7fffffffffffffffffffffff',
    },
  ],
  'jaw-left': [
    {
      weight: 0.5652, position: [-0.0513285846, -0.0340266973, 1.55539608], normal: [-0.952900052, -0.0240489356, -0.302329481],
      material: 0,
      shadow:
        'c0078003c03f8003c0ff8001c1ffc0019fffc000ffffc000ffffc000ffffc000' +
        'ffffc000ffffe000ffffe000ffffe000ffffe000fffff000fffff000fffff000' +
        'fffff800fffff000fffff000fffff000fffff000fffff000fffff000ffffb000' +
        'ffffb002fffff00ffffff00fffff701ffffff01ffffff83ffffffc7ffffffcff',
    },
    {
      weight: 0.2334, position: [-0.0506331399, -0.0316961855, 1.55249357], normal: [-0.949434817, -0.133154482, -0.284329861],
      material: 0,
      shadow:
        'c0030003c01f8003c0ff8001c1ff8001ffffc000ffffc000ffffc000ffffc000' +
        'ffffc000ffffc000ffffe000ffffe000ffffe000fffff000fffff000fffff000' +
        'fffff800fffff000fffff000fffff000fffff000fffff000ffffd000fffff000' +
        'ffffb007ffffb00ffffff00ffffff01ffffff01ffffff83ffffffc7ffffffdff',
    },
    {
      weight: 0.2014, position: [-0.0519008785, -0.0316406041, 1.55674684], normal: [-0.941094935, -0.0883828178, -0.326387495],
      material: 0,
      shadow:
        'c0078003c03f8003c1ff8001c9ff8001ffffc000ffffc000ffffc000ffffc000' +
        'ffffc000ffffe000ffffe000ffffe000ffffe000fffff000fffff000fffff800' +
        'fffff800fffff000fffff000fffff000fffff000fffff000fffff000fffff000' +
        'ffffb002fffff007fffff00ffffff01ffffff81ffffffc3ffffffc7ffffffeff',
    },
  ],
  'jaw-right': [
    {
      weight: 0.5631, position: [0.0513293296, -0.0340266973, 1.55539608], normal: [0.953843474, -0.0240097903, -0.299342841],
      material: 0,
      shadow:
        'c001e003c001fc038001ff038003ffc30003fffb0003ffff0003ffff0003ffff' +
        '0003ffff0007ffff0007ffff0007ffff0007ffff000fffff000fffff000fffff' +
        '001fffff000fffff000fffff000bffff000bffff000fffff000fffff000dffff' +
        '400dfffff00ffffff00ffffff80efffff80efffffc1efffffe3f7fffff3f3fff',
    },
    {
      weight: 0.2883, position: [0.0508729443, -0.0317080952, 1.5533309], normal: [0.952853084, -0.123940311, -0.27696529],
      material: 0,
      shadow:
        'c000c003c001f8038001ff038001ffc30003ffff0003ffff0003ffff0003ffff' +
        '0003ffff0003ffff0007ffff0007ffff0007ffff000fffff000fffff000fffff' +
        '001fffff000fffff000fffff000bffff000bffff000bffff000bffff000fffff' +
        'e00dfffff00dfffff00dfffff80dfffff80dfffffc1dfffffe3efffffff8ffff',
    },
    {
      weight: 0.1486, position: [0.0518726483, -0.0316286907, 1.55667984], normal: [0.940610349, -0.0982230231, -0.324968368],
      material: 0,
      shadow:
        'c001e003c001fc038001ff838001fff30003ffff0003ffff0003ffff0003ffff' +
        '0003ffff0007ffff0007ffff0007ffff0007ffff000fffff000fffff001fffff' +
        '001fffff000fffff000fffff000bffff000bffff000bffff000bffff000fffff' +
        'c00dfffff00dfffff00dfffff80dfffff81dfffffc3ffffffe3effffff7cffff',
    },
  ],
  'rear-jaw-left': [
    {
      weight: 0.6327, position: [-0.0536612272, 0.00168530969, 1.5533644], normal: [-0.818662226, 0.518576324, -0.24672012],
      material: 0,
      shadow:
        'f7ffff8fffffff87ffffff07fffffe03fffffc03fffff801fffff801fffff801' +
        'fffff800fffff800fffff800fffff800fffff800fffff800fffff800fffffc00' +
        'fffffc00fffffc00fffffc00ffffdc00ffffc000fffbc000fff38000ffcf0001' +
        'ff9e0003fe3f0007fbff0007ffff0007fffe000ffffe001fff00001ffe00003f',
    },
    {
      weight: 0.3078, position: [-0.0521689169, 0.00487735542, 1.55477095], normal: [-0.885867357, 0.430756181, -0.17230247],
      material: 0,
      shadow:
        'f3ffff8fffffff0ffffffe07fffffc03fffffe03fffffc01fffffc03fffff801' +
        'fffff800fffff800fffff800fffff800fffff800fffff800fffffc00fffffe00' +
        'fffffe00fffffe00fffffe00ffffdc00ffffc000ffffc000fffb8000fff70001' +
        'ffef0003ffdf8003fe3f8007fdff8007ffff800fffff000fffff001ffe0f003f',
    },
    {
      weight: 0.0595, position: [-0.0536105186, 0.00324957096, 1.55669105], normal: [-0.793373168, 0.562150478, -0.233550444],
      material: 0,
      shadow:
        'f1ffff8ff7ffff07efffff07dffffe03fffffc03fffffc01fffffc01fffff801' +
        'fffff800fffff800fffff800fffff800fffff800fffff800fffffc00fffffe00' +
        'fffffe00fffffe00fffffe00ffffdc00ffffc000ffffc000fff78000ffdf0000' +
        'fe3e0003f8fe0003ffff0007ffff0007ffff000fffff000fff3e001ffe00003f',
    },
  ],
  'rear-jaw-right': [
    {
      weight: 0.656, position: [0.0537344143, 0.00178059458, 1.55378854], normal: [0.81967926, 0.514574289, -0.251672894],
      material: 0,
      shadow:
        'f1ffffefe1ffffffe0ffffffc07fffffc03fffff801fffff801fffff801fffff' +
        '001fffff001fffff001fffff001fffff001fffff001fffff001fffff003fffff' +
        '003fffff003fffff003fffff003bffff0003ffff0003dfff0001cfff8000f3ff' +
        'c00079ffe000fc7fe000ffdfe000fffff0007ffff8007ffff80000fffc00007f',
    },
    {
      weight: 0.2869, position: [0.052169662, 0.00487735542, 1.55477095], normal: [0.893205225, 0.417934954, -0.165875822],
      material: 0,
      shadow:
        'f0ffffcff0ffffffe07fffffc03fffffc07fffff803fffffc03fffff801fffff' +
        '001fffff001fffff001fffff001fffff001fffff001fffff003fffff007fffff' +
        '007fffff007fffff007fffff003fffff0003ffff0003ffff0001dfff8000efff' +
        'c000f7ffc001f3ffe001f87fe001ffbff001fffff000fffff800fffffc00f07f',
    },
    {
      weight: 0.0571, position: [0.052386988, 0.00349175371, 1.55242658], normal: [0.878713131, 0.436963767, -0.192160979],
      material: 0,
      shadow:
        'f0ffffcfe07fffffe03fffffc01fffffc01fffff801fffffc01fffff801fffff' +
        '001fffff001fffff001fffff001fffff001fffff001fffff001fffff003fffff' +
        '007fffff007fffff003fffff003bffff0003ffff0003ffff0001dfff8000efff' +
        'c000f7ffe001fbffe000fc7fe000fffff000fffff800fffff800fffffc00007f',
    },
  ],
  'shoulder-left': [
    {
      weight: 0.7655, position: [-0.199009359, 0.0162480269, 1.43646133], normal: [-0.516383529, -0.025597332, 0.855974793],
      material: 4,
      shadow:
        'fff81ffffff807fffff003fffff001fffff0007fffe0003fffe0000fffc00007' +
        'ff800001ff800000ff000000ff000000ffc00000ffe00000ffe00000ffe00000' +
        'ffe00000ffe00000fe600000ff000000ff000000ff800000ff800000ffc00001' +
        'ffe00007ffe0001ffff0007ffff000fffff803fffffc07fffffc1ffffffe3fff',
    },
    {
      weight: 0.1266, position: [-0.191772386, 0.0138063496, 1.43955362], normal: [-0.299613237, -0.115389332, 0.947057128],
      material: 4,
      shadow:
        'fff00ffffff007ffffe003ffffe001ffffc000ffffc0007fff80001fff00000f' +
        'ff000007fe000003fc000001fcc00000f9c00000ffe00000ffe00000ffe00000' +
        'ffe00000ffe00000ffe00000fe000000fe000000ff000001ff000003ff80000f' +
        'ffc0003fffe0007ffff001fffff803fffff807fffffc1ffffffe3fffffff7fff',
    },
    {
      weight: 0.1079, position: [-0.192902476, 0.0169666335, 1.43939734], normal: [-0.340101153, -0.0155022852, 0.940261066],
      material: 4,
      shadow:
        'fff81ffffff80ffffff007fffff001ffffe000ffffe0007fffc0001fff80000f' +
        'ff800007ff000001fe000000ffc00000fdc00000ffe00000ffe00000ffe00000' +
        'ffe00000ffe00000ff600000fe000000fe000000ff000000ff800001ff800007' +
        'ffc0000fffe0003fffe0007ffff001fffff803fffff807fffffc1ffffffc3fff',
    },
  ],
  'shoulder-right': [
    {
      weight: 0.5905, position: [0.199068069, 0.0169547237, 1.43643904], normal: [0.518187046, -0.0111547112, 0.855194569],
      material: 4,
      shadow:
        'fff81fffffe01fffffc00fffff800ffffe000ffffc0007fff00007ffe00003ff' +
        '800001ff000001ff000000ff000000ff0000037f000007ff000007ff000007df' +
        '000007df000007bf0000063f0000007f000000ff000001ff000001ff800003ff' +
        'e00007fff80007fffe000fffff000fffffc01fffffe03ffffff83ffffffc7fff',
    },
    {
      weight: 0.2454, position: [0.192693144, 0.0152872372, 1.43939734], normal: [0.330827326, -0.0711491853, 0.941005349],
      material: 4,
      shadow:
        'fff81ffffff01fffffe00fffffc00fffff8007fffe0003fffc0003fff80001ff' +
        'f00000ffc000007f8000007f0000033f000003bf000007ff00000fff000007ff' +
        '000007f7000007ef000006cf0000001f0000003f8000007fe00000fff00001ff' +
        'f80001fffe0003ffff0007ffff800fffffe00ffffff01ffffff83ffffffc3fff',
    },
    {
      weight: 0.1641, position: [0.198640659, 0.013675333, 1.43647254], normal: [0.501557887, -0.108629048, 0.858277023],
      material: 4,
      shadow:
        'fff00fffffc00fffff8007ffff0007fffc0007fff80003fff00003ffc00003ff' +
        '800001ff000001ff000000ff000000ff0000037f000007ff000007ff000007df' +
        '000007df000007bf000006ff000000ff000000ff000001ff000003ff800007ff' +
        'e00007fff8000ffffe001fffff801fffffe03ffffff07ffffffc7fffffffffff',
    },
  ],
}
