#!/usr/bin/env node
import { buffer } from 'node:stream/consumers';
import { areFilesFew } from './commands/open-files.js';
import type * as Ending from './commands/ending.js';
import type { ExitStatus } from './index.js';
import type * as Tell from './screen/item-text.js';

const { stdout, stderr } = process;
type Words = typeof Ending & typeof Tell;

/** The modules that say how a run ended; undefined until they are loaded. */
let words: Words | undefined;

/** Whatever no command took care of ends in a sentence too; the stack is for whoever asks for it. */
function tellFault(error: unknown): 70 {
  stderr.write(words === undefined ? plainFault(error) : words.noteText(words.faultNote(error)));
  if (process.argv.includes('--verbose') && error instanceof Error) stderr.write(`${error.stack ?? ''}\n`);
  return 70;
}

/** Says it without the modules that have the words: a machine may let a program open fewer files than those are. */
function plainFault(error: unknown): string {
  const fault = error instanceof Error ? error.message : String(error);
  const isOfFiles = /^E[MN]FILE/.test(fault) || areFilesFew();
  return isOfFiles
    ? 'The machine can’t go on: the limit of open files is too low. [machine/ran-out]\n  Raise the limit (ulimit -n), or end other programs, and run the same command again. (office)\n'
    : `The program can’t be loaded: ${fault}. [command/fault]\n  Install it again. (office)\n`;
}

process.on('uncaughtException', (error: unknown) => {
  process.exit(tellFault(error));
});

/** Loads the modules that say how a run ended: alone, since loading all at once is what fails. */
async function loadWords(): Promise<Words> {
  return { ...(await import('./commands/ending.js')), ...(await import('./screen/item-text.js')) };
}

async function run(): Promise<ExitStatus> {
  try {
    const { runCommandLine } = await import('./commands/command-line.js');
    return await runCommandLine(process.argv.slice(2), {
      out: (text) => stdout.write(text),
      err: (text) => stderr.write(text),
      errIsTerminal: stderr.isTTY,
      env: process.env,
      stdin: () => buffer(process.stdin),
    });
  } catch (error) {
    return tellFault(error);
  }
}

try {
  words = await loadWords();
  const { endWith, noteText, watchStreams } = words;
  const refusals = watchStreams({ 'Standard output': stdout, 'Standard error': stderr });
  await endWith(await run(), [stdout, stderr], refusals, (told) => stderr.write(noteText(told)));
} catch (error) {
  process.exit(tellFault(error));
}
