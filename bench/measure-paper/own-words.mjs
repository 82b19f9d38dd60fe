// Words of the program's own, which no page may hold.

const OWN = [
  ['a rule id', /(?<![\p{L}\p{N}/-])(?:place|rate|wire|indicate|choose)\/[a-z][a-z0-9-]*/gu],
  ['a name with an underscore', /(?<![\p{L}\p{N}_])\p{L}[\p{L}\p{N}]*(?:_[\p{L}\p{N}]+)+/gu],
  ['a port name', /(?<![\p{L}\p{N}-])(?:dc-in(?:-\d+)?|ac-in(?:-2)?|ac-out)(?![\p{L}\p{N}-])/gu],
  // `service` and `feeder` are words of the trade too: only behind a tag and a colon they are a port.
  ['a port name', /(?<=[\p{L}\p{N}]:)(?:service|feeder|output|battery|terminals)(?![\p{L}\p{N}-])/gu],
  ['a file’s name', /[^\s“”"'()]+\.(?:csv|tsv|txt|xlsx|xlsm|ods|json|pdf|html)(?![\p{L}\p{N}])/giu],
  ['a path', /(?<![^\s“"'(])(?:\/[\p{L}\p{N}._-]+){2,}\/?|(?<![\p{L}\p{N}])[A-Za-z]:\\\S+/gu],
  ['“as stated”', /\bas stated\b/giu],
  ['“default”', /\bdefault(?:s|ed)?\b/giu],
  ['“derived by us”', /\bderived by us\b/giu],
];

/**
 * The words of the program's own in texts, each once.
 * @param {readonly string[]} texts each whole in itself: a cell, a sentence; their lines joined by blanks
 * @returns {string[]} such as `a rule id: place/long-run`
 */
export function ownWords(texts) {
  const found = texts.flatMap((text) =>
    OWN.flatMap(([what, pattern]) => [...text.matchAll(pattern)].map(([word]) => `${what}: ${word}`)),
  );
  return [...new Set(found)];
}
