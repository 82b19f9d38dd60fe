import type { Plan } from '../../model/plan.js';
import type { DocumentContext } from '../parts/context.js';
import { scheduleRows } from '../parts/schedule.js';
import { calculationViews } from '../parts/calculations.js';
import { limitTexts } from '../parts/limits.js';
import { clauseStrip } from './clause-strip.js';

/** A block of the sheets: its template in `templates/permit-sheet/`, and what it shows. */
export interface Block {
  readonly name: string;
  readonly view: object;
}

/** The blocks of a job's sheets. */
export interface Blocks {
  /** Over the whole width. */
  readonly wide: readonly Block[];
  /** In columns. */
  readonly narrow: readonly Block[];
}

/** Makes the blocks of a job's sheets. */
export function permitBlocks(plan: Plan, _context: DocumentContext, isWide: boolean): Blocks {
  return {
    wide: [
      { name: 'schedule', view: { isWide, rows: scheduleRows(plan) } },
      { name: 'calculations', view: { isWide, rows: calculationViews(plan) } },
    ],
    narrow: [
      { name: 'notes', view: { notes: limitTexts(plan) } },
      { name: 'codes', view: { rows: clauseStrip(plan) } },
    ],
  };
}
