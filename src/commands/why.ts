import { itemInEnglish, withEnglish } from '../words/english-beside.js';
import { readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { Argv } from 'yargs';
import type { Plan } from '../index.js';
import { note } from '../model/message.js';
import { COMMAND_MESSAGES } from '../model/messages/command.js';
import { protectorInEnglish } from '../words/protector-in-english.js';
import { askedOf, whyText, type Asked } from '../screen/why.js';
import { itemText } from '../screen/item-text.js';
import type { Act, CommonOptions, Context } from './context.js';
import { dialectOf, type DialectArguments } from './dialect.js';
import { withInputOptions } from './options.js';
import { textOption, textOptions, unmarkPlain, WrongCommandLine } from './usage.js';

interface WhyArguments extends CommonOptions, DialectArguments {
  readonly of: string;
  readonly what?: string | undefined;
  readonly catalogue?: string | undefined;
  readonly library?: string | undefined;
  readonly columns?: string | undefined;
  readonly settings?: string | undefined;
  readonly jobFacts?: string | undefined;
  readonly answers?: string | readonly string[] | undefined;
  readonly equipmentFacts?: string | readonly string[] | undefined;
  readonly job?: string | undefined;
}

/** `shuntbook why JOB [TAG[:PORT]]`: the chain behind a protector, or behind a port that has none. */
export function addWhy(parser: Argv, act: Act): Argv {
  return parser.command(
    'why <of> [what]',
    'Print the chain behind a protector, or behind a port that has none',
    (p) =>
      withInputOptions(p)
        .positional('of', {
          type: 'string',
          demandOption: true,
          describe: 'A job’s folder in --out, a plan.json, or a list of one job (or with --job)',
        })
        .positional('what', { type: 'string', describe: 'TAG, TAG:PORT, or the tag of a protector' })
        .example('$0 why fixtures/demo/grid.csv INV:dc-in-1 --job UF-102', ''),
    (given) => act((context) => why(given, context)),
  );
}

async function why(given: WhyArguments, context: Context): Promise<0> {
  const plan = await planAt(given, context);
  const what = given.what === undefined ? undefined : unmarkPlain(given.what);
  const asked = askedOf(plan, what);
  if (asked === null) {
    const known = plan.site.equipments.flatMap((e) => e.ports.map((port) => `${e.tag}:${port}`)).slice(0, 12);
    const p = { wanted: what ?? '', job: plan.job, known: known.join(', ') };
    throw new WrongCommandLine(note(COMMAND_MESSAGES.noSuchPort, p));
  }
  if (given.json) context.out(`${JSON.stringify(whyJson(plan.job, asked), null, 2)}\n`);
  else context.out(whyText(asked));
  return 0;
}

function whyJson(job: string, asked: Asked): unknown {
  const { accepted = [], ...others } = asked;
  const protectors = asked.protectors.map(protectorInEnglish);
  const data = withEnglish({ version: 1, command: 'why', job, ...others, protectors });
  if (accepted.length === 0) return data;
  return {
    ...(data as object),
    accepted: accepted.map((item) => ({ ...itemInEnglish(item), by: item.by, date: item.date })),
  };
}

async function planAt(given: WhyArguments, context: Context): Promise<Plan> {
  const path = unmarkPlain(given.of);
  const found = await stat(path).catch(() => undefined);
  const file = found?.isDirectory() ? join(path, 'plan.json') : path;
  return file.toLowerCase().endsWith('.json') ? savedPlan(file) : planOfList(path, given, context);
}

async function savedPlan(file: string): Promise<Plan> {
  const { readPlan } = await import('../index.js');
  let data: unknown;
  try {
    data = JSON.parse(await readFile(file, 'utf8'));
  } catch (error) {
    throw await noPlan(file, error instanceof SyntaxError ? 'it is no JSON' : 'it cannot be read');
  }
  const read = readPlan(data);
  if (!read) throw await noPlan(file, 'it is no plan of this version');
  return read.plan;
}

async function planOfList(path: string, given: WhyArguments, context: Context): Promise<Plan> {
  const { planJob, readInputs, withAccepted } = await import('../index.js');
  const job = textOption('job', given.job);
  const inputs = await readInputs({
    make: 'plan',
    lists: [path],
    catalogue: textOption('catalogue', given.catalogue),
    library: textOption('library', given.library),
    columns: textOption('columns', given.columns),
    settings: textOption('settings', given.settings),
    dialect: dialectOf(given),
    jobFacts: textOption('job-facts', given.jobFacts),
    answers: textOptions('answers', given.answers),
    equipmentFacts: textOptions('equipment-facts', given.equipmentFacts),
    job,
    date: '',
    dateGiven: false,
    stdin: context.stdin,
  });
  for (const item of inputs.unreadable) context.err(itemText(item));
  const jobs = inputs.jobs.filter((one) => job === undefined || one.job === job);
  const [only, ...others] = jobs;
  if (!only && (inputs.unreadable.length > 0 || job === undefined)) {
    throw await noPlan(path, 'it holds no job that can be read');
  }
  if (!only || others.length > 0) {
    const p = { path, jobs: inputs.jobs.map((one) => one.job) };
    throw new WrongCommandLine(note(COMMAND_MESSAGES.whichJob, p));
  }
  return withAccepted(planJob(only, { catalogue: inputs.catalogue, settings: inputs.settings }), only);
}

async function noPlan(path: string, because: string): Promise<Error> {
  const { EXIT, Failure } = await import('../index.js');
  return new Failure(note(COMMAND_MESSAGES.noSuchPlan, { path, because }), EXIT.unreadable);
}
