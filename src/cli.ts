#!/usr/bin/env node
import { buffer } from 'node:stream/consumers';
import type { ExitStatus } from './index.js';
import { endWith, faultNote, watchStreams } from './commands/ending.js';
import { noteText } from './screen/tell.js';

const { stdout, stderr } = process;
const refusals = watchStreams({ 'Standard output': stdout, 'Standard error': stderr });

/** Whatever no command took care of ends in a sentence too; the stack is for whoever asks for it. */
function tellFault(error: unknown): 70 {
  stderr.write(noteText(faultNote(error)));
  if (process.argv.includes('--verbose') && error instanceof Error) stderr.write(`${error.stack ?? ''}\n`);
  return 70;
}

process.on('uncaughtException', (error: unknown) => {
  process.exit(tellFault(error));
});

async function run(): Promise<ExitStatus> {
  try {
    // Only here: where a machine lets a program open few files, loading all of this is what fails.
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

await endWith(await run(), [stdout, stderr], refusals, (told) => stderr.write(noteText(told)));
