import { say } from '../words/reasons/say.js';
import { itemInEnglish } from '../words/english-beside.js';
import type { Argv } from 'yargs';
import type { ExitStatus, OpenItem, Range, Settings, Reason } from '../index.js';
import { note } from '../model/message.js';
import { COMMAND_MESSAGES } from '../model/messages/command.js';
import { coverTable, gapsText, lacksText, libraryTable, partsText, type ModelTold } from '../screen/range.js';
import { counted, printable } from '../screen/text-table.js';
import { itemText } from '../screen/item-text.js';
import { itemsText } from '../screen/tell.js';
import type { Act, CommonOptions, Context } from './context.js';
import { withCommonOptions } from './options.js';
import { listsOf, textOption, WrongCommandLine } from './usage.js';

interface CatalogueArguments extends CommonOptions {
  readonly file?: string | undefined;
  readonly library?: string | undefined;
  readonly settings?: string | undefined;
}

/** `shuntbook catalogue FILE`: the company's parts and its equipment library, row by row, and the gaps in the range. */
export function addCatalogue(parser: Argv, act: Act): Argv {
  return parser.command(
    'catalogue [file]',
    'Check a catalogue: what each part may be used for, and what no part is there for',
    (p) =>
      withCommonOptions(p)
        .positional('file', { type: 'string', describe: 'CSV or workbook of the protectors that you stock' })
        .option('library', {
          type: 'string',
          requiresArg: true,
          describe: 'Check this CSV or workbook of equipment too, or alone: which facts each model lacks',
        })
        .option('settings', {
          type: 'string',
          requiresArg: true,
          describe: 'JSON with basis and thresholds; by default settings.json beside the file',
        })
        .example(
          '$0 catalogue fixtures/demo/catalogue.csv --library fixtures/demo/library.csv',
          'both files of the demo',
        ),
    (given) => act((context) => checkFiles(given, context)),
  );
}

async function checkFiles(given: CatalogueArguments, context: Context): Promise<ExitStatus> {
  const [file] = given.file === undefined ? [] : listsOf([given.file]);
  const library = textOption('library', given.library);
  const beside = file ?? library;
  if (beside === undefined) throw new WrongCommandLine(note(COMMAND_MESSAGES.nothingToCheck, {}));
  const { EXIT, jsonText } = await import('../index.js');
  const settings = await settingsFor(textOption('settings', given.settings), beside);
  const parts = file === undefined ? undefined : await checkCatalogue(file, settings.settings);
  const models = library === undefined ? undefined : await checkLibrary(library, settings.settings);
  const unreadable = [settings, parts, models].flatMap((of) => of?.unreadable ?? []);
  const items = [settings, parts, models].flatMap((of) => of?.items ?? []);
  const exitStatus = unreadable.length > 0 ? EXIT.unreadable : EXIT.complete;
  for (const item of unreadable) context.err(itemText(item));
  if (!given.quiet) {
    const told = items.map((item) => ({ job: '', item }));
    context.err(itemsText(told, true, '--json prints all of them'));
  }
  if (given.json) {
    const result = {
      version: 1,
      command: 'catalogue',
      exitStatus,
      range: parts?.range === undefined ? null : rangeInEnglish(parts.range),
      library: models?.models ?? null,
      openItems: items.map(itemInEnglish),
      unreadable: unreadable.map(itemInEnglish),
    };
    context.out(jsonText(result));
    return exitStatus;
  }
  if (file !== undefined && parts?.range) context.out(rangeText(file, parts.range));
  if (library !== undefined && models?.models) {
    context.out(`${printable(library)}: ${counted(models.models.length, 'model')}\n`);
    context.out(libraryTable(models.models));
  }
  return exitStatus;
}

/** A range for `--json`: its reasons as sentences. */
function rangeInEnglish({ lines, parts, lacks }: Range): unknown {
  const inEnglish = (of: Reason | null): string => (of === null ? '' : say(of));
  return {
    lines: lines.map((line) => ({
      ...line,
      covers: line.covers.map((cover) => ({ ...cover, nearest: inEnglish(cover.nearest) })),
    })),
    parts: parts.map((part) => ({ ...part, because: inEnglish(part.because) })),
    lacks,
  };
}

function rangeText(file: string, range: Range): string {
  const parts = `${printable(file)}: ${counted(range.parts.length, 'part')} that can be used\n${partsText(range)}`;
  return `${parts}\n${coverTable(range)}\n${gapsText(range)}\n${lacksText(range)}`;
}

interface Checked {
  readonly items: readonly OpenItem[];
  readonly unreadable: readonly OpenItem[];
}

async function settingsFor(
  named: string | undefined,
  beside: string,
): Promise<Checked & { readonly settings: Settings }> {
  const { findCompanyFiles, readSettings } = await import('../index.js');
  // Only settings are looked for: which catalogue and library are meant is stated.
  const found = await findCompanyFiles([beside], { catalogue: beside, library: beside });
  return readSettings(named ?? found.settings);
}

async function checkCatalogue(
  file: string,
  settings: Settings,
): Promise<Checked & { readonly range: Range | undefined }> {
  const { rangeOf, readCatalogue } = await import('../index.js');
  const { catalogue, unreadable } = await readCatalogue(file);
  if (unreadable.length > 0) return { items: [], unreadable, range: undefined };
  const range = rangeOf(catalogue, settings);
  return { items: [...catalogue.items, ...range.items], unreadable, range };
}

async function checkLibrary(
  file: string,
  settings: Settings,
): Promise<Checked & { readonly models: readonly ModelTold[] | undefined }> {
  const { libraryLacks, readLibrary } = await import('../index.js');
  const { library, items, unreadable } = await readLibrary(file, settings);
  if (unreadable.length > 0) return { items: [], unreadable, models: undefined };
  const models = [...library.entries.values()].map(({ maker, model, line, facts }) => ({
    maker,
    model,
    line,
    kind: facts.kind?.value ?? null,
    lacks: libraryLacks(facts, settings),
  }));
  return { items, unreadable, models };
}
