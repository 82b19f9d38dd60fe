import { cp } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { installedProgram, start } from '../faults/program.js';

// A harness that calls every case a crash, or none, says nothing of the program: it goes with what `plan.json` is.

it('the fuzz run finds no fault in its first lists', async () => {
  const { folder } = installedProgram();
  await cp('bench', join(folder, 'bench'), { recursive: true });
  const command = [process.execPath, 'bench/fuzz.mjs', '--seed', '1', '--lists', '40', '--commands', '0'];
  const ended = await start(command, folder).ended;
  expect(ended.err).toBe('');
  expect(ended.status).toBe(0);
  expect(ended.out).toMatch(/40 lists, [1-9]\d* jobs planned, .*; 0 crashes, 0 hangs, 0 workers lost/);
});
