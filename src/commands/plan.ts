import type { Argv } from 'yargs';
import { batch } from './batch.js';
import type { Act } from './context.js';
import { withBatchOptions } from './options.js';

/** `shuntbook plan LIST...`: all that `pack` does but the PDFs and `report.html`. */
export function addPlan(parser: Argv, act: Act): Argv {
  return parser.command(
    'plan <lists..>',
    'Do all that pack does but the PDFs: plans, schedules, open items, order list',
    (p) =>
      withBatchOptions(p).example(
        '$0 plan fixtures/demo/grid.csv --job UF-102 --out out/plans',
        'the plan of one job',
      ),
    (given) => act((context) => batch('plan', given, context)),
  );
}
