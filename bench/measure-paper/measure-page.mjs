// All that is measured on one page, and what it breaks.
import { brokenWords } from './broken-words.mjs';
import { BOUND, ON_DEMAND } from './documents.mjs';
import { beyondSheet, nearestToLeft, shrunkTo } from './edges.mjs';
import { otherFonts } from './fonts.mjs';
import { blankBelow } from './ink.mjs';
import { leastType, tooSmall } from './least-type.mjs';
import { linesOf } from './lines.mjs';
import { overlapsOf } from './overlaps.mjs';
import { ownWords } from './own-words.mjs';
import { titleStrip } from './title-strip.mjs';

/** mm at the left edge, for holes. */
const LEFT = 20;
/** Of a sheet's height: more is a half-empty one. */
const HALF = 0.5;
/** Of each sort that many are named. */
const NAMED = 4;

const listed = (all) => `${all.slice(0, NAMED).join(', ')}${all.length > NAMED ? ', …' : ''}`;

/** How much of a page is blank below its last line; running heads and the title strip aren't looked at. */
function blankShare(page, picture, strip) {
  const dots = picture.width / page.width;
  const boxes = page.texts.filter(({ group }) => group === 0);
  const scaled = [...boxes, ...(strip ? [strip.box] : [])].map(({ left, right, top, bottom }) => ({
    left: left * dots - 1,
    right: right * dots + 1,
    top: top * dots - 1,
    bottom: bottom * dots + 1,
  }));
  return blankBelow(picture, scaled, strip?.isAlongFoot ? strip.box.top * dots : undefined);
}

function edgeFindings(document, page, left) {
  const found = [];
  // A tenth for the printer's rounding.
  if (BOUND.has(document) && left && left.millimetres < LEFT - 0.1)
    found.push({
      found: `text ${left.millimetres.toFixed(1)} mm from the left edge: “${left.text}”`,
      asks: 'paper.md 1, Type: 20 mm at the left edge',
    });
  const beyond = beyondSheet(page);
  if (beyond.length > 0)
    found.push({
      found: `text beyond the sheet: ${listed(beyond)}`,
      asks: 'paper.md 1, Measured: what must fit a page',
    });
  const shrunk = shrunkTo(page);
  if (shrunk !== null)
    found.push({
      found: `the page is printed at ${(shrunk * 100).toFixed(0)} % of its size`,
      asks: 'paper.md 1, Type: no page wider than its sheet',
    });
  return found;
}

/** A text of several lines; what is cut behind its own hyphen is one word again. */
const joined = (lines) => lines.join(' ').replace(/(?<=[\p{L}\p{N}]-) (?=[\p{L}\p{N}])/gu, '');

function wordFindings(document, page, vocabularies) {
  const groups = linesOf(page.texts);
  const found = [];
  const broken = groups.flatMap((lines) => brokenWords(lines, vocabularies));
  if (broken.length > 0)
    found.push({
      found: `${broken.length} broken words: ${listed(broken)}`,
      asks: 'paper.md 1, Tables: a word breaks nowhere',
    });
  const own = ON_DEMAND.has(document) ? [] : ownWords(groups.map(joined));
  if (own.length > 0)
    found.push({
      found: `words of the program’s own: ${listed(own)}`,
      asks: 'paper.md 1, No word of the program’s own',
    });
  return found;
}

/**
 * Measures a page.
 * @param {string} document its kind, `permit-sheet`
 * @param {import('./page.d.mts').Page} page
 * @param {import('./ink.d.mts').Picture | null} picture of the page; null: ink isn't measured
 * @param {readonly import('./broken-words.d.mts').Vocabulary[]} vocabularies that hold the words of the job whole
 * @returns {import('./measure-page.d.mts').Measured}
 */
export function measurePage(document, page, picture, vocabularies) {
  const strip = titleStrip(page);
  const least = leastType(document, page, (text) => strip?.texts.has(text) ?? false);
  const left = nearestToLeft(page);
  const blank = picture ? blankShare(page, picture, strip) : null;
  const overlaps = overlapsOf(page.texts).map(([one, other]) => `“${one}” and “${other}”`);
  const findings = [
    ...tooSmall(document, least),
    ...otherFonts(document, page.texts),
    ...edgeFindings(document, page, left),
    ...wordFindings(document, page, vocabularies),
    ...(overlaps.length > 0
      ? [
          {
            found: `${overlaps.length} overlaps: ${listed(overlaps)}`,
            asks: 'paper.md 1, Measured: no text over text',
          },
        ]
      : []),
    ...(document === 'permit-sheet' && blank !== null && blank > HALF
      ? [
          {
            found: `${(blank * 100).toFixed(0)} % blank below the last line`,
            asks: 'paper.md 2, One-line drawing: no half-empty sheet',
          },
        ]
      : []),
  ];
  return { least, left: left?.millimetres ?? null, blank, findings };
}
