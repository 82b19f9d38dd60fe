/** A key that stands twice in one object. */
export interface KeyTwice {
  readonly path: readonly string[];
  /** Of the second. */
  readonly line: number;
}

/** Where the string that begins at a quotation mark ends. */
function stringEnd(text: string, start: number): number {
  let end = start + 1;
  while (end < text.length && text[end] !== '"') end += text[end] === '\\' ? 2 : 1;
  return end;
}

/**
 * The keys that stand twice in an object of a JSON text: of those the parser takes the last in silence.
 * @param text valid JSON
 */
export function keysTwice(text: string): KeyTwice[] {
  const twice: KeyTwice[] = [];
  /** The objects and arrays that are open, with the key that each is at. */
  const open: { readonly keys: Set<string> | null; at: string }[] = [];
  let line = 1;
  let awaitsKey = false;
  for (let i = 0; i < text.length; i += 1) {
    const sign = text[i];
    const inner = open.at(-1);
    if (sign === '\n') line += 1;
    else if (sign === '{' || sign === '[') {
      open.push({ keys: sign === '{' ? new Set() : null, at: '' });
      awaitsKey = sign === '{';
    } else if (sign === '}' || sign === ']') open.pop();
    else if (sign === ',') awaitsKey = inner?.keys != null;
    else if (sign === '"') {
      const end = stringEnd(text, i);
      if (awaitsKey && inner?.keys != null) {
        inner.at = String(JSON.parse(text.slice(i, end + 1)));
        if (inner.keys.has(inner.at)) twice.push({ path: open.map((o) => o.at), line });
        inner.keys.add(inner.at);
      }
      awaitsKey = false;
      i = end;
    }
  }
  return twice;
}
