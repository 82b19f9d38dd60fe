import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { freshFolder, projectPath, shuntbook } from './command.js';

const README = readFileSync(projectPath('README.md'), 'utf8');

describe('README', () => {
  const lines = [...README.matchAll(/^npx shuntbook (pack [^#\n]+?) +#/gm)].map(([, args]) => args ?? '');

  it('shows how the packs of the demo are made, as the help does', () => {
    // `tests/documents/pages.browser.test.ts` makes them by the example of the help.
    expect(lines).toContain('pack fixtures/demo --out out/demo');
  });

  it.each(lines.filter((line) => line !== 'pack fixtures/demo --out out/demo'))(
    'shows a command that runs: %s',
    async (line) => {
      const args = line.split(' ').map((word) => (word.startsWith('out/') ? freshFolder() : word));
      const out = args.includes('--out') ? [] : ['--out', freshFolder()];
      const told = await shuntbook([...args, ...out]);
      expect([0, 1], told.err).toContain(told.status);
      expect(told.out).not.toBe('');
    },
  );
});
