import { isNec } from '../../../model/editions.js';
import type { Plan } from '../../../model/plan.js';
import type { CodeLine } from './code-line.js';
import { IEC_LINES } from './code-lines-iec.js';
import { NEC_LINES } from './code-lines-nec.js';

/** The lines of the code table under the basis of a job, in the order in which a reviewer looks for them. */
export function codeLines(plan: Plan): readonly CodeLine[] {
  return isNec(plan.basis) ? NEC_LINES : IEC_LINES;
}
