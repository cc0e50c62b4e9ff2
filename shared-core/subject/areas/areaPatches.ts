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
      weight: 0.5857, position: [0.00066854991, -0.118507199, 1.58438039], normal: [0.0950697809, -0.985566676, 0.140071467],
      material: 0,
      shadow:
        '8000000100000001000000010000000100000001000000010000000100000001' +
        '0000000100000001000000010000000100000000000000010000000100000007' +
        '0000007f00000fff000fffff1fffffff1fffffff3fffffff3fffffff7fffffff' +
        '7fffffff7fffffffffffffffffffffffffffffffffffffffffffffffffffffff',
    },
    {
      weight: 0.2395, position: [-0.000644689193, -0.118584268, 1.58338761], normal: [-0.0862281173, -0.996266365, 0.00424507633],
      material: 0,
      shadow:
        '0000000000000000000000000000000000000000000000000000000000000000' +
        '0000000000000000000000000000000000000000000000000000000000000000' +
        'ffc10000ffffffe0fffffff0fffffff8fffffff8fffffffcfffffffcfffffffc' +
        '7ffffffc7ffffffc7ffffffc7ffffffc7ffffffc7ffffffc7ffffffe7ffffffe',
    },
    {
      weight: 0.1748, position: [-0.0013272767, -0.118166476, 1.58555162], normal: [-0.166300714, -0.947338343, 0.273667991],
      material: 0,
      shadow:
        'e0000007e0000007e0000003e0000003e0000003e0000001c0000001c0000001' +
        'c0000000c0000000c00000008000000080000000800000008000000000000000' +
        'c0000000fcc00000fff00000ffffcff8fffffffcfffffffefffffffeffffffff' +
        'ffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff',
    },
  ],
  'lips': [
    {
      weight: 0.8444, position: [8.01222484e-7, -0.105438024, 1.54525065], normal: [0.00232475181, -0.998351753, 0.0573438779],
      material: 1,
      shadow:
        '0000000000000000000000000000000000000000000000000000000000000000' +
        '00000000000000000000000000000000000180000003c0000007e000001ff800' +
        '00ffff0701ffffff3fffffff3fffffff3fffffff3fffffff3ffffffe3ffffffe' +
        '7ffffffe7fffffff7fffffff7ffffffe3ffffffe7ffffffe7ffffffe7ffffffe',
    },
    {
      weight: 0.1556, position: [8.01222484e-7, -0.105271719, 1.54632151], normal: [0.0086328648, -0.970750809, 0.239934117],
      material: 1,
      shadow:
        'c000000380000003800000018000000180000001800000018000000100000001' +
        '00000001000000000000000100000001000180000003c0000007e000003ffc00' +
        '01ffff8103ffffff3bffffff3fffffff7fffffff7fffffffffffffffffffffff' +
        'ffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff',
    },
    {
      weight: 0, position: [0.00259760162, -0.105133809, 1.54632151], normal: [0.0828650892, -0.980114937, 0.180299878],
      material: 1,
      shadow:
        '8000000100000001000000010000000100000001000000010000000100000001' +
        '000000010000000100000001000000010001c0010003e0010003f801001fff01' +
        '00ffffff01ffffff01ffffff1fffffff1fffffff3fffffff3fffffff7fffffff' +
        '7fffffff7fffffffffffffffffffffffffffffffffffffffffffffffffffffff',
    },
  ],
  'neck': [
    {
      weight: 0.4782, position: [0.000891132804, -0.0447000377, 1.47450936], normal: [0.0622869395, -0.98694092, -0.14855288],
      material: 0,
      shadow:
        'c0000003c0000003c0000003c0000003c0000003800000018000000100018000' +
        '0003c0000007e000000ff000000ff000001ff800001ff800003ffc00003ff800' +
        '00fffff00ffffffe3ffffffe3ffffffe3ffffffe7fffffff7ffffffe7ffffffe' +
        'fffffffffffffffffffffffffffffffffffffffbffffffffffffffffffffffff',
    },
    {
      weight: 0.4498, position: [-0.00112695212, -0.0445621274, 1.47375083], normal: [-0.0794829801, -0.982889533, -0.166164413],
      material: 0,
      shadow:
        'c0000003c0000003c0000003c0000003c0000003800000018000000100018000' +
        '0003c0000007e000000ff000000ff000001ff800001ff800001ffc000ffff800' +
        'fffffc00ffffff80fffffff07ffffff87ffffff87ffffffe7ffffffe7ffffffe' +
        'ffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff',
    },
    {
      weight: 0.072, position: [0.0011211352, -0.0442903601, 1.47227848], normal: [0.0759577528, -0.977689087, -0.195842877],
      material: 0,
      shadow:
        'c0000003c0000003c0000003c0000003c0000003800000018000000100000000' +
        '0003c0000007e0000007f000000ff000001ff800001ff800003ff800007fff80' +
        '03fffff80ffffffe3ffffffe3ffffffe3ffffffe7ffffffe7ffffffe7fffffff' +
        'fffffffffffffffbfffffffbfffffffbefffffffeffffff7effffff7effffff7',
    },
  ],
  'hair': [
    {
      weight: 0.5484, position: [0.000483064156, -0.0115809208, 1.75044739], normal: [-0.0497687273, -0.0677181035, 0.996462405],
      material: 3,
      shadow:
        'fffc3ffffff81ffffff00fffffe007ffffe003ffffc001ffff8000ffff00007f' +
        'fe00003ffc00001ff800000ff0000007e0000003e0000001c000000080000000' +
        '80000000c0000000e0000001f0000003f8000007fc00000ffe00001fff00007f' +
        'ff8000ffffc001ffffe001fffff003fffff80ffffffc1ffffffe3fffffffffff',
    },
    {
      weight: 0.4314, position: [-0.000481461728, -0.0162577536, 1.74996781], normal: [-0.124049403, -0.101548798, 0.98706615],
      material: 3,
      shadow:
        'fffc3ffffff81ffffff00fffffe007ffffe003ffffc001ffff8000ffff00007f' +
        'fe00003ffe00001ffc00000ff8000007f0000003e0000001e0000000c0000000' +
        'c0000000e0000000f0000001f8000003fc000007fe00000fff00001fff80007f' +
        'ffc000ffffe001fffff003fffff807fffff80ffffffc1ffffffe3fffffffffff',
    },
    {
      weight: 0.0202, position: [-0.00255148276, -0.0115281893, 1.7500124], normal: [-0.195589259, -0.0599726699, 0.978850424],
      material: 3,
      shadow:
        'fffc3ffffffc1ffffff80ffffff003ffffe001ffffe001ffffc000ffff80007f' +
        'ff00002ffe00001ffe00000ffc000007f8000003f0000001e0000000c0000000' +
        'c0000000e0000000f0000001f8000003fc000007fe00000fff00001fff80003f' +
        'ffc0007fffe000fffff001fffff803fffff80ffffffc1ffffffe3fffffffffff',
    },
  ],
  'breastbone': [
    {
      weight: 0.4999, position: [-0.00162405393, -0.044363372, 1.39365089], normal: [-0.017588662, -0.983523369, 0.179923356],
      material: 0,
      shadow:
        'b000000db000000db000000da0000005e0000007e0000007e0000007c0000003' +
        'c0000003c000000380000001800180010003c0000003c000000fe000000ff000' +
        '007ffc00fffffffe7fffffff7fffffffffffffffffffffffffffffffffffffff' +
        'ffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff',
    },
    {
      weight: 0.3573, position: [0.00162565638, -0.0443512015, 1.39370668], normal: [0.019351, -0.983435154, 0.18022424],
      material: 0,
      shadow:
        'b000000db000000db000000da0000005e0000005e0000007e0000007c0000003' +
        'c0000003c000000380000001800180010003c0000003c0000007f000000ff000' +
        '003ffe037fffffff3fffffff3fffffff7fffffff7fffffff7fffffff7fffffff' +
        'ffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff',
    },
    {
      weight: 0.1428, position: [0.001618237, -0.0448947363, 1.39068377], normal: [0.0176294111, -0.982911944, 0.183230281],
      material: 0,
      shadow:
        'b000000db000000db000000da0000005e0000005e0000007e0000007c0000003' +
        'c0000003c000000380000001800000018003c0010003c0000007e000000ff000' +
        '001ffc03ffffffff3fffffff3fffffff7fffffff7fffffff7fffffff7fffffff' +
        'ffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff',
    },
  ],
  'cheek-left': [
    {
      weight: 0.8989, position: [-0.0523877926, -0.0722905174, 1.59102845], normal: [-0.707195461, -0.705774665, 0.0419131406],
      material: 0,
      shadow:
        '0000000080000000c0000000e0000000f0000000f8000000f8000000fc000000' +
        'fe000000ff800000ffc00000ffe00000fff00000fff00000fff80000fffc0000' +
        'fffe0000ffff0000ffff8000ffffc000ffffe000ffffe000fffff000fffff800' +
        'fffffe00ffffff00ffffff8cfffffffefffffffeffffffffffffffffffffffff',
    },
    {
      weight: 0.0719, position: [-0.0524323098, -0.072339192, 1.58887565], normal: [-0.715365529, -0.698672533, 0.0104331383],
      material: 0,
      shadow:
        '000000000000000000000000c0000000e0000000f8000000fc000000fe000000' +
        'ff000000ff800000ffc00000ffe00000fff00000fff80000fffc0000fffe0000' +
        'ffff0000ffff8000ffff8000ffffc000ffffe000ffffe000fffff000fffff800' +
        'fffffc00fffffe00ffffff0cffffff9efffffffeffffffffffffffffffffffff',
    },
    {
      weight: 0.0292, position: [-0.05072584, -0.0739251748, 1.58849633], normal: [-0.64364928, -0.765053034, 0.0202339608],
      material: 0,
      shadow:
        '00000000000000000000000080000000c0000000e0000000f0000000fa000000' +
        'fe000000ff000000ff000000ff800000ffc00000fff00000fff80000fffc0000' +
        'fffe0000ffff8000ffffc000ffffe000ffffe000fffff800fffffc00fffffe00' +
        'ffffff00ffffff80ffffffccfffffffcfffffffefffffffeffffffffffffffff',
    },
  ],
  'cheek-right': [
    {
      weight: 0.8448, position: [0.0524264947, -0.072339192, 1.58887565], normal: [0.713235378, -0.700630367, 0.0203081258],
      material: 0,
      shadow:
        '000000000000000100000003000000070000000f0000001f0000003f0000007f' +
        '000000ff000001ff000003ff000007ff00000fff00001fff00003fff00007fff' +
        '00007fff0000ffff0003ffff0003ffff0007ffff0007ffff000fffff001fffff' +
        '007fffff00ffffff31ffffff7fffffff7fffffffffffffffffffffffffffffff',
    },
    {
      weight: 0.1535, position: [0.0521371365, -0.0726515204, 1.58668935], normal: [0.709176123, -0.705022871, 0.0034610841],
      material: 0,
      shadow:
        '00000000000000000000000100000003000000070000001f0000003f0000007f' +
        '000000ff000001ff000003ff000007ff00000fff00001fff00003fff00007fff' +
        '0000ffff0001ffff0003ffff0003ffff0007ffff0007ffff000fffff001fffff' +
        '003fffff007fffff30ffffff79ffffff7fffffffffffffffffffffffffffffff',
    },
    {
      weight: 0.0017, position: [0.0537174754, -0.0709114, 1.58886445], normal: [0.770417273, -0.637455344, 0.0103876488],
      material: 0,
      shadow:
        '0000000000000000000000010000000b000000070000001f0000007f000000ff' +
        '000001ff000003ff000007ff00000fff00001fff00001fff00003fff00007fff' +
        '0000ffff0001ffff0003ffff0003ffff0007ffff0007ffff000fffff001fffff' +
        '003fffff007fffff30ffffff79ffffff7fffffffffffffffffffffffffffffff',
    },
  ],
  'jaw-left': [
    {
      weight: 0.6323, position: [-0.0513342358, -0.0294039957, 1.55377269], normal: [-0.956520021, -0.195446804, -0.216494918],
      material: 0,
      shadow:
        'c0030003c01f8003c0ff8003c7ff8001ffff8000ffffc000ffffc000ffffc000' +
        'ffffc000ffffc000ffffe000ffffe000ffffe000ffffe000fffff000fffff000' +
        'fffff000fffff000fffff000fffff000fffff000fffff000fffff000fffff000' +
        'fffff003fffff00ffffff00ffffff01ffffff83ffffffc3fffff8e7ffffff3ff',
    },
    {
      weight: 0.2706, position: [-0.0518535934, -0.0316592604, 1.55688477], normal: [-0.94427067, -0.0749005824, -0.320535243],
      material: 0,
      shadow:
        'c0078003c03f8003c1ff8003d7ffc001dfffc000ffffc000ffffc000ffffc000' +
        'ffffc000ffffe000ffffe000ffffe000ffffe000fffff000fffff000fffff000' +
        'fffff800fffff000fffff000fffff000fffff000fffff000fffff000fffff000' +
        'fffff003ffffb00fffffb00fffff701ffffff03ffffffc3ffffffe7ffff7ffff',
    },
    {
      weight: 0.0971, position: [-0.0523729548, -0.0293553211, 1.55755401], normal: [-0.933349609, -0.147479549, -0.327273965],
      material: 0,
      shadow:
        'c0078003c03f8003c0ff8003ffff8001c7ffc000ffffc000ffffc000ffffc000' +
        'ffffc000ffffc000ffffe000ffffe000ffffe000fffff000fffff000fffff800' +
        'fffff800fffff000fffff000fffff000fffff000fffff000fffff000fffff000' +
        'fffff003fffff007fffff00ffffff01ffffff81ffffffc3fffffbe7fffc7cfff',
    },
  ],
  'jaw-right': [
    {
      weight: 0.4009, position: [0.0506309904, -0.031460505, 1.55241179], normal: [0.956404746, -0.143146649, -0.254556388],
      material: 0,
      shadow:
        'c000c003c001f803c001ff038001ffe30003ffff0003ffff0003ffff0003ffff' +
        '0003ffff0003ffff0007ffff0007ffff0007ffff000fffff000fffff000fffff' +
        '001fffff000fffff000fffff000fffff0007ffff000fffff000fffff000fffff' +
        'e00ffffff00ffffff00ffffff80ffffffc1ffffffc3dfffffe3dffffff77ffff',
    },
    {
      weight: 0.3748, position: [0.049748078, -0.0340443216, 1.55041516], normal: [0.953150094, -0.0900793523, -0.288774252],
      material: 0,
      shadow:
        'c000c003c001f003c001fe038001ffe30003ffff0003ffff0003ffff0003ffff' +
        '0007ffff0007ffff0007ffff0007ffff0007ffff000fffff000fffff000fffff' +
        '000fffff000fffff000fffff0007ffff0007ffff000fffff000fffff000fffff' +
        'e00ffffff00ffffff00ffffff80ffffffc0ffffffc1ffffffe1fffffffbfffff',
    },
    {
      weight: 0.2243, position: [0.0508164763, -0.0340118706, 1.55389535], normal: [0.955385327, -0.0405810699, -0.292561203],
      material: 0,
      shadow:
        'c001e003c001fc038001fe038003ffe30003fffb0003ffff0003ffff0003ffff' +
        '0003ffff0007ffff0007ffff0007ffff0007ffff000fffff000fffff000fffff' +
        '001fffff000fffff000fffff000fffff0007ffff000fffff000fffff000dffff' +
        'c00ffffff00ffffff00ffffff80ffffffc0ffffffc1ffffffe3fffffff3fffff',
    },
  ],
  'rear-jaw-left': [
    {
      weight: 0.4445, position: [-0.0569136441, 0.00000772877684, 1.55783284], normal: [-0.878890753, 0.452652276, -0.150522262],
      material: 0,
      shadow:
        'f3ffff0fffffff07fffffe07fffffc03fffff803fffff803fffff001fffff001' +
        'fffff000fffff000fffff000ffffe000fffff000fffff000fffff800fffffc00' +
        'fffffc00fffffe00fffffe00fffffc00ffffdc00ffff8000ffff8000ffff0000' +
        'fff80003fffc0007fefc0007fffc000ffffc000fff00001ffe00001ffc00003f',
    },
    {
      weight: 0.4433, position: [-0.055511374, 0.00183303223, 1.55579162], normal: [-0.847016335, 0.508504808, -0.154874563],
      material: 0,
      shadow:
        'f7ffff8fffffff87ffffff07fffffe03fffffc03fffff803fffff803fffff801' +
        'fffff800fffff000fffff000fffff000fffff000fffff000fffff800fffffc00' +
        'fffffe00fffffe00fffffe00fffffc00ffffc000ffff8000fff78000ffcf0000' +
        'ff9c0003fe3e0007fcfe0007fffe000ffffc000fff0c001ffe00001ffe00003f',
    },
    {
      weight: 0.1122, position: [-0.0553333089, 0.0029363269, 1.55851328], normal: [-0.833148897, 0.533141434, -0.147048011],
      material: 0,
      shadow:
        'f7ffff8fffffff87ffffff07fffffe03fffffc03fffff803fffff803fffff801' +
        'fffff800fffff000fffff000fffff000fffff000fffff800fffffc00fffffe00' +
        'ffffff00ffffff00fffffe00fffffe00ffffc000ffffc000fff78000ffcf0000' +
        'ff9c0003fe3c0007fdfc0007fffe0007fffc000ffffc001ffe00001ffc00003f',
    },
  ],
  'rear-jaw-right': [
    {
      weight: 0.4741, position: [0.0537545718, 0.0049684979, 1.55670631], normal: [0.858143389, 0.495711267, -0.133642301],
      material: 0,
      shadow:
        'f7ffffffe1ffffffe0ffffffe07fffffc03fffffc01fffffc01fffff801fffff' +
        '000fffff000fffff000fffff000fffff000fffff003fffff007fffff00ffffff' +
        '00ffffff00ffffff007fffff003bffff0003ffff0003cfff0001e7ff0000f7ff' +
        'c0007bffe0007cffe000ff7fe000fffff000fffff8007ffff800607ffc00003f',
    },
    {
      weight: 0.329, position: [0.0551865213, 0.0030539576, 1.55814517], normal: [0.835078418, 0.527164102, -0.157295972],
      material: 0,
      shadow:
        'f3ffffefe1ffffffe0ffffffc0ffffffc07fffffc03fffffc01fffff801fffff' +
        '001fffff001fffff000fffff000fffff000fffff001fffff003fffff007fffff' +
        '00ffffff00ffffff007fffff007bffff0003ffff0003dfff0001efff0001f3ff' +
        'c00039ffe0003c7fe0007fbfe0007ffff0007ffff8003ffff800007ffc00003f',
    },
    {
      weight: 0.1969, position: [0.0555129759, 0.00183303223, 1.55579162], normal: [0.847214758, 0.503578842, -0.169220299],
      material: 0,
      shadow:
        'f1ffffefe1ffffffe0ffffffc07fffffc03fffffc01fffffc01fffff801fffff' +
        '000fffff000fffff000fffff000fffff000fffff000fffff001fffff003fffff' +
        '007fffff007fffff007fffff003fffff0003ffff0001dfff0001efff0000f3ff' +
        'c00039ffe0007c7fe0007f3ff0007ffff0003ffff80020fff800007ffc00007f',
    },
  ],
  'shoulder-left': [
    {
      weight: 0.4238, position: [-0.19419536, 0.0218180772, 1.43631661], normal: [-0.446637988, 0.079225488, 0.891200244],
      material: 4,
      shadow:
        'fffe3ffffffc1ffffffc07fffff803fffff000fffff0007fffe0001fffe00007' +
        'ffc00007ff800003ff800000ffc00000ffe00000ffe00000fff00000ffe00000' +
        'ffe00000ffe00000fe400000fe000000ff000000ff000000ff800001ff800007' +
        'ffc0000fffe0001fffe0003ffff0007ffff001fffff003fffff807fffff81fff',
    },
    {
      weight: 0.3241, position: [-0.193542451, 0.017834859, 1.43676269], normal: [-0.429936826, -0.0168021284, 0.90270263],
      material: 4,
      shadow:
        'fff81ffffff807fffff003fffff001fffff0007fffe0003fffe0000fffc00007' +
        'ff800007ff800003ff000000ffc00000ffc00000ffe00000fff00000ffe00000' +
        'ffe00000ffe00000fe600000fe000000ff000000ff800000ff800003ffc00007' +
        'ffe0001fffe0003ffff0007ffff000fffff803fffffc07fffffc1ffffffe3fff',
    },
    {
      weight: 0.2521, position: [-0.187332392, 0.0216923337, 1.43925011], normal: [-0.338190705, 0.0611030534, 0.939091861],
      material: 4,
      shadow:
        'fffc3ffffffc1ffffff807fffff803fffff001ffffe0007fffe0003fffc0000f' +
        'ff800007ff800003ff000001fec00000fde00000fff00000fff00000ffe00000' +
        'ffe00000ffe00000fe600000fc000000fe000000fe000001ff000007ff80000f' +
        'ff80001fffc0003fffe0007fffe000fffff001fffff007fffff80ffffff81fff',
    },
  ],
  'shoulder-right': [
    {
      weight: 0.4239, position: [0.194189534, 0.0218180772, 1.43631661], normal: [0.445634246, 0.0762859508, 0.891958833],
      material: 4,
      shadow:
        'fffc7ffffff83fffffe03fffffc01fffff000ffffe000ffff80007ffe00007ff' +
        '800003ff000001ff000001ff000003ff000007ff00000fff00000fff000007ff' +
        '000007ff000007ff0000027f0000007f000000ff000000ff000001ff800001ff' +
        'f00003fff80007fffe0007ffff000fffff800fffffc00fffffe01ffffff81fff',
    },
    {
      weight: 0.3241, position: [0.193544045, 0.017834859, 1.43676269], normal: [0.429352403, -0.0194710158, 0.902927101],
      material: 4,
      shadow:
        'fff81fffffe01fffffc00fffff800ffffe000ffffc0007fff00007ffe00003ff' +
        '800001ff000001ff000000ff000003ff000003ff000007ff00000fff000007ff' +
        '000007ff000007ff0000067f0000007f000000ff000001ff000001ff800003ff' +
        'f00007fffc0007fffe000fffff800fffffc01fffffe03ffffff83ffffffc7fff',
    },
    {
      weight: 0.252, position: [0.187333986, 0.0216923337, 1.43925011], normal: [0.33682403, 0.0590175688, 0.93971616],
      material: 4,
      shadow:
        'fffc3ffffff83fffffe01fffffc01fffff800ffffe0007fffc0007fff00003ff' +
        'e00001ff800001ff000000ff0000037f000007bf00000fff00000fff000007ff' +
        '000007ff000007ff0000067f0000003f0000007f0000007f800000ffe00001ff' +
        'f00001fffc0003ffff0007ffff8007ffff800fffffe00ffffff01ffffff81fff',
    },
  ],
}
