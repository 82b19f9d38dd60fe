// How many pages a document may have.

const SMALL = new Set(['letter', 'a4']);
/** Sizes of sheets in points, the shorter side first. */
const SIZES = {
  letter: [612, 792],
  a4: [595, 842],
  tabloid: [792, 1224],
  a3: [842, 1191],
  'arch-d': [1728, 2592],
};

/**
 * The name of a sheet's size, whichever way it lies.
 * @param {{ width: number, height: number }} page in points
 * @returns {string} such as `letter`, else `216 x 279 mm`
 */
export function paperOf({ width, height }) {
  const sides = [width, height].sort((one, other) => one - other);
  const known = Object.entries(SIZES).find(([, size]) =>
    size.every((side, at) => Math.abs(side - sides[at]) < 2),
  );
  return known ? known[0] : sides.map((side) => Math.round((side / 72) * 25.4)).join(' x ') + ' mm';
}

const permit = (protectors, paper) => {
  const [large, small] =
    protectors <= 6 ? [2, 4] : protectors <= 14 ? [3, 6] : protectors <= 32 ? [4, 9] : [null, null];
  return SMALL.has(paper) ? small : large;
};

const BUDGETS = {
  'permit-sheet': { asks: 'paper.md 2, sheets by protectors and paper', most: permit },
  'permit-addendum': { asks: 'record.md: one sheet', most: () => 1 },
  'closeout-pack': {
    asks: 'paper.md 3, pages of the pack',
    // Two measures: so many pages in all, or seven beside the notes.
    most: (protectors, paper, notes) => {
      const all = protectors <= 6 ? 10 : protectors <= 14 ? 14 : protectors <= 32 ? 30 : null;
      const besides = notes === null ? null : 7 + notes;
      return all === null ? besides : Math.max(all, besides ?? 0);
    },
  },
  'owner-sheet': {
    asks: 'paper.md 4, two pages up to 8 protectors',
    most: (protectors) => (protectors <= 8 ? 2 : null),
  },
};

/**
 * The pages that a document may have.
 * @param {string} document its kind
 * @param {number} protectors of the job
 * @param {string} paper of its sheets, `letter`
 * @param {number | null} notes pages of wiring notes that its kinds of places may take; null: of a job of the demo, which has figures of its own
 * @param {number} more pages that a record and its photos may add to a pack
 * @returns {{ most: number, asks: string } | null} null where the design names none
 */
export function budgetOf(document, protectors, paper, notes = null, more = 0) {
  const most = BUDGETS[document]?.most(protectors, paper, notes) ?? null;
  const own = document === 'closeout-pack' ? more : 0;
  return most === null ? null : { most: most + own, asks: BUDGETS[document].asks };
}
