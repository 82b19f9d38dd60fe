import type { Argv } from 'yargs';
import { note } from '../model/message.js';
import { COMMAND_MESSAGES } from '../model/messages/command.js';
import { fieldText, type FieldTold } from '../screen/fields-page.js';
import { textTable } from '../screen/text-table.js';
import { nearest } from '../words/closeness.js';
import type { Act, CommonOptions, Context } from './context.js';
import { withCommonOptions } from './options.js';
import { unmarkPlain, WrongCommandLine } from './usage.js';

/** `shuntbook fields [NAME]`: what to write in a field of the list or a column of the catalogue. */
export function addFields(parser: Argv, act: Act): Argv {
  return parser.command(
    'fields [name]',
    'Print what a field of the list or a column of the catalogue takes, or all of them',
    (p) =>
      withCommonOptions(p)
        .positional('name', { type: 'string', describe: 'A field or column, such as run_length' })
        .example(
          '$0 fields run_length',
          'one field: what to write, its units, its default, the rules that ask',
        ),
    (given) => act((context) => fields(given.name, given, context)),
  );
}

async function fields(name: string | undefined, given: CommonOptions, context: Context): Promise<0> {
  const { catalogueGuide, listGuide, rulesAskingField, rulesAskingPart } = await import('../index.js');
  const all: readonly FieldTold[] = [
    ...listGuide().map(({ field, ...entry }) => ({ ...entry, rules: rulesAskingField(field) })),
    ...catalogueGuide().map(({ reads, ...entry }) => ({ ...entry, rules: rulesAskingPart(reads) })),
  ];
  const wanted = name === undefined ? undefined : unmarkPlain(name);
  const chosen = wanted === undefined ? all : all.filter((one) => isMeant(one, wanted));
  if (wanted !== undefined && chosen.length === 0) {
    const near =
      nearest(
        key(wanted),
        all.map((one) => one.name),
      ) ?? '';
    throw new WrongCommandLine(note(COMMAND_MESSAGES.noSuchField, { name: wanted, near }));
  }
  if (given.json)
    context.out(
      `${JSON.stringify({ version: 1, command: 'fields', exitStatus: 0, fields: chosen }, null, 2)}\n`,
    );
  else if (wanted === undefined) context.out(fieldsTable(chosen));
  else context.out(chosen.map(fieldText).join('\n'));
  return 0;
}

const key = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, '_');

/** By its name, or by a heading that is taken for it. */
function isMeant({ name, headings }: FieldTold, wanted: string): boolean {
  return name === key(wanted) || headings.some((heading) => key(heading) === key(wanted));
}

function fieldsTable(all: readonly FieldTold[]): string {
  return textTable(
    [{ heading: 'name' }, { heading: 'of' }, { heading: 'what it is' }, { heading: 'example' }],
    all.map(({ name, of, means, example }) => [name, of, means, example]),
    120,
  );
}
