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
    '0000007f00000fff00007fff1fffffff1fffffff3fffffff3fffffff7fffffff' +
    '7fffffff7fffffffffffffffffffffffffffffffffffffffffffffffffffffff',
  'lips':
    '0000000000000000000000000000000000000000000000000000000000000000' +
    '00000000000000000000000000000000000180000003c0000007e000001ff800' +
    '00ffff0701ffffff3fffffff3fffffff3ffffffe3ffffffe3ffffffe3ffffffe' +
    '7ffffffe7ffffffe7ffffffe7ffffffe3ffffffe7ffffffe7ffffffe7ffffffe',
  'neck':
    'c0000003c0000003c0000003c000000380000001800000018000000100000000' +
    '0003c0000007e000000ff000000ff000001ff800001ff800003ffc00003fffc0' +
    '0ffffffe7ffffffe7ffffffe7ffffffe7ffffffe7ffffffe7ffffffe7ffffffe' +
    'fffffffffffffffffffffffbffffffffffffffffffffffffffffffffffffffff',
  'hair':
    'fffc3ffffff81ffffff00ffffff007ffffe003ffffc001ffff8000ffff00007f' +
    'fe00003ffc00001ffc00000ff8000007f0000002e0000001c0000000c0000000' +
    'c0000000e0000000f0000001f8000001fc000007fe00001fff00001fff80003f' +
    'ffc000ffffe001fffff003fffff807fffffc0ffffffe3ffffffe7fffffffffff',
  'breastbone':
    'b000000db000000ff000000fe0000007e0000007e0000007e0000007c0000003' +
    'c0000003c000000380000001800180010003c0000007c000000fe000000ff000' +
    'c03ff800feffff7efffffffffffffffdffffffffffffffffffffffffffffffff' +
    'ffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff',
  'cheek-left':
    '000000000000000000000000c0000000e0000000f8000000fc000000fe000000' +
    'ff000000ff800000ffc00000ffe00000ffe00000fff00000fff80000fffc0000' +
    'fffe0000ffff0000ffff8000ffffc000ffffe000fffff000fffff000fffff800' +
    'fffffc00fffffe00ffffff0cffffff9efffffffeffffffffffffffffffffffff',
  'cheek-right':
    '00000000000000010000000700000003000000070000003f0000007f000000ff' +
    '000001ff000003ff000007ff000007ff00000fff00001fff00003fff00007fff' +
    '00007fff0000ffff0003ffff0003ffff0007ffff0007ffff000fffff001fffff' +
    '003fffff007fffff30ffffff79ffffff7fffffffffffffffffffffffffffffff',
  'jaw-left':
    'c00f8003c03f8003c0ff8003ffff8001ffff8000ffffc000ffffc000ffffc000' +
    'ffffc000ffffc000ffffc000ffffe000ffffe000fffff000fffff000fffff800' +
    'fffff800fffff000ffffe000ffffe000ffffe000fffff000fffff000fffff000' +
    'fffff803ffffa007ffffb00ffffff01fffff7c1fffffff3fffffffffffffffff',
  'jaw-right':
    'c001f003c001fc03c001ff038001ffff0001ffff0003ffff0003ffff0003ffff' +
    '0003ffff0003ffff0003ffff0007ffff0007ffff000fffff000fffff001fffff' +
    '001fffff000fffff0007ffff0007ffff0007ffff000fffff000fffff000fffff' +
    'c01fffffe005fffff00dfffff80dfffff81efffffcfeffffffffffffffdfffff',
  'rear-jaw-left':
    'f1fffe0fe7fff807ffffe007ffffe003ffffe003ffffe003ffffe001ffffc001' +
    'ffffc000ffffc000ffffc000ffffe000ffffe000ffffe000fffff800fffffc00' +
    'fffffe00fffffe00fffffe00fffffe00ffffdc00ffff8000ffff8000ffff8000' +
    'fffc0003fff40007ffee0007ff0e0007ffff000fffff001fffff801ffe3fe03f',
  'rear-jaw-right':
    'f07fff8fe01fffe7e007ffffc007ffffc007ffffc007ffffc007ffff8007ffff' +
    '0007ffff0003ffff0003ffff0003ffff0003ffff0007ffff000fffff003fffff' +
    '003fffff003fffff003fffff003fffff001bffff0001ffff0001bfff0000ffff' +
    'c0007fffe000ffffe001fffff001fffff001fffff801fffffc01fffffe03f87f',
  'shoulder-left':
    'ffff7ffffffe3ffffffc1ffffff80ffffff003ffffe001ffffc000ffffc0003f' +
    'ff80001fff00000ffe000003fdc00001ffe00000fff00000fff00000fff00000' +
    'ffe00000dfe00000fe600000fc000000fc000001fc000003fc000007fe00000f' +
    'ff00001fff00003fff80007fffc000ffffe001ffffe003fffff007fffff00fff',
  'shoulder-right':
    'fffefffffffc7ffffff83fffffe01fffffc01fffff800ffffe0007fffc0003ff' +
    'f00001ffc00000ff800000ff000003ff000007ff00000fff00000fff00000fff' +
    '000007ff000007ff0000067f0000003f0000003f8000003fc000007fe00000ff' +
    'f00000fff80001fffe0003ffff0003ffff8007ffffc007ffffe00ffffff00fff',
}
