import type { PdfObject } from './pdf-objects.js';

/** A tag as the browser writes it: its kids are places of marked content (numbers, dictionaries) and other tags (references). */
interface Tag {
  readonly number: number;
  readonly role: string;
  /** All but role, parent, page and kids. */
  readonly more: string;
  parent: number;
  page: string;
  kids: readonly string[];
}

const TAG =
  /^<<\/Type \/StructElem\n\/S \/(\w+)\n\/P (\d+) 0 R((?:\n\/Pg (\d+) 0 R)?)\n\/K (\[[^[\]]*\]|\d+(?: 0 R)?)((?:\n[\s\S]*)?)>>$/;

/** References, dictionaries and numbers of an array. */
const KID = /\d+ 0 R|<<[^<>]*>>|\d+/g;

function tagOf({ number, text, stream }: PdfObject): Tag | undefined {
  const found = stream === undefined ? TAG.exec(text) : null;
  if (found === null) return undefined;
  const [, role = '', parent, , page = '', kids = '', more = ''] = found;
  return { number, role, more, parent: Number(parent), page, kids: kids.match(KID) ?? [] };
}

const referenced = (kid: string): number => (kid.endsWith(' 0 R') ? Number.parseInt(kid, 10) : 0);
const isPlace = (kid: string): boolean => /^\d+$/.test(kid);

/** What may stand in these only is said by the standard (ISO 32000-1, 14.8.4.3): nothing is put into them. */
const ORDERED: ReadonlySet<string> = new Set([
  'Table',
  'TR',
  'THead',
  'TBody',
  'TFoot',
  'L',
  'TOC',
  'Document',
]);

/** Each cell spans one row and one column, unless it says more (ISO 32000-1, table 349). */
const withoutDefaults = (more: string): string =>
  more.replace(/ ?<<\/O \/Table\n\/(?:Row|Col)Span 1>>/g, '').replace(/\n\/A \[\s*\]/, '');

function written({ role, parent, page, kids, more }: Tag): string {
  const own = kids.length === 1 ? (kids[0] ?? '') : `[${kids.join(' ')}]`;
  const where = page === '' ? '' : `\n/Pg ${page} 0 R`;
  return `<</Type /StructElem\n/S /${role}\n/P ${String(parent)} 0 R${where}\n/K ${own}${withoutDefaults(more)}>>`;
}

/** Objects that something else than tags and their lists by page refers to: bookmarks, names, annotations. */
function pointedAt(objects: readonly PdfObject[], tags: ReadonlyMap<number, Tag>): ReadonlySet<number> {
  const found = new Set<number>();
  for (const { number, text } of objects) {
    if (tags.has(number) || text.startsWith('[')) continue;
    for (const [, other] of text.matchAll(/(\d+) 0 R/g)) found.add(Number(other));
  }
  return found;
}

/** Puts what a tag without meaning holds into the tag that holds it. */
function dissolve(tag: Tag, into: Tag): void {
  if (into.page === '' && !into.kids.some(isPlace)) into.page = tag.page;
  const asKid = (kid: string): string =>
    isPlace(kid) && tag.page !== into.page ? `<</Type /MCR\n/Pg ${tag.page} 0 R\n/MCID ${kid}>>` : kid;
  into.kids = into.kids.flatMap((kid) => (referenced(kid) === tag.number ? tag.kids.map(asKid) : [kid]));
}

/**
 * Takes away the tags that mean nothing (`NonStruct`: the browser makes one for each piece of text) and what tags say that is so
 * anyhow: half of the tags of a table are that. What is read, in what order and as what stays.
 * Source: ISO 32000-1, 14.7.2 (structure elements), 14.7.4 (content items, parent tree), table 333 (NonStruct).
 * @param objects of a PDF as the browser wrote it
 */
export function withLeanTags(objects: readonly PdfObject[]): readonly PdfObject[] {
  const tags = new Map<number, Tag>();
  for (const object of objects) {
    const tag = tagOf(object);
    if (tag) tags.set(object.number, tag);
  }
  const pointed = pointedAt(objects, tags);
  const gone = new Map<number, number>();
  for (const tag of tags.values()) {
    const into = tags.get(tag.parent);
    const isLeaf = tag.kids.every((kid) => referenced(kid) === 0);
    const mayGo = tag.role === 'NonStruct' && tag.more === '' && isLeaf && !pointed.has(tag.number);
    if (into === undefined || !mayGo || ORDERED.has(into.role)) continue;
    dissolve(tag, into);
    gone.set(tag.number, into.number);
  }
  return objects.flatMap((object) => {
    if (gone.has(object.number)) return [];
    const tag = tags.get(object.number);
    if (tag) return [{ ...object, text: written(tag) }];
    // The list of a page: which tag each place of its content belongs to.
    if (object.stream !== undefined || !object.text.startsWith('[')) return [object];
    const text = object.text.replace(/(\d+) 0 R/g, (whole, number: string) => {
      let holder = Number(number);
      for (let next = gone.get(holder); next !== undefined; next = gone.get(next)) holder = next;
      return holder === Number(number) ? whole : `${String(holder)} 0 R`;
    });
    return [{ ...object, text }];
  });
}
