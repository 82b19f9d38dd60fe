import type { Argv } from 'yargs';
import { batch } from './batch.js';
import type { Act } from './context.js';
import { withBatchOptions } from './options.js';

/** `shuntbook pack LIST...`: plans and prints every job of the lists. */
export function addPack(parser: Argv, act: Act): Argv {
  return parser.command(
    'pack <lists..>',
    'Plan and print a handover pack for each job of the lists',
    (p) =>
      withBatchOptions(p).example(
        '$0 pack fixtures/demo --out out/demo',
        'packs of every job of the lists in a folder, with the catalogue, library and settings beside them',
      ),
    (given) => act((context) => batch('pack', given, context)),
  );
}
