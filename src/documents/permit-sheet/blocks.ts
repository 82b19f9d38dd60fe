import type { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import type { DocumentContext } from '../parts/context.js';
import { checkedView } from '../parts/shell.js';
import { assumptionRows, AssumptionsSchema } from '../parts/contents/assumptions.js';
import { calculationSummary, CalculationSummarySchema } from '../parts/contents/calculations.js';
import { codeTable, CodeTableSchema } from './contents/codes.js';
import { permitNotes, PermitNotesSchema } from './contents/notes.js';
import { permitSchedule, PermitScheduleSchema } from '../parts/contents/schedule.js';
import type { PermitPage } from './paper.js';

/** A block of the sheets: the path of its template in `templates/`, and what it shows. */
export interface Block {
  readonly name: string;
  readonly template: string;
  readonly view: object;
}

/** The blocks of a job's sheets. */
export interface Blocks {
  /** Over the whole width; the last may go into columns as well. */
  readonly wide: readonly Block[];
  /** In columns; the last is the last of `wide`. */
  readonly narrow: readonly Block[];
}

function block<S extends z.ZodType<object>>(
  name: string,
  template: string,
  schema: S,
  view: z.infer<S>,
): Block {
  return { name, template, view: checkedView('permit-sheet', schema, view) };
}

/**
 * The blocks of a job's sheets, each checked against its schema.
 * @throws Failure where a view has a hole in it
 */
export function permitBlocks(plan: Plan, context: DocumentContext, page: PermitPage): Blocks {
  const of = { narrow: !page.wide, dataSheets: context.dataSheets?.map(({ part }) => part) };
  const calculations = block(
    'calculations',
    'contents/calculations',
    CalculationSummarySchema,
    calculationSummary(plan),
  );
  return {
    wide: [
      block('schedule', 'contents/schedule', PermitScheduleSchema, permitSchedule(plan, of)),
      calculations,
    ],
    narrow: [
      block('notes', 'permit-sheet/notes', PermitNotesSchema, permitNotes(plan, of)),
      block('codes', 'permit-sheet/codes', CodeTableSchema, codeTable(plan)),
      block('assumptions', 'contents/assumptions', AssumptionsSchema, assumptionRows(plan)),
      calculations,
    ],
  };
}
