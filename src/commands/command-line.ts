import { told } from '../words/messages/told.js';
import { readFile } from 'node:fs/promises';
import yargs, { type Argv } from 'yargs';
import type { ExitStatus } from '../index.js';
import { note } from '../model/message.js';
import { COMMAND_MESSAGES } from '../model/messages/command.js';
import { noteText } from '../screen/item-text.js';
import { MACHINE_MESSAGES } from '../model/messages/machine.js';
import { addCatalogue } from './catalogue.js';
import { addColumns } from './columns.js';
import type { Act, Context } from './context.js';
import { faultNote } from './ending.js';
import { addFields } from './fields.js';
import { addPack } from './pack.js';
import { addPlan } from './plan.js';
import { addRead } from './read.js';
import { addRecord } from './record.js';
import { addRegister } from './register.js';
import { addRules } from './rules.js';
import { addStart } from './start.js';
import { markPlain, unmarkPlain, WrongCommandLine } from './usage.js';
import { addWhy } from './why.js';

/** 80 columns: the width of the help, whatever the terminal, so that it reads the same everywhere. */
const HELP_WIDTH = 100;

/**
 * Carries out one command line.
 * @param args what stands behind `shuntbook`
 * @param context where to tell results and what people read
 * @returns the exit status of the contract; never throws
 */
export async function runCommandLine(args: readonly string[], context: Context): Promise<ExitStatus> {
  let ending: ExitStatus = 0;
  const act: Act = async (action) => {
    ending = await action(context);
  };
  try {
    let told = '';
    await parser(await version(), act).parseAsync(markPlain(args), {}, (_error, _argv, output) => {
      told = output;
    });
    if (told !== '') context.out(`${told}\n`);
    return ending;
  } catch (error) {
    return tellFault(error, args, context);
  }
}

function parser(programVersion: string, act: Act): Argv {
  const empty = yargs()
    .scriptName('shuntbook')
    .usage(
      'Reads equipment lists of small power systems, decides where surge protectors go and what each\n' +
        'must withstand, and prints a handover pack for each job.\n\nUsage: $0 COMMAND ...',
    )
    .parserConfiguration({
      'boolean-negation': false,
      'dot-notation': false,
      'parse-numbers': false,
      'parse-positional-numbers': false,
    });
  const commands = [
    addPack,
    addPlan,
    addRead,
    addColumns,
    addCatalogue,
    addFields,
    addWhy,
    addRules,
    addRecord,
    addRegister,
    addStart,
  ];
  return commands
    .reduce((known, add) => add(known, act), empty)
    .example('$0 pack fixtures/demo --out out/demo', 'plans and prints every job of the demo')
    .epilogue(
      'The examples use fixtures/demo of the folder that shuntbook is installed in; \n"shuntbook start FOLDER" writes ' +
        'files to begin with anywhere.\n\n' +
        'Exit status: 0 every pack is complete, 1 some are drafts, 2 a file could not be read, 64 the command\n' +
        'line is wrong, 70 the browser, a template or the disk failed, 75 another run holds --out,\n130 interrupted.',
    )
    .demandCommand(1, 'it names no command.')
    .strict()
    .help()
    .version(programVersion)
    .locale('en')
    .wrap(HELP_WIDTH)
    .exitProcess(false)
    .fail((message: string | null, error: Error | null) => {
      // Of the parser itself: a message, or an error of its own kind. Anything else was thrown by a command.
      if (error && error.name !== 'YError') throw error;
      const problem = unmarkPlain(message ?? error?.message ?? '');
      throw new WrongCommandLine(note(COMMAND_MESSAGES.wrongCommandLine, { problem, command: '' }));
    });
}

/** The version of package.json, beside the folder that holds the program. */
async function version(): Promise<string> {
  const text = await readFile(new URL('../../package.json', import.meta.url), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}

async function tellFault(error: unknown, args: readonly string[], context: Context): Promise<ExitStatus> {
  const { told: fault, exitStatus } = await faultOf(error);
  context.err(noteText(fault));
  if (args.includes('--verbose') && error instanceof Error) context.err(`${error.stack ?? ''}\n`);
  if (args.includes('--json')) {
    const { code } = fault;
    const { message, found, expected, hint } = told(fault);
    context.out(
      `${JSON.stringify({ version: 1, exitStatus, error: { code, message, found, expected, hint } }, null, 2)}\n`,
    );
  }
  return exitStatus;
}

async function faultOf(error: unknown): Promise<{ told: ReturnType<typeof note>; exitStatus: ExitStatus }> {
  if (error instanceof WrongCommandLine) return { told: error.note, exitStatus: 64 };
  const told = faultNote(error);
  // A machine that has run out lets nothing be loaded either.
  if (told.code === MACHINE_MESSAGES.ranOut.code) return { told, exitStatus: 70 };
  // Only here, so that a wrong command line and --help load nothing.
  const { Failure } = await import('../index.js');
  if (error instanceof Failure) return { told: error.note, exitStatus: error.exitStatus };
  return { told, exitStatus: 70 };
}
