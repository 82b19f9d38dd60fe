import { cp } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { installedProgram, start } from '../faults/program.js';

// A harness that calls every case a crash, or none, says nothing of the program: it goes with what `plan.json` is.

it('the fuzz run finds no fault in its first lists and workbooks', async () => {
  const { folder } = installedProgram();
  await cp('bench', join(folder, 'bench'), { recursive: true });
  const cases = ['--lists', '40', '--workbooks', '20', '--commands', '0'];
  const command = [process.execPath, 'bench/fuzz.mjs', '--seed', '1', ...cases];
  const ended = await start(command, folder).ended;
  expect(ended.err).toBe('');
  expect(ended.status).toBe(0);
  expect(ended.out).toMatch(/20 workbooks, [1-9]\d* jobs planned, .*; 0 crashes, 0 hangs, 0 workers lost/);
  expect(ended.out).toMatch(/40 lists, [1-9]\d* jobs planned, .*; 0 crashes, 0 hangs, 0 workers lost/);
});
