import type { Reason } from '../../src/model/reason.js';
import { say } from '../../src/words/reasons/say.js';
import { inEnglish } from '../in-english.js';
import { describe, expect, it } from 'vitest';
import {
  defaultSettings,
  libraryLacks,
  planJob,
  rangeOf,
  readCatalogueText,
  readLibraryText,
  readListText,
  type Catalogue,
  type RangeCover,
} from '../../src/index.js';

const SETTINGS = defaultSettings();
/** Nothing of the usual rest decides in these tests: In and SCCR are high, Up is low, and all are listed. */
const HEADINGS =
  'part,channels,mcov_ac,mcov_dc,up,up_basis,in_ka,sccr_ka,type,iec_class,connection,enclosure,listed_for,listing';
/** The lowest of these levels that is above an MCOV: no part limits to less than it bears all the time. */
const levelAbove = (mcov: number): number => [330, 700, 1200, 2000].find((up) => up > mcov) ?? 2500;
const row = (cells: {
  part: string;
  channels?: number;
  ac?: number;
  dc?: number;
  up?: number;
  type?: number;
  connection?: string;
  enclosure?: string;
  listedFor?: string;
  listing?: string;
}): string =>
  [
    cells.part,
    cells.channels ?? 3,
    cells.ac ?? '',
    cells.dc ?? '',
    cells.up ?? levelAbove(Math.max(cells.ac ?? 0, cells.dc ?? 0)),
    'VPR,20,100',
    cells.type ?? 2,
    'T2',
    cells.connection ?? '',
    cells.enclosure ?? '4X',
    cells.listedFor ?? '',
    cells.listing ?? 'an invented listing',
  ].join(',');

function stock(...rows: readonly Parameters<typeof row>[0][]): Catalogue {
  return readCatalogueText('stock.csv', `${[HEADINGS, ...rows.map(row)].join('\n')}\n`).catalogue;
}

const ranges = new WeakMap<Catalogue, ReturnType<typeof rangeOf>>();

/** The range of a catalogue under the default settings; of each catalogue it is found once. */
function rangeUnderDefaults(catalogue: Catalogue): ReturnType<typeof rangeOf> {
  const range = ranges.get(catalogue) ?? rangeOf(catalogue, SETTINGS);
  ranges.set(catalogue, range);
  return range;
}

function coverOf(
  catalogue: Catalogue,
  of: { circuit: string; grounding?: string; earthing?: string; place: RangeCover['place'] },
): RangeCover {
  const line = rangeUnderDefaults(catalogue).lines.find(
    (l) =>
      l.circuit === of.circuit &&
      l.grounding === (of.grounding ?? null) &&
      l.earthing === (of.earthing ?? 'TN'),
  );
  const cover = line?.covers.find((c) => c.place === of.place);
  if (!cover) throw new Error('no such circuit in the range');
  return cover;
}

const nearestOf = (cover: { readonly nearest: Reason | null }): string =>
  cover.nearest === null ? '' : say(cover.nearest);

describe('the range of a catalogue', () => {
  // 1.15 x 480 V line to line: common practice, no source.
  it.each([
    [551, null],
    [552, 'DELTA'],
  ])('has a part of MCOV %d V for an ungrounded 480 V delta: %s', (ac, part) => {
    const catalogue = stock({ part: 'DELTA', ac, listedFor: 'ungrounded' });
    const cover = coverOf(catalogue, { circuit: '480 delta', grounding: 'none', place: 'indoors' });
    expect(cover).toMatchObject({ mcov: 552, part });
    expect(cover.nearest === null ? '' : say(cover.nearest)).toBe(
      part === null ? 'DELTA (MCOV 551 V < 552 V)' : '',
    );
  });

  it('has none for a grounding that no part is listed for', () => {
    const catalogue = stock({ part: 'DELTA', ac: 640, listedFor: 'ungrounded' });
    const at = { circuit: '480 delta', place: 'indoors' } as const;
    expect(coverOf(catalogue, { ...at, grounding: 'none' }).part).toBe('DELTA');
    expect(coverOf(catalogue, { ...at, grounding: 'corner' }).part).toBeNull();
    expect(nearestOf(coverOf(catalogue, { ...at, grounding: 'impedance' }))).toContain('impedance-grounded');
  });

  it('tells indoors from outdoors, and the service from what lies ahead of its disconnect', () => {
    const at = { circuit: '120/240', grounding: 'solid' };
    const inside = stock({ part: 'ROOM', channels: 2, ac: 150, enclosure: '1' });
    expect(coverOf(inside, { ...at, place: 'indoors' }).part).toBe('ROOM');
    expect(coverOf(inside, { ...at, place: 'outdoors' }).part).toBeNull();
    expect(coverOf(inside, { ...at, place: 'service' }).part).toBe('ROOM');
    expect(nearestOf(coverOf(inside, { ...at, place: 'ahead of the disconnect' }))).toContain(
      'type 1 is asked',
    );
    const sturdy = stock({ part: 'LEAD', channels: 2, ac: 150, type: 1 });
    expect(coverOf(sturdy, { ...at, place: 'ahead of the disconnect' }).part).toBe('LEAD');
  });

  it('asks a TT system for connection 3+1', () => {
    const at = { circuit: '400Y/230', earthing: 'TT', place: 'indoors' } as const;
    const usual = stock({ part: 'FOUR', channels: 4, ac: 275 });
    expect(nearestOf(coverOf(usual, at))).toContain('3+1');
    expect(coverOf(stock({ part: 'FOUR', channels: 4, ac: 275, connection: '3+1' }), at).part).toBe('FOUR');
  });

  // NEC 690.7: 600 V on dwellings, 1000 V on other buildings.
  it('holds DC parts against the usual arrays', () => {
    const catalogue = stock({ part: 'DC', channels: 2, dc: 600 });
    expect(coverOf(catalogue, { circuit: 'array of 600 V', place: 'outdoors' }).part).toBe('DC');
    expect(coverOf(catalogue, { circuit: 'array of 1000 V', place: 'outdoors' }).part).toBeNull();
  });

  it('holds DC parts without a listing against the same circuits under iec', () => {
    const { lines, items } = rangeOf(stock({ part: 'DC', channels: 2, dc: 600, listing: '' }), SETTINGS);
    const covered = lines
      .filter((l) => l.circuit === 'array of 600 V')
      .map((l) => [l.basis, l.covers[0]?.part]);
    expect(covered).toEqual([
      ['nec-2023', null],
      ['iec', 'DC'],
    ]);
    expect(items).toEqual([]);
  });

  it('is a gap everywhere where the catalogue is empty', () => {
    const { lines, parts } = rangeOf(stock(), SETTINGS);
    expect(parts).toEqual([]);
    for (const cover of lines.flatMap((l) => l.covers))
      expect(cover).toMatchObject({ part: null, nearest: null });
  });

  it('chooses what planning chooses', () => {
    const catalogue = stock(
      { part: 'LOW', channels: 2, ac: 150, enclosure: '1' },
      { part: 'LOW-OUT', channels: 2, ac: 150, up: 400 },
      { part: 'TRIO', ac: 320 },
      { part: 'FREE', ac: 640, listedFor: 'ungrounded' },
    );
    for (const line of rangeOf(catalogue, SETTINGS).lines) {
      if (line.basis === 'iec' || line.current === 'dc' || line.grounding === null) continue;
      for (const { place, part } of line.covers) {
        if (place !== 'service' && place !== 'ahead of the disconnect') continue;
        const ahead = place === 'service' ? 'no' : 'yes';
        const text = `job,tag,kind,ac_in,system_grounding,ahead_of_disconnect\nJ,S,service,${line.circuit},${line.grounding},${ahead}\n`;
        const [list] = readListText('list.csv', text, { settings: SETTINGS }).jobs;
        const plan = list && planJob(list, { catalogue, settings: SETTINGS });
        expect(plan?.protectors[0]?.part, `${line.circuit} ${line.grounding} ${place}`).toBe(part);
      }
    }
  });
});

describe('what a part may be used for', () => {
  it('names circuits, places and the highest DC voltage', () => {
    const [use] = rangeOf(
      stock({ part: 'DUO', channels: 2, ac: 150, dc: 75, enclosure: '1' }),
      SETTINGS,
    ).parts;
    expect(use?.dcUpTo).toBe(75);
    const split = use?.fits.find((f) => f.circuit === '120/240' && f.grounding === 'solid');
    expect(split?.places).toEqual(['indoors', 'service']);
    expect(use?.fits.some((f) => f.circuit === '480Y/277')).toBe(false);
    // 64.8 V: the usual 24 cells of a 48 V lead-acid battery at 2.7 V, coldest not known (values from memory).
    expect(use?.fits.some((f) => f.circuit === '48 V battery')).toBe(true);
  });

  it('says of a part that fits nothing what it fails', () => {
    const { items, parts } = rangeOf(stock({ part: 'BARE', ac: 320, listing: ' ' }), SETTINGS);
    expect(parts[0]?.fits.every((f) => f.basis === 'iec')).toBe(true);
    expect(items).toEqual([]);
    const none = rangeOf(stock({ part: 'TINY', ac: 5 }), SETTINGS);
    expect(none.items).toMatchObject([
      { code: 'catalogue/part-fits-nothing', severity: 'confirm', file: 'stock.csv', line: 2 },
    ]);
    expect(inEnglish(none.parts[0]?.because)).toContain('MCOV 5 V');
  });
});

describe('what a model of the library lacks', () => {
  const lacks = (headings: string, cells: string): readonly string[] => {
    const text = `maker,model,${headings}\nInvented Works,M-1,${cells}\n`;
    const [entry] = [...readLibraryText('library.csv', text, SETTINGS).library.entries.values()];
    return entry ? libraryLacks(entry.facts, SETTINGS) : ['no entry'];
  };

  it.each([
    ['kind', '', ['kind']],
    ['kind', 'battery', ['battery_voltage', 'battery_chemistry']],
    ['kind,battery_voltage,battery_chemistry', 'battery,48,lfp', []],
    ['kind', 'array', ['voc_stc']],
    ['kind,voc_stc', 'array,49', []],
    ['kind', 'generator', ['ac_out']],
    ['kind', 'wind-turbine', ['output', 'open_circuit_voltage']],
    ['kind,ac_out', 'grid-tie-inverter,240', ['dc_inputs', 'max_dc_voltage']],
  ])('of %s = %s: %j', (headings, cells, expected) => {
    expect(lacks(headings, cells)).toEqual(expected);
  });
});
