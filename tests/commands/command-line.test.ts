import { describe, expect, it } from 'vitest';
import { shuntbook } from './command.js';

const LIST = 'fixtures/demo/grid.csv';

describe('a wrong command line', () => {
  it.each([
    ['no command', [], 'command/wrong-command-line', /no command/],
    ['an unknown command', ['pcak', LIST], 'command/wrong-command-line', /pcak/],
    ['no list', ['plan'], 'command/wrong-command-line', /argument/],
    ['an unknown option', ['plan', LIST, '--jobs', 'A'], 'command/wrong-command-line', /jobs/],
    ['an option without its value', ['plan', LIST, '--out'], 'command/wrong-command-line', /out/],
    ['an option given twice', ['plan', LIST, '--job', 'A', '--job', 'B'], 'command/given-twice', /--job/],
    ['an empty job', ['plan', LIST, '--job', ''], 'command/empty-value', /--job/],
    ['an empty list', ['plan', ''], 'command/empty-value', /list/],
    ['a date of no calendar', ['plan', LIST, '--date', '2026-02-30'], 'command/no-such-date', /2026-02-30/],
    ['a language of none', ['pack', LIST, '--owner-language', 'xx'], 'command/no-such-value', /xx/],
    ['no worker', ['pack', LIST, '--workers', '0'], 'command/no-such-workers', /"0"/],
    ['half a worker', ['pack', LIST, '--workers', '1.5'], 'command/no-such-workers', /1\.5/],
  ])('%s ends with 64 and one message', async (_, args, code, says) => {
    const told = await shuntbook(args);
    expect(told.status).toBe(64);
    expect(told.out).toBe('');
    expect(told.err).toContain(`[${code}]`);
    expect(told.err).toMatch(says);
    expect(told.err.match(/\[[a-z-]+\/[a-z-]+\]/g)).toHaveLength(1);
    expect(told.err).not.toMatch(/\n\s+at /);
  });

  it('with --json is one JSON object on standard output', async () => {
    const told = await shuntbook(['plan', LIST, '--nope', '--json']);
    expect(told.status).toBe(64);
    expect(JSON.parse(told.out)).toMatchObject({
      exitStatus: 64,
      error: { code: 'command/wrong-command-line' },
    });
  });

  it('of a wrong SOURCE_DATE_EPOCH ends with 64', async () => {
    const told = await shuntbook(['plan', LIST], { env: { SOURCE_DATE_EPOCH: 'soon' } });
    expect(told.status).toBe(64);
    expect(told.err).toContain('SOURCE_DATE_EPOCH');
  });
});

describe('help', () => {
  it('of the program names every command', async () => {
    const told = await shuntbook(['--help']);
    expect(told.status).toBe(0);
    expect(told.err).toBe('');
    for (const command of ['pack', 'plan']) expect(told.out).toContain(`shuntbook ${command}`);
  });

  it.each(['pack', 'plan'])('of %s has an example', async (command) => {
    const told = await shuntbook([command, '--help']);
    expect(told.status).toBe(0);
    expect(told.out).toMatch(new RegExp(`Examples:\\s+shuntbook ${command} `));
  });

  it('says the version of the package', async () => {
    const told = await shuntbook(['--version']);
    expect(told.out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });
});
