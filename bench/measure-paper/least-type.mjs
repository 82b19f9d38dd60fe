// The least type of a page by the role of what it says, and what the design asks for each role.

import { isPhotoPage } from './documents.mjs';

/** Rounding of the printer: 9.9975 points are 10. */
const ROUNDING = 0.05;

/** In points. Where a document isn't here, the design names no least size for it. */
const LEAST = {
  'permit-sheet': { asks: 'paper.md 1, Type: 10 pt on permit sheets', all: 10 },
  'permit-addendum': { asks: 'paper.md 1, Type: 10 pt on permit sheets', all: 10 },
  'permit-appendix': { asks: 'paper.md 1, Type: 10 pt on permit sheets', all: 10 },
  'closeout-pack': {
    asks: 'paper.md 1, Type: 8.5 pt in tables of the pack; at the box 14 pt, 11 pt in the table of tags',
    table: 8.5,
    'box table': 11,
    'box figure': 14,
    'box text': 14,
  },
  'owner-sheet': { asks: 'paper.md 1, Type: 13 pt for owners', all: 13 },
};

const within = (text, role) => text.roles.includes(role);

/** True for a page of the pack that is held at the equipment: upright, with a picture. */
function isBoxNote(document, page) {
  return (
    document === 'closeout-pack' &&
    page.width < page.height &&
    !isPhotoPage(page) &&
    page.texts.some((text) => within(text, 'Figure'))
  );
}

/**
 * What a text is part of, by the structure that it is printed in.
 * @param {import('./page.d.mts').Text} text
 * @param {boolean} atBox on a page that is held at the equipment
 * @returns {import('./least-type.d.mts').Role}
 */
function roleOf(text, atBox) {
  if (text.group === 0) return 'margin';
  if (within(text, 'Figure')) return atBox ? 'box figure' : 'drawing';
  if (within(text, 'Table')) return atBox ? 'box table' : 'table';
  if (text.roles.some((role) => /^H\d?$/.test(role))) return 'heading';
  return atBox ? 'box text' : 'body';
}

/**
 * The least type of a page by role.
 * @param {string} document its kind, such as `permit-sheet`
 * @param {import('./page.d.mts').Page} page
 * @param {(text: import('./page.d.mts').Text) => boolean} isStrip true for what stands in the title strip
 * @returns {import('./least-type.d.mts').LeastType} points, and the first text that is so small
 */
export function leastType(document, page, isStrip = () => false) {
  const atBox = isBoxNote(document, page);
  const least = {};
  for (const text of page.texts) {
    const role = isStrip(text) ? 'title strip' : roleOf(text, atBox);
    if (!least[role] || text.size < least[role].points) least[role] = { points: text.size, text: text.text };
  }
  return least;
}

/**
 * Roles whose type is smaller than the design asks.
 * @param {string} document its kind
 * @param {import('./least-type.d.mts').LeastType} least
 * @returns {import('./page.d.mts').Finding[]}
 */
export function tooSmall(document, least) {
  const asked = LEAST[document];
  if (!asked) return [];
  return Object.entries(least).flatMap(([role, { points, text }]) => {
    const limit = asked[role] ?? asked.all;
    return limit === undefined || points >= limit - ROUNDING
      ? []
      : [{ found: `${role} of ${points.toFixed(2)} pt: “${text}”`, asks: asked.asks }];
  });
}
