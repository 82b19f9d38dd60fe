/** What is to be known of a field of the list or a column of the catalogue, with the rules that ask for it. */
export interface FieldTold {
  readonly name: string;
  readonly of: 'job' | 'row' | 'part';
  readonly means: string;
  readonly expected: string;
  readonly words: readonly string[];
  readonly units: readonly string[];
  readonly bare: string;
  readonly unstated: string;
  readonly example: string;
  readonly headings: readonly string[];
  readonly who: string;
  readonly ofModel: boolean;
  readonly rules: readonly string[];
}

const OF = { job: 'of the job', row: 'of a row', part: 'of a part of the catalogue' } as const;

/** So many words stand in a line; a list of systems or kinds is longer. */
const joined = (words: readonly string[], code: (text: string) => string): string =>
  words.map(code).join(', ');

/** What there is to tell of a field, a line each, without the name; `code` marks what is typed. */
function linesOf(told: FieldTold, code: (text: string) => string): readonly string[] {
  const { of, expected, words, units, bare, unstated, example, headings, who, ofModel, rules } = told;
  const bareWords =
    bare === '' ? (units.length > 0 ? '; a bare figure isn’t taken' : '') : `; a bare figure is ${bare}`;
  const lines = [
    words.length === 0 ? `What to write: ${expected}` : `One of: ${joined(words, code)}`,
    units.length === 0 ? '' : `Units, in the cell or the heading: ${joined(units, code)}${bareWords}`,
    unstated === '' ? '' : `Where it is blank: ${unstated}`,
    `Example: ${code(example)}`,
    headings.length === 0 ? '' : `Headings taken for it: ${joined(headings, code)}`,
    ofModel ? 'A library may state it for a model' : '',
    who === '' ? '' : `Who can supply it: ${who}`,
    rules.length > 0
      ? `Rules that ask for it: ${joined(rules, code)}`
      : `No rule asks for it: ${of === 'part' ? 'papers and lists print it' : 'it says what a row is, or stands on papers'}`,
  ];
  return lines.filter((line) => line !== '');
}

/**
 * One field or column for a screen.
 * @returns lines, each ended by a line feed
 */
export function fieldText(told: FieldTold): string {
  const head = `${told.name}  (${OF[told.of]}): ${told.means}`;
  return [head, ...linesOf(told, (text) => text).map((line) => `  ${line}`)]
    .map((line) => `${line}\n`)
    .join('');
}

const code = (text: string): string => `\`${text.replaceAll('`', '')}\``;

function section(told: FieldTold): readonly string[] {
  const means = told.means.charAt(0).toUpperCase() + told.means.slice(1);
  return ['', `### ${told.name}`, '', `${means}.`, '', ...linesOf(told, code).map((line) => `- ${line}`)];
}

const fenced = (language: string, text: string): readonly string[] => [
  '',
  `\`\`\`${language}`,
  text.trimEnd(),
  '```',
];

/** What the page of fields shows beside the fields. */
export interface FieldsPage {
  readonly fields: readonly FieldTold[];
  /** Words of the trade by kind, and those that are asked about. */
  readonly kinds: {
    readonly taken: readonly { readonly kind: string; readonly words: readonly string[] }[];
    readonly asked: readonly string[];
  };
  /** A list, a column map and settings that work as they stand. */
  readonly list: string;
  readonly columnMap: string;
  readonly settings: string;
  /** The published JSON schema of the settings. */
  readonly settingsSchema: string;
}

/** docs/fields.md: every field of the equipment list, its words, and the forms of column map and settings. */
export function fieldsPage(page: FieldsPage): string {
  const { fields, kinds, list, columnMap, settings, settingsSchema } = page;
  const of = (what: FieldTold['of']): readonly string[] =>
    fields.filter((f) => f.of === what).flatMap(section);
  return text([
    '# Fields of the equipment list',
    '',
    'Written by `npm run docs:fields` from what the program reads by; a change here is lost. `shuntbook fields NAME` prints one',
    'of them. A list is a CSV with a heading line and one row for each equipment; [columns of the catalogue](catalogue.md) have a',
    'page of their own. A rule asks for a field where one of the facts that it declares is made of it. Case, spaces, hyphens, underscores, full stops and a unit in brackets don’t count in a heading. A blank',
    'cell means “not stated”; `-`, `n/a`, `none`, `TBD` and `?` mean the same, except where `none` is one of the words.',
    '',
    'A list that can be planned as it stands (invented; `shuntbook start FOLDER` writes it with its catalogue):',
    ...fenced('csv', list),
    '',
    '## Of the job',
    '',
    'Stated on any row of the job, on its first row by custom, or in a file of job facts (`--job-facts`).',
    ...of('job'),
    '',
    '## Of a row',
    ...of('row'),
    '',
    '## Words taken for a kind',
    '',
    'Case, blanks, hyphens, slashes and plurals don’t count. `words` of a column map and of the settings go before.',
    '',
    ...kinds.taken.map(
      ({ kind, words }) => `- ${code(kind)}${words.length === 0 ? '' : `: ${words.join(', ')}`}`,
    ),
    '',
    `Asked about, as they can be several: ${kinds.asked.join('; ')}.`,
    '',
    '## The column map',
    '',
    'A JSON file (`--columns`, or `columns.json` beside the first list) for a source whose headings or words aren’t known;',
    '`shuntbook columns LIST --write columns.json` begins it. `dialect` states how the source writes its files, what it leaves out is',
    'found out. `columns`: by heading a field, or a field with its unit, or `null` to leave it out; `Heading #2` is the second of that',
    'text. `words`: by field, what words of the source stand for. What begins with `?` is a question that nobody settled yet, and says',
    'nothing. Its schema: [columns.schema.json](columns.schema.json).',
    ...fenced('json', columnMap),
    '',
    '## The settings',
    '',
    'A JSON file (`--settings`, or `settings.json` beside the first list); every key has a default, and one that isn’t known is',
    'refused. Its schema: [settings.schema.json](settings.schema.json).',
    ...fenced('json', settings),
    '',
    ...settingLines(settingsSchema),
  ]);
}

/** What the page of the catalogue shows. */
export interface CataloguePage {
  readonly columns: readonly FieldTold[];
  readonly fields: readonly FieldTold[];
  readonly catalogue: string;
  readonly library: string;
}

/** docs/catalogue.md: every column of the catalogue, and the fields that a library may state. */
export function cataloguePage({ columns, fields, catalogue, library }: CataloguePage): string {
  return text([
    '# Columns of the catalogue and of the library',
    '',
    'Written by `npm run docs:fields` from what the program reads by; a change here is lost. `shuntbook fields NAME` prints one',
    'of them, `shuntbook catalogue FILE` checks a file.',
    '',
    '## The catalogue',
    '',
    'A CSV of the protectors that you stock (`--catalogue`, or `catalogue.csv` beside the first list). A row that can’t be used is left',
    'out, and an item says why. Invented:',
    ...fenced('csv', catalogue),
    ...columns.flatMap(section),
    '',
    '## The library',
    '',
    'A CSV of equipment by `maker` and `model` (`--library`, or `library.csv` beside the first list): a list row of that maker and model',
    'takes from it what it doesn’t state. Invented:',
    ...fenced('csv', library),
    '',
    `Its columns are [fields of the list](fields.md): ${fields
      .filter(({ ofModel }) => ofModel)
      .map(({ name }) => code(name))
      .join(', ')}.`,
  ]);
}

interface Schema {
  readonly type?: string | readonly string[];
  readonly enum?: readonly unknown[];
  readonly default?: unknown;
  readonly properties?: Readonly<Record<string, Schema>>;
}

/** A line a key of the settings: its path, its values, its default. */
function settingLines(schema: string): readonly string[] {
  const lines: string[] = [];
  const walk = ({ properties = {} }: Schema, path: string): void => {
    for (const [key, value] of Object.entries(properties)) {
      const name = path === '' ? key : `${path}.${key}`;
      if (name === '$schema') continue;
      if (value.properties !== undefined) walk(value, name);
      else lines.push(`- ${code(name)}: ${valuesOf(value)}${defaultOf(value)}`);
    }
  };
  walk(JSON.parse(schema) as Schema, '');
  return lines;
}

function valuesOf({ enum: list, type }: Schema): string {
  if (list !== undefined) return list.map((one) => code(String(one))).join(', ');
  const types = typeof type === 'string' ? [type] : (type ?? ['see its schema']);
  const words: Readonly<Record<string, string>> = {
    string: 'text',
    boolean: 'true or false',
    array: 'a list',
    object: 'by name',
  };
  return types.map((one) => words[one] ?? one).join(' or ');
}

function defaultOf({ default: value }: Schema): string {
  if (value === undefined || value === '' || (Array.isArray(value) && value.length === 0)) return '';
  return `; ${code(typeof value === 'string' ? value : JSON.stringify(value))} where it isn’t stated`;
}

const text = (lines: readonly string[]): string => lines.map((line) => `${line}\n`).join('');
