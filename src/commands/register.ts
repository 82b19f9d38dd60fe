import type { Argv } from 'yargs';
import type { ExitStatus, JobItem, OpenItem, RegisterQuestion, SerialTest } from '../index.js';
import { note } from '../model/message.js';
import { COMMAND_MESSAGES } from '../model/messages/command.js';
import { REGISTER_MESSAGES } from '../model/messages/register.js';
import { checksText, holdersText, registerText } from '../screen/register.js';
import { itemsText } from '../screen/tell.js';
import { itemInEnglish } from '../words/english-beside.js';
import type { Act, CommonOptions, Context } from './context.js';
import { dateOfRun, dayOf } from './date.js';
import { withCommonOptions } from './options.js';
import { textOption, WrongCommandLine } from './usage.js';

/** What `register` is given on the command line, as the parser hands it over. */
interface RegisterArguments extends CommonOptions {
  readonly out?: string | undefined;
  readonly date?: string | undefined;
  readonly part?: string | undefined;
  readonly serial?: string | undefined;
  readonly serials?: string | undefined;
  readonly due?: string | undefined;
  readonly redact: boolean;
}

const text = (describe: string) => ({ type: 'string', requiresArg: true, describe }) as const;

/** `shuntbook register`: the register of all jobs made anew, or who has a part and what is due. */
export function addRegister(parser: Argv, act: Act): Argv {
  return parser.command(
    'register',
    'Make the register of all jobs from their records, or ask who has a part and what is due',
    (p) =>
      withCommonOptions(p)
        .usage(
          '$0 register --out OUT\n\nWith none of --part, --serial, --serials, --due and --redact it makes register.csv, checks-due.csv and\n' +
            'checks-due.ics anew; with any of them it answers on standard output and writes nothing.',
        )
        .option('out', text('Where packs and records are; by default out'))
        .option('date', text('YYYY-MM-DD of the run; before SOURCE_DATE_EPOCH, before today'))
        .option('part', text('Protectors of this part'))
        .option('serial', text('FROM..TO, of digits alone and of one length'))
        .option('serials', text('A file with one serial a line'))
        .option('due', text('YYYY-MM-DD: checks that are due before that day'))
        .option('redact', {
          type: 'boolean',
          default: false,
          describe: 'Leave names and addresses out of the answer',
        })
        .example('$0 register --out out/done --part WK-MALLOW', 'who has it'),
    (given) => act((context) => register(given, context)),
  );
}

async function register(given: RegisterArguments, context: Context): Promise<ExitStatus> {
  const out = textOption('out', given.out) ?? 'out';
  const date = dateOfRun(textOption('date', given.date), context.env['SOURCE_DATE_EPOCH'], new Date());
  const question = await questionOf(given);
  return question === undefined && !given.redact
    ? make(out, date, given, context)
    : ask(out, date, question ?? {}, given, context);
}

async function questionOf(given: RegisterArguments): Promise<RegisterQuestion | undefined> {
  const part = textOption('part', given.part);
  const range = textOption('serial', given.serial);
  const path = textOption('serials', given.serials);
  const before = textOption('due', given.due);
  if (range !== undefined && path !== undefined)
    throw new WrongCommandLine(
      note(COMMAND_MESSAGES.wrongCommandLine, {
        problem: '--serial and --serials are both given',
        command: 'register',
      }),
    );
  const dueBefore = before === undefined ? undefined : dayOf('--due', before);
  const serials =
    path !== undefined ? await listOf(path) : range === undefined ? undefined : await rangeOf(range);
  const nothing = part === undefined && serials === undefined && dueBefore === undefined;
  return nothing ? undefined : { part, serials, dueBefore };
}

async function rangeOf(found: string): Promise<SerialTest> {
  const { serialRange } = await import('../index.js');
  const test = serialRange(found);
  if (typeof test !== 'string') return test;
  throw new WrongCommandLine(note(REGISTER_MESSAGES.rangeNotTold, { found, rangeFault: test }));
}

async function listOf(path: string): Promise<SerialTest> {
  const { readSerials } = await import('../index.js');
  return readSerials(path);
}

const ofNoJob = (items: readonly OpenItem[]): JobItem[] => items.map((item) => ({ job: '', item }));

async function make(
  out: string,
  date: string,
  given: RegisterArguments,
  context: Context,
): Promise<ExitStatus> {
  const { rebuildRegister, RECORD_STATES } = await import('../index.js');
  const made = await rebuildRegister(out, date);
  if (!given.quiet) context.err(itemsText(ofNoJob(made.items), true, '--json prints all of them'));
  if (given.json) {
    const result = {
      version: 1,
      command: 'register',
      exitStatus: made.exitStatus,
      jobs: made.jobs.map(({ job, folder, state, hanging, checks }) => ({
        job,
        folder,
        record: state,
        protectors: hanging,
        checks: checks.length,
      })),
      checks: made.checks.length,
      overdue: made.overdue,
      openItems: made.items.map(itemInEnglish),
    };
    context.out(`${JSON.stringify(result, null, 2)}\n`);
  } else if (!given.quiet) {
    const sums = { jobs: made.jobs, checks: made.checks.length, overdue: made.overdue };
    context.out(registerText(sums, RECORD_STATES));
  }
  return made.exitStatus;
}

async function ask(
  out: string,
  date: string,
  question: RegisterQuestion,
  given: RegisterArguments,
  context: Context,
): Promise<ExitStatus> {
  const { askRegister, checkWithoutNames, lineWithoutNames } = await import('../index.js');
  const answer = await askRegister(out, question, date);
  const line = given.redact ? lineWithoutNames : <T>(one: T): T => one;
  const lines = answer.lines.map(line);
  const untold = answer.untold.map(line);
  const checks = given.redact ? answer.checks.map(checkWithoutNames) : answer.checks;
  if (!given.quiet) context.err(itemsText(ofNoJob(answer.items), true, '--json prints all of them'));
  const asksDue = question.dueBefore !== undefined;
  if (given.json) {
    const result = {
      version: 1,
      command: 'register',
      exitStatus: answer.exitStatus,
      ...(asksDue ? { checks } : { protectors: lines, untold }),
      openItems: answer.items.map(itemInEnglish),
    };
    context.out(`${JSON.stringify(result, null, 2)}\n`);
  } else context.out(asksDue ? checksText(checks, date) : holdersText(lines, untold));
  return answer.exitStatus;
}
