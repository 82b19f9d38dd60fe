// The documents of a pack, and what is asked of each.

export const DOCUMENTS = [
  'permit-sheet',
  'permit-addendum',
  'permit-appendix',
  'closeout-pack',
  'owner-sheet',
  'labels',
];

/** What is measured and listed, not failed: what isn't set anew yet, and what holds pages of others. */
export const HELD = new Map([
  ['permit-appendix', 'it comes only when it is asked for, and makers’ data sheets are appended to it'],
]);

/** Documents that go into a binder. */
export const BOUND = new Set([
  'permit-sheet',
  'permit-addendum',
  'permit-appendix',
  'closeout-pack',
  'owner-sheet',
]);

/** Documents that are sheets with a title strip. */
export const SHEETS = new Set(['permit-sheet', 'permit-addendum']);

/** What comes only when it is asked for may hold what only the office needs. */
export const ON_DEMAND = new Set(['permit-appendix']);

/** The running heads of pages of photos, in the languages of a crew. */
const PHOTOS = /^(?:Photos|Fotos)$/;

/**
 * True for a page of photos, which isn't held at the equipment.
 * @param {Pick<import('./page.d.mts').Page, 'texts'>} page
 */
export function isPhotoPage({ texts }) {
  return texts.some(({ group, text }) => group === 0 && PHOTOS.test(text.trim()));
}

/**
 * Which document a file is, or is a sheet of.
 * @param {string} name of the file
 * @returns {string | null}
 */
export function documentOf(name) {
  if (!name.endsWith('.pdf')) return null;
  const stem = name.slice(0, -'.pdf'.length);
  return (
    DOCUMENTS.find(
      (document) =>
        stem === document || (/^-\d/.test(stem.slice(document.length)) && stem.startsWith(document)),
    ) ?? null
  );
}
