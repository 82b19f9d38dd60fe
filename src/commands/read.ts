import { itemInEnglish } from '../words/english-beside.js';
import type { JobItem } from '../index.js';
import type { Argv } from 'yargs';
import type { ExitStatus } from '../index.js';
import { surveyText } from '../screen/survey.js';
import { itemText } from '../screen/item-text.js';
import { itemsText } from '../screen/tell.js';
import { dialectText, mapText, wordsTable } from '../screen/understood.js';
import type { Act, Context } from './context.js';
import { withInputOptions } from './options.js';
import { readAll, type ReadingArguments } from './reading.js';
import { listsOf, textOption } from './usage.js';

/** `shuntbook read LIST...`: how the lists were understood, without planning or printing. */
export function addRead(parser: Argv, act: Act): Argv {
  return parser.command(
    'read <lists..>',
    'Show how lists were understood: jobs, equipment, ports, runs, and every open item',
    (p) =>
      withInputOptions(p)
        .positional('lists', {
          type: 'string',
          array: true,
          demandOption: true,
          describe: 'Files, folders, or - for standard input',
        })
        .example('$0 read fixtures/demo/grid.csv --job UF-102', 'one job of a list as it was understood'),
    (given) => act((context) => read(given, context)),
  );
}

async function read(
  given: ReadingArguments & { readonly lists: readonly string[] },
  context: Context,
): Promise<ExitStatus> {
  const { EXIT, placeItems, surveySite } = await import('../index.js');
  const reading = await readAll(listsOf(given.lists), given, context);
  const job = textOption('job', given.job);
  const lists = reading.read.jobs.filter((list) => job === undefined || list.job === job);
  const surveys = lists.map((list) => surveySite(list, reading.settings));
  const items: JobItem[] = [
    ...reading.items.map((item) => ({ job: '', item })),
    ...surveys.flatMap((site) => placeItems(site, site.notes).map((item) => ({ job: site.job, item }))),
  ];
  const grave = items.some(({ item }) => item.severity !== 'confirm');
  const exitStatus = reading.unreadable.length > 0 ? EXIT.unreadable : grave ? EXIT.drafts : EXIT.complete;
  for (const item of reading.unreadable) context.err(itemText(item));
  if (!given.quiet) context.err(itemsText(items, true, '--json prints all of them'));
  if (given.json) {
    const result = {
      version: 1,
      command: 'read',
      exitStatus,
      files: reading.read.understood,
      jobs: lists.map((list) => ({
        job: list.job,
        facts: list.facts,
        rows: list.rows.map((r) => ({ line: r.line, facts: r.facts })),
      })),
      openItems: items.map(({ job: of, item }) => ({ job: of, ...itemInEnglish(item) })),
      unreadable: reading.unreadable.map(itemInEnglish),
    };
    context.out(`${JSON.stringify(result, null, 2)}\n`);
  } else {
    for (const file of reading.read.understood) {
      context.out(dialectText(file));
      if (reading.map !== null) context.out(mapText(file, reading.map.map, reading.map.path));
      else context.out(wordsTable(file));
    }
    for (const survey of surveys) context.out(`\n${surveyText(survey)}`);
  }
  return exitStatus;
}
