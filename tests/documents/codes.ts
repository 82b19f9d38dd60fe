// Stands in for the texts that words/ makes: `sentences.test.ts` puts a code in the place of each, and its English back later.

const english: string[] = [];
/** The kinds of texts that were replaced so far. */
export const made = new Set<string>();
let on = false;
let within = false;

/**
 * A code in the place of a text, each time another one.
 * @param code what it is made of: `kind:code`
 */
export function standIn(text: string, code: string): string {
  // What isn't said is no sentence.
  if (text === '') return text;
  made.add(code.split(':')[0] ?? '');
  return `\uE000${code}#${english.push(text) - 1}\uE001`;
}

/** What words/ makes, with codes for its texts where it leaves words/: sentences within one belong to it. */
export function replaced<T>(make: () => T, byCodes: (made: T) => T): T {
  if (!on || within) return make();
  within = true;
  try {
    return byCodes(make());
  } finally {
    within = false;
  }
}

/** A function that makes a text, replaced. */
export function texts<A extends readonly unknown[]>(
  kind: string,
  make: (...of: A) => string,
): (...of: A) => string {
  return (...of) =>
    replaced(
      () => make(...of),
      (text) => standIn(text, kind),
    );
}

/** An object whose texts are replaced; its key is no text for people. */
export function each<T extends object>(code: string, of: T): T {
  const parts = Object.entries(of).map(([part, text]: [string, unknown]) => [
    part,
    part === 'key' ? text : standIn(String(text), `${code}.${part}`),
  ]);
  return Object.fromEntries(parts) as T;
}

/** What is made while codes stand for texts. */
export function withCodes<T>(make: () => T): T {
  on = true;
  try {
    return make();
  } finally {
    on = false;
  }
}

/** Puts the English of each code back. */
export function inEnglish(text: string): string {
  return text.replace(/\uE000[^\uE000\uE001]*#(\d+)\uE001/g, (_, n: string) => english[Number(n)] ?? '?');
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"' };
const decoded = (html: string): string =>
  html.replace(
    /&(?:#x([0-9A-F]+)|#(\d+)|(\w+));/gi,
    (whole, hex?: string, decimal?: string, name?: string) =>
      hex !== undefined
        ? String.fromCodePoint(parseInt(hex, 16))
        : decimal !== undefined
          ? String.fromCodePoint(Number(decimal))
          : (ENTITIES[name ?? ''] ?? whole),
  );

/** A document in English whatever its sentences were, without what only the length of a text decides: breaks of lines, sizes. */
function compared(html: string): string {
  return html
    .replace(/<section class="note (?:usual|dense|densest)"/g, '<section class="note"')
    .split(/(<svg class="housing"[^]*?<\/svg>)/)
    .map((part, index) =>
      index % 2 === 0
        ? inEnglish(decoded(part))
        : inEnglish(decoded(part.replace(/<[^>]*>/g, ''))).replace(/\s+/g, ''),
    )
    .join('');
}

/** What is made in English, and what is made of codes with the English put back. */
export async function bothWays(
  make: () => Promise<readonly string[]>,
): Promise<{ english: string[]; ofCodes: string[]; replaced: number }> {
  const inWords = (await make()).map(compared);
  english.length = 0;
  on = true;
  try {
    const ofCodes = (await make()).map(compared);
    return { english: inWords, ofCodes, replaced: english.length };
  } finally {
    on = false;
  }
}
