import type { Argv } from 'yargs';
import type { ExitStatus, RecordOptions, RecordResult } from '../index.js';
import { itemText, noteText } from '../screen/item-text.js';
import { recordText } from '../screen/record.js';
import { itemsText } from '../screen/tell.js';
import { itemInEnglish } from '../words/english-beside.js';
import type { Act, CommonOptions, Context } from './context.js';
import { dateOfRun } from './date.js';
import { withCommonOptions } from './options.js';
import { listsOf, textOption, workersOf } from './usage.js';

/** What `record` is given on the command line, as the parser hands it over. */
interface RecordArguments extends CommonOptions {
  readonly files: readonly string[];
  readonly out?: string | undefined;
  readonly date?: string | undefined;
  readonly catalogue?: string | undefined;
  readonly settings?: string | undefined;
  readonly photos?: string | undefined;
  readonly 'no-pack': boolean;
  readonly browser?: string | undefined;
  readonly workers?: string | undefined;
}

const text = (describe: string) => ({ type: 'string', requiresArg: true, describe }) as const;

/** `shuntbook record FILE...`: takes in what crews filled in, and makes the as-built papers. */
export function addRecord(parser: Argv, act: Act): Argv {
  return parser.command(
    'record <files..>',
    'Take in what the crew filled in, hold it against the plan and print the papers as built',
    (p) =>
      withCommonOptions(p)
        .positional('files', {
          type: 'string',
          array: true,
          demandOption: true,
          describe:
            'site-record, site-readings, site-facts (CSV or workbook), site-record.pdf, deviations.csv, or folders of them',
        })
        .option('out', text('Where the packs are; by default out'))
        .option('date', text('YYYY-MM-DD of the run; before SOURCE_DATE_EPOCH, before today'))
        .option('catalogue', text('In place of the catalogue of the last pack'))
        .option('settings', text('In place of the settings of the last pack'))
        .option('photos', text('Folder of photos: FOLDER/JOB; by default beside the form'))
        .option('no-pack', {
          type: 'boolean',
          default: false,
          describe: 'Leave the as-built papers to the next pack',
        })
        .option('browser', text('Browser that prints; before SHUNTBOOK_BROWSER, before the shipped one'))
        .option('workers', text('Pages printed at a time, 1 to 64'))
        .example('$0 record fixtures/demo/returns --out out', 'what came back of jobs of the demo'),
    (given) => act((context) => record(given, context)),
  );
}

async function record(given: RecordArguments, context: Context): Promise<ExitStatus> {
  const date = textOption('date', given.date);
  const epoch = context.env['SOURCE_DATE_EPOCH'];
  const options: RecordOptions = {
    files: listsOf(given.files),
    out: textOption('out', given.out),
    date: dateOfRun(date, epoch, new Date()),
    dateGiven: date !== undefined || (epoch !== undefined && epoch !== ''),
    catalogue: textOption('catalogue', given.catalogue),
    settings: textOption('settings', given.settings),
    photos: textOption('photos', given.photos),
    pack: !given['no-pack'],
    browser: textOption('browser', given.browser),
    workers: workersOf(textOption('workers', given.workers)),
    stopOnSignals: true,
    onNotice: (notice) => {
      if (!given.quiet) context.err(noteText(notice));
    },
  };
  const { runRecord } = await import('../index.js');
  const result = await runRecord(options);
  tell(result, given, context);
  return result.exitStatus;
}

function tell(result: RecordResult, given: RecordArguments, context: Context): void {
  for (const item of result.unreadable) context.err(itemText(item));
  if (!given.quiet) {
    context.err(itemsText(result.items, given.verbose, 'all of them stand in record-items.csv'));
  }
  if (given.json) {
    const { exitStatus, out, files, jobs, items, unreadable, interrupted } = result;
    const told = {
      version: 1,
      command: 'record',
      exitStatus,
      out,
      files,
      jobs,
      openItems: items.map(({ job, item }) => ({ job, ...itemInEnglish(item) })),
      unreadable: unreadable.map(itemInEnglish),
      interrupted,
    };
    context.out(`${JSON.stringify(told, null, 2)}\n`);
  } else if (!given.quiet) context.out(recordText(result));
}
