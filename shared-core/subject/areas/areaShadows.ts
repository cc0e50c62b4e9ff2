import type { SubjectAreaId } from './subjectAreas.ts'

/**
 * The directions in which the subject stands in its own light at each named area, as in asset/selfShadow.ts: 32 words of
 * eight hexadecimal digits. Made by tests/derivations/areaShadows.ts from the asset, so that the numbers need no mesh and
 * yet agree with the picture.
 */
export const areaShadows: Readonly<Record<SubjectAreaId, string>> = {
  'nose':
    '8000000100000001000000010000000100000001000000010000000100000001' +
    '0000000100000001000000010000000100000000000000010000000100000007' +
    '0000007f00000fff000fffff1fffffff1fffffff3fffffff3fffffff7fffffff' +
    '7fffffff7fffffffffffffffffffffffffffffffffffffffffffffffffffffff',
  'lips':
    '0000000000000000000000000000000000000000000000000000000000000000' +
    '00000000000000000000000000000000000180000003c0000007e000001ff800' +
    '00ffff0701ffffff3fffffff3fffffff3fffffff3fffffff3ffffffe3ffffffe' +
    '7ffffffe7fffffff7fffffff7ffffffe3ffffffe7ffffffe7ffffffe7ffffffe',
  'neck':
    'c0000003c0000003c0000003c0000003c0000003800000018000000100018000' +
    '0003c0000007e000000ff000000ff000001ff800001ff800003ffc00003ff800' +
    '00fffff00ffffffe3ffffffe3ffffffe3ffffffe7fffffff7ffffffe7ffffffe' +
    'fffffffffffffffffffffffffffffffffffffffbffffffffffffffffffffffff',
  'hair':
    'fffc3ffffff81ffffff00fffffe007ffffe003ffffc001ffff8000ffff00007f' +
    'fe00003ffc00001ff800000ff0000007e0000003e0000001c000000080000000' +
    '80000000c0000000e0000001f0000003f8000007fc00000ffe00001fff00007f' +
    'ff8000ffffc001ffffe001fffff003fffff80ffffffc1ffffffe3fffffffffff',
  'breastbone':
    'b000000db000000db000000da0000005e0000007e0000007e0000007c0000003' +
    'c0000003c000000380000001800180010003c0000003c000000fe000000ff000' +
    '007ffc00fffffffe7fffffff7fffffffffffffffffffffffffffffffffffffff' +
    'ffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff',
  'cheek-left':
    '0000000080000000c0000000e0000000f0000000f8000000f8000000fc000000' +
    'fe000000ff800000ffc00000ffe00000fff00000fff00000fff80000fffc0000' +
    'fffe0000ffff0000ffff8000ffffc000ffffe000ffffe000fffff000fffff800' +
    'fffffe00ffffff00ffffff8cfffffffefffffffeffffffffffffffffffffffff',
  'cheek-right':
    '000000000000000100000003000000070000000f0000001f0000003f0000007f' +
    '000000ff000001ff000003ff000007ff00000fff00001fff00003fff00007fff' +
    '00007fff0000ffff0003ffff0003ffff0007ffff0007ffff000fffff001fffff' +
    '007fffff00ffffff31ffffff7fffffff7fffffffffffffffffffffffffffffff',
  'jaw-left':
    'c0030003c01f8003c0ff8003c7ff8001ffff8000ffffc000ffffc000ffffc000' +
    'ffffc000ffffc000ffffe000ffffe000ffffe000ffffe000fffff000fffff000' +
    'fffff000fffff000fffff000fffff000fffff000fffff000fffff000fffff000' +
    'fffff003fffff00ffffff00ffffff01ffffff83ffffffc3fffff8e7ffffff3ff',
  'jaw-right':
    'c000c003c001f803c001ff038001ffe30003ffff0003ffff0003ffff0003ffff' +
    '0003ffff0003ffff0007ffff0007ffff0007ffff000fffff000fffff000fffff' +
    '001fffff000fffff000fffff000fffff0007ffff000fffff000fffff000fffff' +
    'e00ffffff00ffffff00ffffff80ffffffc1ffffffc3dfffffe3dffffff77ffff',
  'rear-jaw-left':
    'f7ffff8fffffff87ffffff07fffffe03fffffc03fffff803fffff803fffff801' +
    'fffff800fffff000fffff000fffff000fffff000fffff000fffff800fffffc00' +
    'fffffe00fffffe00fffffe00fffffc00ffffc000ffff8000fff78000ffcf0000' +
    'ff9c0003fe3e0007fcfe0007fffe000ffffc000fff0c001ffe00001ffe00003f',
  'rear-jaw-right':
    'f3ffffefe1ffffffe0ffffffc0ffffffc07fffffc03fffffc01fffff801fffff' +
    '001fffff001fffff000fffff000fffff000fffff001fffff003fffff007fffff' +
    '00ffffff00ffffff007fffff007bffff0003ffff0003dfff0001efff0001f3ff' +
    'c00039ffe0003c7fe0007fbfe0007ffff0007ffff8003ffff800007ffc00003f',
  'shoulder-left':
    'fffe3ffffffc1ffffffc07fffff803fffff000fffff0007fffe0001fffe00007' +
    'ffc00007ff800003ff800000ffc00000ffe00000ffe00000fff00000ffe00000' +
    'ffe00000ffe00000fe400000fe000000ff000000ff000000ff800001ff800007' +
    'ffc0000fffe0001fffe0003ffff0007ffff001fffff003fffff807fffff81fff',
  'shoulder-right':
    'fffc7ffffff83fffffe03fffffc01fffff000ffffe000ffff80007ffe00007ff' +
    '800003ff000001ff000001ff000003ff000007ff00000fff00000fff000007ff' +
    '000007ff000007ff0000027f0000007f000000ff000000ff000001ff800001ff' +
    'f00003fff80007fffe0007ffff000fffff800fffffc00fffffe01ffffff81fff',
}
