import type { FormField, FormFields, HiddenField } from '../model/print.js';
import { formFont } from './form-font.js';
import type { PdfObject } from './pdf-objects.js';
import { pdfText } from './pdf-text.js';

/** What is typed, points; the label of a field is as large. */
const SIZE = 9;
/** As boxes to write in are on all papers: light grey, a thin line. */
const GREY = '.925';
const LINE = 0.7;
/** Bits of `/Ff` (ISO 32000-1, tables 221 and 230). */
const READ_ONLY = 1;
const COMBO = 1 << 17;
const EDIT = 1 << 18;
/** Bits of `/F` of an annotation (ISO 32000-1, table 165). */
const PRINTED = 4;
const HIDDEN = 2;

/** A link of the page that leaves room for a field, as the browser wrote it. */
interface Room {
  readonly object: PdfObject;
  readonly rect: string;
  readonly structParent: string;
}

/** Rooms by the name of their field. */
function roomsOf(objects: readonly PdfObject[]): ReadonlyMap<string, Room> {
  const rooms = new Map<string, Room>();
  for (const object of objects) {
    const name = /\/URI \(field:([A-Za-z0-9_.~-]+)\)/.exec(object.text)?.[1];
    if (name === undefined || !object.text.includes('/Subtype /Link')) continue;
    const rect = /\/Rect (\[[-\d. ]+\])/.exec(object.text)?.[1];
    const structParent = /\/StructParent (\d+)/.exec(object.text)?.[1];
    if (rect === undefined || structParent === undefined || rooms.has(name))
      throw new Error(`the room of the field ${name} has a form that isn’t known`);
    rooms.set(name, { object, rect, structParent });
  }
  return rooms;
}

/** Numbers that objects which are added take, one after another. */
type Numbers = () => number;

/** The tree of fields: what stands before a full stop is the parent of what follows it. */
interface Node {
  readonly number: number;
  readonly name: string;
  readonly parent: number | undefined;
  readonly kids: Node[];
}

class FieldTree {
  readonly roots: Node[] = [];
  private readonly byPath = new Map<string, Node>();

  constructor(private readonly next: Numbers) {}

  /** Adds a field, and whatever stands above it. */
  add(name: string, number: number): Node {
    const parts = name.split('.');
    let above: Node | undefined;
    for (const [i, part] of parts.slice(0, -1).entries()) {
      const path = parts.slice(0, i + 1).join('.');
      let node = this.byPath.get(path);
      if (!node) {
        node = this.under(above, part, this.next());
        this.byPath.set(path, node);
      }
      above = node;
    }
    return this.under(above, parts.at(-1) ?? '', number);
  }

  /** The objects of what only stands above fields. */
  get objects(): PdfObject[] {
    return Array.from(this.byPath.values(), ({ number, name, parent, kids }) => ({
      number,
      text: `<</T ${pdfText(name)}${parentText(parent)}\n/Kids [${kids.map((kid) => `${kid.number} 0 R`).join(' ')}]>>`,
      stream: undefined,
    }));
  }

  private under(above: Node | undefined, name: string, number: number): Node {
    const node: Node = { number, name, parent: above?.number, kids: [] };
    (above?.kids ?? this.roots).push(node);
    return node;
  }
}

const parentText = (parent: number | undefined): string =>
  parent === undefined ? '' : `\n/Parent ${parent} 0 R`;

/** How an empty field looks: a box to write in. One for all of a size. */
class Boxes {
  readonly objects: PdfObject[] = [];
  private readonly known = new Map<string, number>();

  constructor(private readonly next: Numbers) {}

  of(rect: string): number {
    const [left = 0, bottom = 0, right = 0, top = 0] = (rect.match(/-?[\d.]+/g) ?? []).map(Number);
    const [width, height] = [right - left, top - bottom].map((side) => Number(side.toFixed(2)));
    const size = `${width} ${height}`;
    const known = this.known.get(size);
    if (known !== undefined) return known;
    const number = this.next();
    this.known.set(size, number);
    const half = LINE / 2;
    const inner = `${half} ${half} ${((width ?? 0) - LINE).toFixed(2)} ${((height ?? 0) - LINE).toFixed(2)}`;
    const stream = Buffer.from(
      `${GREY} g 0 0 ${size} re f ${LINE} w 0 G ${inner} re S /Tx BMC EMC\n`,
      'latin1',
    );
    const what = `/Type /XObject\n/Subtype /Form\n/BBox [0 0 ${size}]\n/Resources <<>>`;
    this.objects.push({ number, text: `<<${what}\n/Length ${stream.length}>>`, stream });
    return number;
  }
}

function kindText({ options, free }: FormField): string {
  if (options.length === 0) return '/FT /Tx';
  const pairs = options.map(({ value, shows }) => `[${pdfText(value)} ${pdfText(shows)}]`);
  return `/FT /Ch\n/Ff ${COMBO + (free ? EDIT : 0)}\n/Opt [${pairs.join(' ')}]`;
}

function fieldText(field: FormField, { rect, structParent }: Room, node: Node, box: number): string {
  return [
    `<</Type /Annot\n/Subtype /Widget\n/F ${PRINTED}\n/Rect ${rect}\n/StructParent ${structParent}`,
    `/T ${pdfText(node.name)}${parentText(node.parent)}`,
    kindText(field),
    `/TU ${pdfText(field.tooltip)}`,
    `/DA (/Form ${SIZE} Tf 0 g)`,
    `/MK <</BG [${GREY}] /BC [0]>>\n/BS <</W ${LINE} /S /S>>`,
    `/AP <</N ${box} 0 R>>>>`,
  ].join('\n');
}

function hiddenText({ value }: HiddenField, node: Node): string {
  const what = `/Type /Annot\n/Subtype /Widget\n/F ${HIDDEN}\n/Rect [0 0 0 0]`;
  return `<<${what}\n/T ${pdfText(node.name)}${parentText(node.parent)}\n/FT /Tx\n/Ff ${READ_ONLY}\n/V ${pdfText(value)}\n/DA (/Form ${SIZE} Tf 0 g)>>`;
}

/**
 * Turns the links of a page that leave room for fields into the fields of a form: with a tooltip each, in the order of the tags, and
 * tagged as Form, which a link's tag becomes.
 * Source: ISO 32000-1, 12.7 (interactive forms), 14.8.4.4 (Form); ISO 14289-1, 7.18.
 * @param objects of a PDF as the browser wrote it
 * @param root number of its catalogue
 * @param form every field that the page has room for, and what it carries unseen
 * @throws Error where a field has no room, or a room no field: no form that lacks one is printed
 */
export function withFormFields(
  objects: readonly PdfObject[],
  root: number,
  { fields, hidden }: FormFields,
): PdfObject[] {
  const rooms = roomsOf(objects);
  const known = new Set(fields.map(({ name }) => name));
  const odd = [...fields.map(({ name }) => name).filter((name) => !rooms.has(name))];
  for (const name of rooms.keys()) if (!known.has(name)) odd.push(name);
  if (odd.length > 0)
    throw new Error(`${odd.length} fields and rooms of the form don’t meet: ${odd[0] ?? ''}`);
  let last = objects.reduce((most, { number }) => Math.max(most, number), 0);
  const next = (): number => (last += 1);
  const tree = new FieldTree(next);
  const boxes = new Boxes(next);
  const changed = new Map<number, string>();
  for (const field of fields) {
    const room = rooms.get(field.name);
    if (!room) continue;
    const { number } = room.object;
    changed.set(number, fieldText(field, room, tree.add(field.name, number), boxes.of(room.rect)));
  }
  const unseen = hidden.map((field): PdfObject => {
    const number = next();
    return { number, text: hiddenText(field, tree.add(field.name, number)), stream: undefined };
  });
  const [font = { number: 0, text: '', stream: undefined }, ...ofFont] = formFont(last + 1);
  last += 1 + ofFont.length;
  const roots = tree.roots.map(({ number }) => `${number} 0 R`).join(' ');
  const fontText = `<</Font <</Form ${font.number} 0 R>>>>`;
  const acroForm = `<</Fields [${roots}]\n/DR ${fontText}\n/DA (/Form ${SIZE} Tf 0 g)>>`;
  const added = [
    ...tree.objects,
    ...boxes.objects,
    ...unseen,
    font,
    ...ofFont,
    { number: next(), text: acroForm, stream: undefined },
  ];
  const formNumber = last;
  let isFirstPage = true;
  const mended = objects.map((object) => {
    const field = changed.get(object.number);
    if (field !== undefined) return { ...object, text: field };
    const { text } = object;
    if (object.number === root)
      return { ...object, text: `${text.slice(0, text.lastIndexOf('>>'))}\n/AcroForm ${formNumber} 0 R>>` };
    const of = /\/S \/Link\n[\s\S]*\/Type \/OBJR\n\/Obj (\d+) 0 R/.exec(text)?.[1];
    if (of !== undefined && changed.has(Number(of)))
      return { ...object, text: text.replace('/S /Link\n', '/S /Form\n') };
    if (isFirstPage && unseen.length > 0 && /\/Annots \[/.test(text)) {
      isFirstPage = false;
      const more = unseen.map(({ number }) => `${number} 0 R`).join(' ');
      return { ...object, text: text.replace(/\/Annots \[/, `/Annots [${more} `) };
    }
    return object;
  });
  return [...mended, ...added];
}
