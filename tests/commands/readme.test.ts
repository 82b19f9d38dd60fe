import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { EXIT } from '../../src/index.js';
import { PART_FIELDS } from '../../src/read/company/catalogue-fields.js';
import { FIELDS } from '../../src/model/fields.js';
import { KINDS } from '../../src/model/words.js';
import { freshFolder, projectPath, shuntbook } from './command.js';

const README = readFileSync(projectPath('README.md'), 'utf8');
const section = (title: string): string => README.split(`### ${title}\n`)[1]?.split(/\n##/)[0] ?? '';

describe('README', () => {
  it('opens with one paragraph and the two commands', () => {
    expect(README).toMatch(
      /^# shuntbook\n\n[^\n#].*?\n\n[^\n]*\n\n```sh\nnpm ci && npm run demo.*\nnpm ci && npm test/s,
    );
  });

  const lines = [...README.matchAll(/^npx shuntbook ([^#\n]+?) +#/gm)].map(([, args]) => args ?? '');
  // `packs.browser.test.ts` makes the packs.
  it.each(lines.filter((line) => !line.startsWith('pack ')))(
    'shows a command that runs: %s',
    async (line) => {
      const args = line.split(' ').map((word) => (word.startsWith('out/') ? freshFolder() : word));
      const out = args[0] === 'plan' && !args.includes('--out') ? ['--out', freshFolder()] : [];
      const told = await shuntbook([...args, ...out]);
      expect([0, 1], told.err).toContain(told.status);
      expect(told.out).not.toBe('');
    },
  );

  it('names every option of pack, and no other', async () => {
    const { out } = await shuntbook(['pack', '--help']);
    const known = [...out.matchAll(/^ {2}--([a-z-]+)/gm)]
      .map(([, name]) => name)
      .filter((n) => n !== 'help' && n !== 'version');
    const told = [...section('Options of `pack` and `plan`').matchAll(/^\| `--([a-z-]+)/gm)].map(
      ([, name]) => name,
    );
    expect(told.toSorted()).toEqual(known.toSorted());
  });

  it('names every exit status', () => {
    const told = [...section('Exit status').matchAll(/^\| (\d+) /gm)].map(([, status]) => Number(status));
    expect(told).toEqual(Object.values(EXIT));
  });

  it('names every kind, and only fields that there are', () => {
    const words = [...section('What goes in').matchAll(/`([a-z0-9_-]+)`/g)].map(([, word]) => word ?? '');
    for (const kind of KINDS) expect(words).toContain(kind);
    const fields = [...section('What goes in').matchAll(/^\| ((?:`[a-z_0-9]+`(?:, )?)+) /gm)].flatMap(
      ([, cell]) => [...(cell ?? '').matchAll(/`([a-z_0-9]+)`/g)].map(([, f]) => f ?? ''),
    );
    expect(fields.length).toBeGreaterThan(20);
    for (const field of fields) expect(Object.keys(FIELDS)).toContain(field);
  });

  it('names every column of the catalogue, and no other', () => {
    const told = [
      ...section('Columns of the catalogue').matchAll(/^\| ((?:`[a-z_0-9]+`(?:, )?)+) /gm),
    ].flatMap(([, cell]) => [...(cell ?? '').matchAll(/`([a-z_0-9]+)`/g)].map(([, column]) => column ?? ''));
    expect(told.toSorted()).toEqual(Object.keys(PART_FIELDS).toSorted());
  });
});
