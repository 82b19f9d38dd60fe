import { describe, expect, it } from 'vitest';
import { wiringNotes } from '../../src/documents/closeout-pack/wiring-note.js';
import type { Plan, PlannedProtector } from '../../src/model/plan.js';
import { defaultSettings } from '../../src/model/settings.js';
import { devicesText, smallestLeadsText } from '../../src/words/overcurrent.js';
import { say } from '../../src/words/reasons/say.js';
import { catalogueOf, dataOf, partLine, type PlanOptions } from '../plan/plan-of.js';

// Which conductor an overcurrent device stands in, as papers tell and draw it; rules.md 2.10, NEC 240.22. Own cases.

function there({ protectors }: Plan, tag: string): PlannedProtector {
  const found = protectors.find(({ ports: [port] }) => port?.equipment === tag);
  if (!found) throw new Error(`nothing at ${tag}`);
  return found;
}

const devices = (plan: Plan, tag: string): string => devicesText(there(plan, tag)).join(' | ');

/**
 * Frames of devices in the picture of a wiring note, as rows of channels from top to bottom: `1 2`, with `|` between
 * two frames.
 */
function framed(plan: Plan, tag: string): string {
  const { tag: own } = there(plan, tag);
  const note = wiringNotes(plan, defaultSettings(), 'en').find(({ rows }) =>
    rows.some((row) => row.tag === own),
  );
  const svg = note?.picture ?? '';
  // The number of a channel stands alone; all other texts have words.
  const rows = [...svg.matchAll(/<text x="[\d.]+" y="([\d.]+)"[^>]*>(\d)<\/text>/g)].map(
    ([, y, channel]) => ({
      y: Number(y),
      channel,
    }),
  );
  const frames = [...svg.matchAll(/<rect[^>]* stroke-width="1.5"[^>]*>/g)].map(([rect]) => {
    const of = (name: string): number => Number(new RegExp(` ${name}="([\\d.]+)"`).exec(rect)?.[1]);
    return {
      x: of('x'),
      top: of('y'),
      bottom: of('y') + of('height'),
      isFitted: !rect.includes('dasharray'),
    };
  });
  expect(rows.length).toBe(there(plan, tag).channels.length);
  // The neutral bar at the right has such a frame too.
  return frames
    .filter(({ x }) => x < 200)
    .map(({ top, bottom }) =>
      rows
        .filter(({ y }) => top < y && y < bottom)
        .map(({ channel }) => channel)
        .join(' '),
    )
    .join(' | ');
}

const battery = (more: string): Plan =>
  dataOf(
    '',
    `B battery; battery_voltage=48; battery_chemistry=lfp; fault_current=5 kA; place=H / b; connects_to=C; run_length=60 ft; ${more}
     C charge-controller; place=H / c`,
  );
const threes: PlanOptions = {
  catalogue: catalogueOf(partLine('OAK', 'channels=3; mcov_ac=640; up=600; listed_for=ungrounded')),
};
const service = (ac: string, options?: PlanOptions): Plan => dataOf('', `S service; ac_in=${ac}`, options);

describe('the device', () => {
  it('of a battery stands in the pole that isn’t grounded', () => {
    const negative = battery('dc_grounding=negative');
    expect(devices(negative, 'B')).toMatch(/^breaker or fuses, 1 pole, in positive; none in negative, /);
    expect(framed(negative, 'B')).toBe('1');
    const positive = battery('dc_grounding=positive');
    expect(devices(positive, 'B')).toMatch(/1 pole, in negative, -48\s?V; none in positive, return \(\+\), /);
    expect(framed(positive, 'B')).toBe('2');
  });

  it('of a floating battery stands in both, and names none', () => {
    const floats = battery('dc_grounding=floating');
    expect(devices(floats, 'B')).toMatch(/^breaker or fuses, 2 poles, at most 30 A/);
    expect(framed(floats, 'B')).toBe('1 2');
  });

  it('of a corner-grounded service goes past L2', () => {
    const corner = service('480 delta; system_grounding=corner', threes);
    expect(devices(corner, 'S')).toMatch(/2 poles, in L1 and L3; none in L2, /);
    expect(framed(corner, 'S')).toBe('1 | 3');
  });

  it('of one line and N stands in the line', () => {
    const options = { catalogue: catalogueOf(partLine('OAK', 'channels=2; mcov_ac=150; up=600')) };
    const one = dataOf('', 'I inverter-charger; ac_in=; ac_out=120; n_pe_link=no; protect=yes', options);
    expect(there(one, 'I').channels.map(({ wire }) => wire.name)).toEqual(['L1', 'N']);
    expect(devices(one, 'I')).toMatch(/1 pole, in L1, /);
    expect(framed(one, 'I')).toBe('1');
  });

  it('of two lines names none', () => {
    const two = service('120/240');
    expect(devices(two, 'S')).toMatch(/^breaker or fuses, 2 poles, at most 30 A/);
    expect(framed(two, 'S')).toBe('1 2');
  });
});

/** What `schedule.csv` says of the device and the smallest leads at one place. */
function says(plan: Plan, tag: string): string {
  return `${devices(plan, tag)}; leads ${smallestLeadsText(there(plan, tag))}`;
}

describe('a control circuit', () => {
  const control = (part: string, facts = ''): Plan =>
    dataOf(facts, 'C control-circuit; control_voltage=24 V dc; outdoors=yes; run_length=150 ft', {
      catalogue: catalogueOf(
        partLine('REED', `channels=2; mcov_dc=75; up=400; wire_range=14 to 2 AWG Cu; ${part}`),
        partLine('OAK', 'channels=2; mcov_ac=150; up=600'),
      ),
    });

  it('has no device behind a supply of class 2, and leads for that or 15 A (240.4(D))', () => {
    expect(says(control('overcurrent_a=30; overcurrent_min_a=15'), 'C')).toMatch(
      /^none of its own behind a class 2 supply; else as the part says, 15 A to 30 A, at least [\d.]+ V DC; leads 14 AWG Cu behind a class 2 supply or at most 15 A$/,
    );
    expect(says(control('overcurrent_a=30; wire_range=12 to 2 AWG Cu'), 'C')).toMatch(
      /else as the part says, at most 30 A, .*; leads 12 AWG Cu behind a class 2 supply or at most 20 A$/,
    );
  });

  it('has leads by its instructions where it has some, and under iec by the clause alone', () => {
    expect(says(control('overcurrent_a=30; lead_by_instructions=yes'), 'C')).toMatch(/; leads 14 AWG Cu$/);
    expect(says(control('overcurrent_a=30', 'basis=iec; earthing=TN'), 'C')).not.toMatch(/class 2 supply or/);
  });
});

describe('the smallest leads', () => {
  const of = (part: string, facts = ''): string => {
    const catalogue = catalogueOf(
      partLine('OAK', `channels=2; mcov_ac=150; up=600; wire_range=14 to 2 AWG Cu; ${part}`),
    );
    return says(dataOf(facts, 'S service; ac_in=120/240; fault_current=10 kA', { catalogue }), 'S');
  };

  it('are told by the part’s instructions where a device would ask for more, with the step', () => {
    expect(of('overcurrent_a=20; lead_by_instructions=yes')).toMatch(
      /; leads 14 AWG Cu by the part’s instructions \(240\.21\(B\)\(1\)\(1\)b exception\)$/,
    );
    expect(of('overcurrent_a=15; lead_by_instructions=yes')).toMatch(/; leads 14 AWG Cu$/);
    expect(of('overcurrent_a=20; lead_by_instructions=no')).toMatch(/; leads 12 AWG Cu$/);
    const catalogue = catalogueOf(
      partLine('OAK', 'channels=2; mcov_ac=150; up=600; overcurrent_a=20; lead_by_instructions=yes'),
    );
    const steps = there(dataOf('', 'S service; ac_in=120/240', { catalogue }), 'S')
      .calculations.flatMap((one) => one.steps)
      .filter(({ code }) => code === 'lead/by-instructions');
    expect(steps.map(({ value, unit }) => `${value} ${unit}`)).toEqual(['20 A']);
  });

  it('are told at least while the device isn’t known, beside the words of the catalogue', () => {
    expect(of('overcurrent_a=; overcurrent=three-pole breaker')).toMatch(
      /2 poles, size by the part’s instructions \(the catalogue: three-pole breaker\), .*; leads 14 AWG Cu at least, until the device is known$/,
    );
    expect(of('overcurrent_a=; overcurrent=')).toMatch(/size by the part’s instructions, at least 240 V/);
    expect(of('overcurrent_a=; overcurrent_min_a=10')).toMatch(
      /at least 10 A, size by the part’s instructions/,
    );
  });
});

describe('the catalogue’s words on the device', () => {
  const notes = (words: string, ac = '120/240'): readonly string[] => {
    const part = `channels=2; mcov_ac=150; up=600; overcurrent_a=20; overcurrent=${words}`;
    const options = { catalogue: catalogueOf(partLine('OAK', part)) };
    return there(service(ac, options), 'S')
      .wiring.notes.map((note) => say(note))
      .filter((note) => note.includes('ask the maker of the part'));
  };

  it('are noted where they name another number of poles than planned', () => {
    expect(notes('one-pole breaker')).toEqual([
      'The catalogue says of the device “one-pole breaker”, which names 1 pole where 2 are planned here: ask the maker of the part.',
    ]);
    expect(notes('two-pole breaker', '120; n_pe_link=yes')).toEqual([
      expect.stringMatching(/names 2 poles where 1 is planned here/),
    ]);
    expect(notes('two-pole breaker')).toEqual([]);
    expect(notes('a breaker')).toEqual([]);
  });

  it('aren’t held against a device that there is none of', () => {
    expect(notes('three-pole breaker', '120/240; rating_a=15 A')).toEqual([]);
    expect(notes('three-pole breaker', '120/240; rating_a=200 A')).toHaveLength(1);
  });
});
