import { access } from 'node:fs/promises';
import type { Argv } from 'yargs';
import type { ExitStatus } from '../index.js';
import { note } from '../model/message.js';
import { COMMAND_MESSAGES } from '../model/messages/command.js';
import { counted } from '../screen/text-table.js';
import { itemsText, itemText } from '../screen/tell.js';
import { dialectText, headingsTable } from '../screen/understood.js';
import type { Act, Context } from './context.js';
import { withInputOptions } from './options.js';
import { readAll, type ReadingArguments } from './reading.js';
import { listsOf, textOption } from './usage.js';

interface ColumnsArguments extends ReadingArguments {
  readonly list: string;
  readonly write?: string | undefined;
}

/** `shuntbook columns LIST`: how each heading of a list was understood, and a column map to correct by hand. */
export function addColumns(parser: Argv, act: Act): Argv {
  return parser.command(
    'columns <list>',
    'Show how each heading of a list was understood, with three cells of it',
    (p) =>
      withInputOptions(p)
        .positional('list', {
          type: 'string',
          demandOption: true,
          describe: 'A file, or - for standard input',
        })
        .option('write', {
          type: 'string',
          requiresArg: true,
          describe: 'Write a column map to correct by hand to this file, which must not be there yet',
        })
        .example('$0 columns fixtures/demo/grid.csv', 'the headings of one list'),
    (given) => act((context) => columns(given, context)),
  );
}

async function columns(given: ColumnsArguments, context: Context): Promise<ExitStatus> {
  const { draftColumnMap, EXIT, jsonText, writeWholeFile } = await import('../index.js');
  const write = textOption('write', given.write);
  if (write !== undefined) await mustNotBeThere(write);
  const { read, items, unreadable } = await readAll(listsOf([given.list]), given, context);
  const ofList = [...items, ...read.jobs.flatMap((job) => job.items)].filter((i) =>
    i.code.startsWith('heading/'),
  );
  for (const item of unreadable) context.err(itemText(item));
  if (!given.quiet) {
    context.err(
      itemsText(
        ofList.map((item) => ({ job: '', item })),
        true,
        '--json prints all of them',
      ),
    );
  }
  const exitStatus = unreadable.length > 0 ? EXIT.unreadable : EXIT.complete;
  const [understood] = read.understood;
  if (given.json) {
    const result = {
      version: 1,
      command: 'columns',
      exitStatus,
      files: read.understood,
      openItems: ofList,
      unreadable,
    };
    context.out(jsonText(result));
  } else {
    for (const file of read.understood) context.out(`${dialectText(file)}\n${headingsTable(file)}`);
  }
  if (write === undefined || understood === undefined) return exitStatus;
  await writeWholeFile(write, jsonText(draftColumnMap(understood)));
  const unknown = understood.columns.filter((c) => c.field === null).length;
  if (!given.quiet) {
    const left =
      unknown === 0
        ? ''
        : `; it leaves out ${counted(unknown, 'heading')} that nothing is known of: correct it`;
    context.err(`Wrote ${write}${left}\n`);
  }
  return exitStatus;
}

async function mustNotBeThere(path: string): Promise<void> {
  const there = await access(path).then(
    () => true,
    () => false,
  );
  if (!there) return;
  const { EXIT, Failure } = await import('../index.js');
  throw new Failure(note(COMMAND_MESSAGES.alreadyThere, { path }), EXIT.usage);
}
