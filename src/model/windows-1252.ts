/**
 * Characters of the bytes 80 to 9F of Windows code page 1252 (Unicode mapping table of that page); the rest is Latin-1. Node's own decoder
 * has passed these bytes through as control characters in one version and not in another.
 */
export const WINDOWS_1252_HIGH =
  '\u20ac\u0081\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\u008d\u017d\u008f' +
  '\u0090\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\u009d\u017e\u0178';
