import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { noteDevice } from '../../src/documents/closeout-pack/note-device.js';
import { portName } from '../../src/documents/closeout-pack/note-names.js';
import type { WiringNote } from '../../src/documents/closeout-pack/wiring-note-view.js';
import { wiringNotes } from '../../src/documents/closeout-pack/wiring-note.js';
import { scheduleCells } from '../../src/documents/parts/contents/schedule-row.js';
import type { PlannedBand, Probes } from '../../src/model/planned-measuring.js';
import type { Plan, PlannedProtector } from '../../src/model/plan.js';
import { defaultSettings } from '../../src/model/settings.js';
import { CREW_LANGUAGES, type CrewLanguage } from '../../src/words/crew-language.js';
import { crewNoteWords, crewSay } from '../../src/words/crew-notes.js';
import { lengthUnitOf, longestLead } from '../../src/words/lengths.js';
import { tagList } from '../../src/words/tag-list.js';
import { dataOfCsv } from '../plan/plan-of.js';
import { planOfSize } from '../plan-of-size.js';
import { csvOfSite, sites } from '../plan/sites.js';
import { demoPlans } from './fixtures/demo-plans.js';

// What a wiring note says against what the plan and the schedule say: they are printed for the same hands.

const EN = crewNoteWords('en');
const notesOf = (plan: Plan, language: CrewLanguage = 'en'): WiringNote[] =>
  wiringNotes(plan, defaultSettings(), language);
const spaced = (text: string): string => text.replace(/[\s\u00a0]+/g, ' ');
/** The words of a picture, without breaks of lines. */
const drawn = (svg: string): string => spaced(svg.replace(/<[^>]*>/g, ' '));
const numbersIn = (text: string): number[] => [...text.matchAll(/\d+(?:\.\d+)?/g)].map(Number);

/** Steps by number: `1, 2`, `1 to 4`. */
function stepsIn(list: string): number[] {
  const numbers = numbersIn(list);
  const [first = 0, last = 0] = numbers;
  return list.includes(' to ') ? Array.from({ length: last - first + 1 }, (_, i) => first + i) : numbers;
}

function noteWith(notes: readonly WiringNote[], tag: string): WiringNote {
  const found = notes.find(({ rows }) => rows.some((row) => row.tag === tag));
  if (!found) throw new Error(`no note has ${tag}`);
  return found;
}

/** True where tags as a page names them, `P-3 to P-6, P-9`, have one among them; `` are all of the page. */
function hasTag(tags: string, tag: string): boolean {
  const number = (text: string): number => Number(/\d+$/.exec(text)?.[0]);
  return (
    tags === '' ||
    tags.split(/, | and /).some((part) => {
      const [from = '', to = from] = part.split(' to ');
      return number(from) <= number(tag) && number(tag) <= number(to);
    })
  );
}

const short = ({ name, port }: Probes['wire']): string => {
  const sign = name === 'positive' ? '+' : name === 'negative' ? '−' : name;
  return port === null ? sign : `${portName(port, EN)} ${sign}`;
};

/** The lines of a note in which volts between two points are found. */
function readingsAt(note: WiringNote, { tag }: PlannedProtector, { wire, to }: Probes) {
  const full = `${short(wire)} to ${to === null ? 'ground' : short(to)}`;
  return note.readings.filter(
    ({ tags, probes }) => hasTag(tags, tag) && probes.some((one) => one.full === full),
  );
}

/** True where the figures of a line are those of a band, to a tenth of a volt, never wider. */
function keeps({ stop, expect: says }: WiringNote['readings'][number], band: PlannedBand): boolean {
  const { low, high } = band;
  if (high === null) return says === EN.table.notKnown && stop === '';
  const figures = numbersIn(stop);
  const most = figures.at(-1) ?? Infinity;
  const isTop = most <= high + 1e-6 && most > high - 0.1;
  if (low === null || low <= 0 || band.due !== null) return isTop && figures.length === 1;
  const [least = -Infinity] = figures;
  return isTop && figures.length === 2 && least >= low - 1e-6 && least < low + 0.1;
}

const isClosed = ({ wiring }: PlannedProtector): boolean =>
  wiring.measuring.state?.code === 'measure-state/do-not-open';

/** The demo's jobs, one of 14 and one of 32 protectors, and generated ones that nobody thought of. */
const JOBS: readonly (readonly [string, Plan])[] = [
  ...demoPlans().map((plan) => [plan.job, plan] as const),
  ['14 protectors', await planOfSize(14)],
  ['32 protectors', await planOfSize(32)],
  ...fc
    .sample(sites(), { seed: 20_260_101, numRuns: 40 })
    .map(
      (site, index) =>
        [`generated site ${index + 1}`, dataOfCsv(csvOfSite(site), { unchecked: true })] as const,
    ),
];

describe.each(JOBS)('the wiring notes of %s', (_, plan) => {
  const notes = notesOf(plan);

  it('have each protector in one row of one page, at most 4 beside a picture and 8 without', () => {
    const tags = notes.flatMap(({ rows }) => rows.map(({ tag }) => tag));
    expect(tags.sort()).toEqual(plan.protectors.map(({ tag }) => tag).sort());
    for (const { picture, rows } of notes) {
      expect(rows.length).toBeGreaterThan(0);
      expect(rows.length).toBeLessThanOrEqual(picture === '' ? 8 : 4);
    }
  });

  it.each(CREW_LANGUAGES)('%s: have all steps of the work beside the picture, each once', (language) => {
    const all = Object.values(crewNoteWords(language).steps);
    for (const { picture, steps, continued } of notesOf(plan, language)) {
      expect(steps.map(({ does }) => does)).toEqual(picture === '' ? [] : all);
      expect(continued.length > 0).toBe(picture === '');
    }
  });

  it('name the device that the schedule and the plan name', () => {
    // Where no part is chosen the note stops its reader; the schedule asks for what any part would need.
    const chosen = plan.protectors.filter(({ part, existing }) => part !== null || existing !== null);
    for (const one of chosen) {
      const lines = one.overcurrent.flatMap((device) => noteDevice(device, one, EN).lines);
      const told = new Set(numbersIn(lines.join(' ')));
      const scheduled = numbersIn(scheduleCells(one, plan).device.lines.join(' '));
      for (const number of scheduled) expect([...told], `${one.tag}: ${lines.join()}`).toContain(number);
      const planned = one.overcurrent.flatMap(({ amps, leastAmps, volts, poles }) => [
        ...[amps, leastAmps, poles],
        volts === null ? null : Math.ceil(volts - 1e-6),
      ]);
      const rest = one.figures?.leadsRestOn;
      // `class 2` is a word with a number; interrupting ratings are the schedule's.
      const byTurbine = one.overcurrent.some(
        ({ because }) => because.code === 'overcurrent/by-maker-of-turbine',
      );
      const bears = byTurbine && one.required.mcov !== null ? Math.ceil(one.required.mcov - 1e-6) : null;
      const known = [...planned, ...scheduled, bears, rest?.on === 'supply' ? rest.amps : null, 2];
      if (bears !== null) expect([...told], one.tag).toContain(bears);
      for (const number of told) expect(known, `${one.tag}: ${lines.join()}`).toContain(number);
    }
  });

  it('show of each protector what the plan has for it, though a picture is drawn for many', () => {
    let page: WiringNote | undefined;
    for (const note of notes) {
      if (note.picture !== '') page = note;
      if (!page) throw new Error('a page without a picture before it');
      const text = drawn(page.picture);
      const steps = spaced(page.steps.map(({ how }) => how).join(' '));
      for (const { tag } of note.rows) {
        const one = plan.protectors.find((protector) => protector.tag === tag);
        if (!one) throw new Error(`no protector ${tag}`);
        for (const device of one.overcurrent.filter(({ conductors }) => conductors.length > 0))
          for (const line of noteDevice(device, one, EN).lines) expect(text, tag).toContain(spaced(line));
        expect(text, tag).toContain(EN.picture.atMost(longestLead(one.wiring, lengthUnitOf(plan))));
        expect(text, tag).toContain(spaced(crewSay(one.wiring.groundTo, 'en')));
        for (const { channel } of one.channels) expect(text, tag).toMatch(new RegExp(` ${channel} `));
        if (one.wiring.torque !== null) expect(steps, tag).toContain(spaced(one.wiring.torque));
        for (const conductor of one.channels.map(({ wire }) => EN.conductors[wire.name])) {
          const isPole = one.channels.some(({ pole }) => pole !== null);
          if (!isPole) expect(text, tag).toContain(conductor);
        }
      }
    }
  });

  it('warn of two supplies, and of sources that nobody knows, exactly where the plan does', () => {
    for (const { tag, wiring } of plan.protectors) {
      const says = noteWith(notes, tag).danger.banners.map((banner) => banner.says);
      expect(says.includes(EN.twoSupplies), tag).toBe(wiring.fedFromTwoSupplies);
      const { unknown, part } = wiring.isolation;
      expect(says.includes(EN.sourcesUnknown), tag).toBe(unknown || part === null);
      const live = noteWith(notes, tag).danger.banners.filter(({ word }) => word === EN.words.staysLive);
      expect(live.length, tag).toBe(wiring.isolation.live.length);
    }
  });

  it('name all sources that a place is measured on, and all steps that make it dead', () => {
    for (const { tag, wiring } of plan.protectors) {
      const note = noteWith(notes, tag);
      const { state } = wiring.measuring;
      if (state?.code === 'measure-state/sources-on') {
        const { sources } = state.values;
        const runs = note.rows.find((row) => row.tag === tag)?.source ?? [];
        const own = runs.map(({ text }) => text).join('');
        const all = spaced(note.conditions.join(' '));
        expect(own === '' ? all.includes(tagList(sources)) : own === sources.join(', '), tag).toBe(true);
      }
      const part = plan.isolation.parts.find(({ number }) => number === wiring.isolation.part);
      const order = (part?.steps ?? []).map(({ number }) => number);
      const numbers = wiring.isolation.steps.map((number) => order.indexOf(number) + 1);
      const [, lock, prove] = note.steps;
      if (lock === undefined || prove === undefined) continue;
      const named = [lock, prove].flatMap(({ how }) =>
        [...how.matchAll(/Isolation page(?:, part \d+)?: ([\d, to]+)\./g)].flatMap(([, list = '']) =>
          stepsIn(list),
        ),
      );
      expect(named.sort(), tag).toEqual(numbers.sort());
    }
  });

  it('stop where the plan’s bands end, and tell a figure wherever the plan has one', () => {
    for (const one of plan.protectors) {
      const note = noteWith(notes, one.tag);
      for (const band of isClosed(one) ? [] : one.wiring.measuring.bands) {
        for (const probes of band.between) {
          const lines = readingsAt(note, one, probes);
          const figures = lines.map(({ expect: says, stop }) => `${says} | ${stop}`).join('; ');
          const asked = `${one.tag} ${short(probes.wire)}: ${band.low} to ${band.high}, not ${figures}`;
          expect(
            lines.some((line) => keeps(line, band)),
            asked,
          ).toBe(true);
        }
      }
    }
  });

  it('have no line of volts that the plan has no band for', () => {
    for (const note of notes) {
      const own = plan.protectors.filter(({ tag }) => note.rows.some((row) => row.tag === tag));
      for (const line of note.readings) {
        const bands = own
          .filter((one) => !isClosed(one) && hasTag(line.tags, one.tag))
          .flatMap(({ wiring }) => wiring.measuring.bands);
        expect(
          bands.some((band) => keeps(line, band)),
          `${note.tags}: ${line.what}`,
        ).toBe(true);
      }
    }
  });

  it('warn of the voltages of the plan, none lower than what may be read there', () => {
    for (const { tag, wiring } of plan.protectors) {
      const { says, word } = noteWith(notes, tag).danger;
      expect(word, tag).toBe(wiring.hazard === 'shock' ? EN.words.danger : EN.words.warning);
      const { meter, bands } = wiring.measuring;
      if (meter?.says.code !== 'meter/rated') continue;
      const { volts, beside } = meter.says.values;
      const known = [volts, ...(beside ?? []).map((one) => one.volts)].flatMap((one) => one ?? []);
      // Whole volts at least: never below the plan's.
      const told = numbersIn(says.replace(EN.hazards[wiring.hazard]('').split('.')[0] ?? '', ''));
      for (const { value } of known)
        expect(
          told.some((one) => one >= value && one < value * 1.1 + 1),
          `${tag}: ${says}`,
        ).toBe(true);
      if (volts !== null && (beside ?? []).every((one) => one.volts !== null))
        expect(says, tag).not.toMatch(/not known/);
      for (const { high } of bands)
        if (high !== null && volts !== null)
          expect(Math.max(...told), tag).toBeGreaterThanOrEqual(high - 1e-6);
    }
  });

  it('name no part unknown that the plan has chosen', () => {
    for (const { tag, part, existing } of plan.protectors) {
      const name = noteWith(notes, tag).part;
      expect(name, tag).toContain(existing ?? part ?? EN.header.noPart);
    }
  });
});
