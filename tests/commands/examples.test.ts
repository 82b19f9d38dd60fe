import { describe, expect, it } from 'vitest';
import { exampleOf, freshFolder, shuntbook } from './command.js';

/** The commands that the program's help names. */
async function commands(): Promise<string[]> {
  const { out } = await shuntbook(['--help']);
  return [...out.matchAll(/^ {2}shuntbook ([a-z]+)/gm)]
    .map(([, name]) => name ?? '')
    .filter((n, i, all) => all.indexOf(n) === i);
}

const COMMANDS = await commands();

describe('the example in the help of', () => {
  // That of `pack` makes the demo: `tests/documents/pages.browser.test.ts` begins with it.
  it.each(COMMANDS.filter((command) => command !== 'pack'))('%s runs', async (command) => {
    const args = (await exampleOf(command)).map((word) => (word.startsWith('out') ? freshFolder() : word));
    expect(args[0]).toBe(command);
    const told = await shuntbook(args);
    // The demo holds one job that lacks facts on purpose.
    expect([0, 1], told.err).toContain(told.status);
    expect(told.out).not.toBe('');
  });
});
