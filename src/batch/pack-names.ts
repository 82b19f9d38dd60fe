import { DOCUMENT_KINDS } from '../documents/parts/context.js';

const NAMES: ReadonlySet<string> = new Set([
  'plan.json',
  'schedule.csv',
  'permit-appendix.pdf',
  'permit-addendum.pdf',
  ...DOCUMENT_KINDS.map((kind) => `${kind}.pdf`),
]);
/** Permit sheets in files of their own; packs of before had a word behind the number. */
const SEPARATE = /^permit-sheet-\d{1,3}(?:-[a-z][a-z-]{0,30})?\.pdf$/;
/** What a crew fills in; a new one beside one that someone filled in has a name of its own. */
const FORM = /^site-(?:record|readings|facts)(?:\.new(?:-\d{1,2})?)?\.csv$/;
const PDF_FORM = /^site-record(?:\.new(?:-\d{1,2})?)?\.pdf$/;
const FOLDER = /^[A-Za-z0-9_-][A-Za-z0-9._-]{0,79}$/;

/** True for the name of a file that a pack can hold: no other file of a job's folder is ours to write or remove. */
export function isPackFile(name: string): boolean {
  return NAMES.has(name) || SEPARATE.test(name) || isFormFile(name);
}

/** True for the name of a form that a crew fills in. */
export function isFormFile(name: string): boolean {
  return FORM.test(name) || PDF_FORM.test(name);
}

/** True for the name of a file that needs no page to be printed. */
export function isPlanFile(name: string): boolean {
  return name === 'plan.json' || name === 'schedule.csv' || FORM.test(name);
}

/** True for a name that a job's folder can have: it leads nowhere else. */
export function isPackFolder(name: string): boolean {
  return FOLDER.test(name);
}
