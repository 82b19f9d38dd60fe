import type { Argv } from 'yargs';
import { CREW_LANGUAGES } from '../words/crew-language.js';
import { OWNER_LANGUAGE_CODES } from '../words/languages.js';

/** The options that every command has. */
export function withCommonOptions<T>(parser: Argv<T>) {
  return parser
    .option('quiet', { type: 'boolean', default: false, describe: 'Say only what went wrong' })
    .option('verbose', {
      type: 'boolean',
      default: false,
      describe: 'List what is to confirm too, and a fault with its stack',
    })
    .option('json', {
      type: 'boolean',
      default: false,
      describe: 'One JSON object on standard output, and nothing else there',
    });
}

const text = (describe: string) => ({ type: 'string', requiresArg: true, describe }) as const;

/** The options that say what is read: catalogue, library, column map, settings, job facts. */
export function withInputOptions<T>(parser: Argv<T>) {
  return withCommonOptions(parser)
    .option(
      'catalogue',
      text('The protectors that you stock, CSV or workbook; by default catalogue.csv beside the first list'),
    )
    .option(
      'library',
      text('Equipment by maker and model, CSV or workbook; by default library.csv beside the first list'),
    )
    .option('columns', text('JSON that says which heading means which field; by default columns.json there'))
    .option('settings', text('JSON with company, paper, labels, thresholds; by default settings.json there'))
    .option('encoding', text('Of the lists: utf-8, utf-16le, utf-16be, windows-1252; by default found out'))
    .option('delimiter', text('Between cells of the lists: comma, semicolon, tab, bar; by default found out'))
    .option('decimal', text('Decimal mark of the lists: point, comma; by default found out'))
    .option('heading-line', text('Line of the heading of each list, first line 1; by default found out'))
    .option('job-facts', text('Facts by job, CSV or workbook'))
    .option('answers', text('questions.csv with its answers filled in; may be given several times'))
    .option(
      'equipment-facts',
      text('Facts by job and tag, or a cable schedule (from, to, length); may be given several times'),
    )
    .option('job', text('Only this job'));
}

/** The options of a batch: what is read, where it lands, on which date. */
export function withBatchOptions<T>(parser: Argv<T>) {
  return withInputOptions(parser)
    .positional('lists', {
      type: 'string',
      array: true,
      demandOption: true,
      describe: 'Files, folders, or - for standard input',
    })
    .option('out', text('Where packs land; by default out'))
    .option('date', text('YYYY-MM-DD on the pages; before SOURCE_DATE_EPOCH, before today'))
    .option(
      'owner-language',
      text(`Language of the owner’s sheet, whatever the jobs name: ${OWNER_LANGUAGE_CODES.join(', ')}`),
    )
    .option(
      'crew-language',
      text(`Language of the crew’s pages, whatever the jobs name: ${CREW_LANGUAGES.join(', ')}`),
    )
    .option('photos', text('Folder of photos: FOLDER/JOB/TAG.*'))
    .option(
      'with',
      text(
        `What else is printed: working and sources in permit-appendix.pdf; rejected, trace and bare at the end of closeout-pack.pdf`,
      ),
    )
    .option('cutsheets', text('Folder of data sheets for permit-appendix.pdf: FOLDER/PART.pdf'))
    .option('separate', { type: 'boolean', default: false, describe: 'One file a permit sheet' })
    .option('templates', text('Folder of templates that go before ours'))
    .option('force', { type: 'boolean', default: false, describe: 'Make every pack again' })
    .option('browser', text('Browser that prints; before SHUNTBOOK_BROWSER, before the shipped one'))
    .option('workers', text('Pages printed at a time, 1 to 64'));
}
