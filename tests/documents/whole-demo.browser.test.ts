import { channelText } from '../../src/words/conductors.js';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { PDFParse } from 'pdf-parse';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DOCUMENT_KINDS } from '../../src/documents/parts/context.js';
import type { Plan } from '../../src/model/plan.js';
import { readPlan } from '../../src/output/plan-file.js';
import { SHOWS, STATES } from '../../src/model/words.js';
import { exampleOf, shuntbook, type Told } from '../commands/command.js';

// The whole demo from its lists to its files, by the command line and the real printer, and again two seconds later.
const ONE = 'UF-101';
const DATE = '2025-03-14';
// The same midnight, UTC, in seconds.
const EPOCH = String(Date.UTC(2025, 2, 14) / 1000);
const [first, second, apart] = ['first', 'second', 'apart'].map((name) =>
  mkdtempSync(join(tmpdir(), `shuntbook-demo-${name}-`)),
) as [string, string, string];

/** Carries out the example in the help of `pack`, and more arguments, into another folder. */
async function pack(out: string, args: readonly string[], env: Record<string, string> = {}): Promise<Told> {
  const example = await exampleOf('pack');
  expect(example).toEqual(['pack', 'fixtures/demo', '--out', 'out/demo']);
  const told = await shuntbook([...example.slice(0, -1), out, ...args], { env });
  // One job of the demo is a draft on purpose.
  expect([0, 1], told.err).toContain(told.status);
  return told;
}

beforeAll(async () => {
  expect((await pack(first, ['--date', DATE])).out).not.toBe('');
  const ended = Date.now();
  await pause(2000);
  expect(Date.now() - ended).toBeGreaterThanOrEqual(1990);
  await pack(second, ['--quiet'], { SOURCE_DATE_EPOCH: EPOCH });
  await pack(apart, ['--quiet', '--separate', '--job', ONE, '--date', DATE]);
}, 600_000);

afterAll(() => {
  for (const folder of [first, second, apart]) rmSync(folder, { recursive: true, force: true });
});

const jobs = (): string[] =>
  readdirSync(first, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && !entry.name.startsWith('.'))
    .map((entry) => entry.name);

const pdfs = (folder: string): string[] => readdirSync(folder).filter((name) => name.endsWith('.pdf'));

describe('the packs of the demo, made two seconds later', () => {
  it('are the same, byte for byte, by SOURCE_DATE_EPOCH as by --date', () => {
    expect(jobs().length).toBeGreaterThanOrEqual(10);
    for (const job of jobs()) {
      const names = pdfs(join(first, job));
      expect(names).toEqual(DOCUMENT_KINDS.map((kind) => `${kind}.pdf`).toSorted());
      for (const name of names) {
        const [a, b] = [first, second].map((out) => readFileSync(join(out, job, name)));
        expect(a?.equals(b ?? Buffer.of()), `${job}/${name}`).toBe(true);
      }
    }
  });

  // That every job's other documents are the same then, `pages.browser.test.ts` sees before they are printed.
  it('have six permit sheets with --separate, and else the same', () => {
    const names = pdfs(join(apart, ONE));
    expect(names.filter((n) => n.startsWith('permit-sheet-'))).toHaveLength(6);
    const others = names.filter((n) => !n.startsWith('permit-sheet'));
    expect(others).toEqual(pdfs(join(first, ONE)).filter((n) => n !== 'permit-sheet.pdf'));
    for (const name of others) {
      const [a, b] = [first, apart].map((out) => readFileSync(join(out, ONE, name)));
      expect(a?.equals(b ?? Buffer.of()), name).toBe(true);
    }
  });
});

interface ReadLight {
  readonly channel: number;
  readonly conductor: string;
  readonly state: string;
  readonly shows: string;
}

interface ReadProtector {
  readonly tag: string;
  readonly part: string;
  readonly lights: readonly ReadLight[];
}

const plain = (text: string): string => text.normalize('NFKC').replace(/\s+/g, ' ').trim();

async function pagesOf(file: string): Promise<string[]> {
  const parser = new PDFParse({ data: Uint8Array.from(readFileSync(file)) });
  const { pages } = await parser.getText();
  await parser.destroy();
  return pages.map((page) => page.text);
}

const LIGHT = new RegExp(`(\\d+) (\\S.*?) (${STATES.join('|')}) (${SHOWS.join('|')})(?= |$)`, 'g');

/** Takes the commissioning record apart: its text knows nothing of the plan. */
function recordsIn(text: string): ReadProtector[] {
  return [
    ...text.matchAll(
      /([^\n]+): ([^\n]+(?:\n[^\n:]+)*)\nSerial[^]*?(?=\n[^\n]+: [^\n]+(?:\n[^\n:]+)*\nSerial|$)/g,
    ),
  ].map(([whole, tag = '', what = '']) => {
    const table = plain(whole.slice(whole.indexOf('Seen') + 4));
    const lights = [...table.matchAll(LIGHT)].map(([, channel, conductor = '', state = '', shows = '']) => {
      return { channel: Number(channel), conductor, state, shows };
    });
    return { tag: plain(tag), part: plain(what).split(', ')[0] ?? '', lights };
  });
}

function planned(plan: Plan): ReadProtector[] {
  return plan.protectors.map((p) => ({
    tag: p.tag,
    part: p.existing === null ? (p.part ?? 'no part chosen') : `existing: ${p.existing}`,
    lights: p.channels.flatMap((c) =>
      c.indicator.map(({ state, shows }) => ({
        channel: c.channel,
        conductor: channelText(c),
        state,
        shows,
      })),
    ),
  }));
}

describe('the closeout packs of the demo, read back by pdf-parse', () => {
  it("hold every protector's tag, part, channels and lights as plan.json has them, and no more", async () => {
    let lights = 0;
    for (const job of jobs()) {
      const plan = readPlan(JSON.parse(readFileSync(join(first, job, 'plan.json'), 'utf8')))?.plan;
      if (!plan) throw new Error(`no plan of ${job}`);
      const pages = await pagesOf(join(first, job, 'closeout-pack.pdf'));
      const record = pages
        .filter((text) => text.split('\n')[0]?.endsWith('7 Commissioning record') === true)
        .map((text) => text.split('\n').slice(2).join('\n'));
      const read = recordsIn(record.join('\n'));
      expect(read, job).toEqual(planned(plan));
      lights += read.reduce((sum, p) => sum + p.lights.length, 0);
      // The schedule has each part beside its tag, the wiring note each channel beside its conductor and colour.
      const schedule = plain(pages.filter((text) => text.includes('2 Protection schedule')).join(' '));
      for (const p of plan.protectors) {
        expect(schedule, job).toContain(` ${p.tag} ${p.existing ?? p.part ?? 'no part chosen'}`);
        const note = plain(pages.find((text) => text.includes(`4 Wiring notes · ${p.tag}\n`)) ?? '');
        for (const c of p.channels)
          expect(note, `${job} ${p.tag}`).toContain(
            `${c.channel} ${channelText(c)} ${c.colour === '' ? 'no colour set' : c.colour} ${c.to}`,
          );
      }
    }
    expect(lights).toBeGreaterThan(100);
  });
});
