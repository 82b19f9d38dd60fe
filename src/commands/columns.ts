import { access } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { Argv } from 'yargs';
import type { ColumnMap, ExitStatus, OpenItem } from '../index.js';
import { note } from '../model/message.js';
import { COMMAND_MESSAGES } from '../model/messages/command.js';
import { counted } from '../screen/text-table.js';
import { itemText } from '../screen/item-text.js';
import { itemsText } from '../screen/tell.js';
import { dialectText, headingsTable, wordsTable } from '../screen/understood.js';
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
          describe:
            'Write a column map to correct by hand to this file: a new one, or the map that the list is read by, to complete it',
        })
        .example('$0 columns fixtures/demo/grid.csv', 'the headings of one list'),
    (given) => act((context) => columns(given, context)),
  );
}

async function columns(given: ColumnsArguments, context: Context): Promise<ExitStatus> {
  const { draftColumnMap, EXIT, jsonText, writeWholeFile } = await import('../index.js');
  const write = textOption('write', given.write);
  const { read, items, unreadable, map } = await readAll(listsOf([given.list]), given, context);
  // The map that the list was read by is completed: what it settles stays.
  const completes = write !== undefined && map !== null && resolve(write) === resolve(map.path);
  if (write !== undefined && !completes) await mustNotBeThere(write);
  const ofList = once([...items, ...read.jobs.flatMap((job) => job.items)]).filter((i) =>
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
  const grave = ofList.some(({ severity }) => severity !== 'confirm');
  const exitStatus = unreadable.length > 0 ? EXIT.unreadable : grave ? EXIT.drafts : EXIT.complete;
  const [understood] = read.understood;
  const draft =
    write === undefined || understood === undefined
      ? undefined
      : draftColumnMap(understood, map === null ? {} : map.map);
  if (given.json) {
    const result = {
      version: 1,
      command: 'columns',
      exitStatus,
      files: read.understood,
      openItems: ofList,
      unreadable,
      ...(draft === undefined ? {} : { map: draft }),
    };
    context.out(jsonText(result));
  } else {
    for (const file of read.understood)
      context.out([dialectText(file), headingsTable(file), wordsTable(file)].join('\n'));
  }
  if (write === undefined || draft === undefined) return exitStatus;
  await writeWholeFile(write, jsonText(draft));
  if (!given.quiet) context.err(`Wrote ${write}${leftToSettle(draft, write, given.list)}\n`);
  return exitStatus;
}

/** Items that every job of a list has are one here. */
function once(items: readonly OpenItem[]): OpenItem[] {
  const byKey = new Map(
    items.map((item) => [JSON.stringify([item.code, item.values, item.file, item.line, item.column]), item]),
  );
  return [...byKey.values()];
}

/** What a draft leaves to whoever corrects it, and what to do then. */
function leftToSettle({ columns = {}, words = {} }: ColumnMap, path: string, list: string): string {
  const asked = (of: Readonly<Record<string, unknown>>): number =>
    Object.values(of).filter((to) => typeof to === 'string' && to.startsWith('?')).length;
  const headings = asked(columns);
  const open = Object.values(words).reduce((n, of) => n + asked(of), 0);
  if (headings + open === 0) return '';
  const what = [
    headings > 0 ? counted(headings, 'heading') : '',
    open > 0 ? counted(open, 'word') : '',
  ].filter((s) => s !== '');
  return [
    `: nothing is known of ${what.join(' and ')}, marked with a question mark there.`,
    '  Write in place of each the field or word that it stands for, or null for a heading to leave out; then',
    `  shuntbook columns ${list} --columns ${path} --write ${path} asks for words under headings that were new, and`,
    `  shuntbook read ${list} --columns ${path} says what became of each.`,
  ].join('\n');
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
