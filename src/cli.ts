#!/usr/bin/env node
import { buffer } from 'node:stream/consumers';
import { runCommandLine } from './commands/command-line.js';

// A reader that has seen enough (`| head`) closes the pipe: that ends nothing and is no fault.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
}

process.exitCode = await runCommandLine(process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  errIsTerminal: process.stderr.isTTY,
  env: process.env,
  stdin: () => buffer(process.stdin),
});
