import { MARGIN, SHEETS } from '../parts/css.js';
import type { Sheet } from '../parts/css.js';
import type { Room } from './sheets.js';

/** Heading above a drawing. */
const HEADING = 26;
/** Legend below a drawing on a small sheet; legend, job and room for a stamp on a large one. */
const LEGEND = 62;
const TITLE_STRIP = 102;

/** The large sheet that goes with a paper: 11 x 17 in with letter, A3 with A4. */
export function largeSheet(paper: Sheet): Sheet {
  return paper === 'A4' || paper === 'A3' ? 'A3' : 'tabloid';
}

/** `main` of the base style keeps off the right edge by a little less. */
const EDGE = 2;

/** What is left inside the margins of a landscape page, in points. */
function inside(sheet: Sheet): Room {
  const { width, height } = SHEETS[sheet];
  return { width: height - MARGIN.left - MARGIN.right - EDGE, height: width - MARGIN.top - MARGIN.bottom };
}

/** Room for a drawing on the large sheet in landscape, with the strip that holds job and stamp. */
export function largeRoom(paper: Sheet): Room {
  const { width, height } = inside(largeSheet(paper));
  return { width, height: height - HEADING - TITLE_STRIP };
}

/** Room for a drawing on the paper itself in landscape. */
export function smallRoom(paper: Sheet): Room {
  const { width, height } = inside(paper);
  return { width, height: height - HEADING - LEGEND };
}
