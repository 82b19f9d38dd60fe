import { written } from '../in-english.js';
import { describe, expect, it } from 'vitest';
import { reason } from '../../src/model/reason.js';
import { recordView } from '../../src/documents/closeout-pack/record.js';
import { crewPackWords } from '../../src/words/crew-language.js';
import { statedText } from '../../src/documents/parts/site.js';
import { wiringNotes } from '../../src/documents/closeout-pack/wiring-note.js';
import { dataOf } from '../plan/plan-of.js';
import {
  noteReadings,
  outsideMeanings,
  watchTexts,
} from '../../src/documents/closeout-pack/note-readings.js';
import { noteDanger } from '../../src/documents/closeout-pack/note-danger.js';
import { crewNoteWords } from '../../src/words/crew-notes.js';
import type { Plan } from '../../src/model/plan.js';
import type { PlannedBand, Probes } from '../../src/model/planned-measuring.js';
import { defaultSettings } from '../../src/model/settings.js';
import { protector, wire } from './fixtures/builder.js';
import { hutPlan } from './fixtures/plans.js';

const origin = { from: 'list', file: 'list.csv', line: 2, column: 'x' } as const;

describe('a fact as it was typed', () => {
  it.each([
    ['-28', -28, '°C', '-28 °C'],
    ['-18 C', -18, '°C', '-18 °C'],
    ['10', -12.22, '°C', '10, read as -12.22 °C'],
    ['35', 10.67, 'm', '35, read as 10.67 m'],
    ['12 m', 12, 'm', '12 m'],
    ['10', 10000, 'A', '10, read as 10000 A'],
    ['3', 3, '', '3'],
    ['-0.27 %/C', '-0.27 %/C', '', '-0.27 %/C'],
  ])('%s is shown with the unit that it was read in', (text, value, unit, shown) => {
    expect(statedText({ field: 'lowest_temp', text, value, unit, origin })).toBe(shown);
  });
});

describe('the commissioning record', () => {
  const base = hutPlan();
  const [first] = base.site.equipments;
  if (first === undefined) throw new Error('the hut has equipment');
  const rowOf = (more: Partial<Parameters<typeof protector>[0]>): unknown => {
    const one = protector({ tag: 'P-1', ports: [{ equipment: first.tag, port: 'output' }], ...more });
    return recordView({ ...base, protectors: [one] }, crewPackWords('en')).rows[0];
  };

  it('has the serial that the list states, and leaves the rest to be filled in', () => {
    expect(rowOf({ serial: 'S-7' })).toMatchObject({ tag: 'P-1', serial: 'S-7' });
    expect(rowOf({})).toMatchObject({ serial: '' });
  });

  it('names each pair of conductors between which volts are found once', () => {
    const none = { below: null, above: null, fault: null, due: null, current: null, low: null, high: null };
    const band = (between: Probes[]): PlannedBand => ({ ...none, between, reads: written('x') });
    const pair = (name: string, to: string | null): Probes => ({
      wire: wire(name),
      to: to === null ? null : wire(to),
      sign: null,
    });
    const bands = [
      band([pair('positive', 'negative')]),
      band([pair('positive', null), pair('positive', 'negative')]),
    ];
    const measuring = { state: null, bands, meter: null, clothing: null };
    expect(rowOf({ wiring: { measuring } })).toMatchObject({
      volts: ['+/−', '+/G'].map((of) => ({ of, found: '' })),
      voltsNone: '',
    });
    const closed = { ...measuring, state: reason('measure-state/do-not-open', { turbines: [] }) };
    expect(rowOf({ wiring: { measuring: closed } })).toMatchObject({ volts: [], voltsNone: 'do not open' });
  });
});

describe('what stays live at a box', () => {
  it('is said before any step, its own conductors or not, with who can change that', () => {
    const base = hutPlan();
    const [first] = base.protectors;
    if (first === undefined) throw new Error('the hut has a protector');
    const who = reason('live-who/utility');
    const live = [
      { what: reason('live/battery-terminals'), who: reason('live-who/nobody-battery'), here: false },
      { what: reason('live/ahead-of-main'), who, here: true },
    ];
    const isolation = { ...first.wiring.isolation, live };
    const one = { ...first, wiring: { ...first.wiring, isolation } };
    const { banners } = noteDanger({ ...base, protectors: [one] }, [one], crewNoteWords('en'));
    const said = banners.filter(({ word }) => word === 'STAYS LIVE').map(({ says }) => says);
    expect(said).toEqual([
      expect.stringMatching(/^the battery’s terminals, .*; .*\.$/),
      expect.stringMatching(/^all of this place: it is ahead of the main disconnect; .*\.$/),
    ]);
  });
});

describe('the readings of a wiring note', () => {
  const probes = (name: string, to: string | null, sign: '+' | '-' | null): Probes => ({
    wire: wire(name),
    to: to === null ? null : wire(to),
    sign,
  });
  const none = { below: null, above: null, fault: null, due: null };
  const rows = (bands: PlannedBand[]): string[] => {
    const one = protector({
      tag: 'P-1',
      ports: [],
      wiring: { measuring: { state: null, bands, meter: null, clothing: null } },
    });
    return noteReadings([[one]], crewNoteWords('en')).map((r) =>
      [r.what, r.expect, ...(r.stop === '' ? [] : [r.stop])].join(' | ').replaceAll('\u00a0', ' '),
    );
  };

  it.each<[string, PlannedBand, string]>([
    [
      'lines of one band',
      {
        ...none,
        between: [probes('L1', null, null), probes('L2', null, null)],
        current: 'ac',
        low: 110,
        high: 127,
        reads: written('x'),
      },
      'L1, L2 to ground | 110 to 127 V AC | under 110 V or over 127 V',
    ],
    [
      'pole to pole with its sign',
      {
        ...none,
        between: [probes('positive', 'negative', '+')],
        current: 'dc',
        low: 40,
        high: 58.4,
        reads: written('x'),
      },
      '+ to − | +40 to +58.4 V DC | under 40 V or over 58.4 V, or other sign',
    ],
    [
      'a live negative',
      {
        ...none,
        between: [probes('negative', null, '-')],
        current: 'dc',
        low: 40,
        high: 58.4,
        reads: written('x'),
      },
      '− to ground | −40 to −58.4 V DC | under 40 V or over 58.4 V, or other sign',
    ],
    [
      'poles that float, each with its own sign and no low figure',
      {
        ...none,
        between: [probes('positive', null, '+'), probes('negative', null, '-')],
        current: 'dc',
        low: null,
        high: 456,
        reads: written('x'),
      },
      '+, − to ground | up to 456 V DC | over 456 V',
    ],
    [
      'no current known',
      { ...none, between: [probes('L1', 'L2', null)], current: null, low: 0, high: 5, reads: written('x') },
      'L1 to L2 | 0 to 5 V | over 5 V',
    ],
  ])('%s', (_, band, says) => {
    expect(rows([band])).toEqual([says]);
  });

  it('never call a figure that isn’t known one', () => {
    const [row] = rows([
      {
        ...none,
        between: [probes('L1', null, null)],
        current: 'ac',
        low: null,
        high: null,
        reads: written('x'),
      },
    ]);
    expect(row).toBe('L1 to ground | not known: do not connect, ask the office');
  });

  it('say once how a ground fault shows, and once a job what a reading outside means', () => {
    const band = {
      between: [probes('L1', null, null)],
      current: 'ac',
      low: 1,
      high: 2,
      reads: written('x'),
    } as const;
    const above = written('Above: stop.');
    const fault = written('A fault.');
    const bands = [2, 3].map((high) => ({
      ...none,
      ...band,
      between: [...band.between],
      high,
      above,
      fault,
    }));
    const one = protector({
      tag: 'P-1',
      ports: [],
      wiring: { measuring: { state: null, bands, meter: null, clothing: null } },
    });
    expect(watchTexts([[one]], crewNoteWords('en'))).toEqual(['A fault.']);
    // How a ground fault shows stands on the note itself.
    expect(outsideMeanings([one, one], crewNoteWords('en'))).toEqual(['Above: stop.']);
  });
});

describe('the grounding in a wiring note', () => {
  const system = (of: Plan): string | undefined => wiringNotes(of, defaultSettings(), 'en')[0]?.system;
  const service = (facts: string): Plan => dataOf('', `S service; ac_in=120/240${facts}`);

  it('is what the plan rests on', () => {
    expect(system(service(''))).toMatch(/^120\/240\u00a0V, solidly grounded \(A\d: verify\)$/);
    expect(system(service('; system_grounding=none'))).toBe('120/240\u00a0V, ungrounded');
  });

  it('that is assumed is asked for by an open item of the plan; one that is stated isn’t', () => {
    const asked = (facts: string): boolean =>
      service(facts).openItems.some(({ field }) => field === 'system_grounding');
    expect(asked('')).toBe(true);
    expect(asked('; system_grounding=solid')).toBe(false);
  });

  it('is not told where it isn’t known', () => {
    const of = dataOf(
      '',
      'K control-circuit; control_voltage=24 V dc; place=Gate; outdoors=yes; protect=yes',
    );
    expect(system(of)).toMatch(/^DC, grounding not known \(A\d: verify\)$/);
  });
});
