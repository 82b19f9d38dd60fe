import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/model/plan.js';
import { besidePicture, lightGroups } from '../../src/documents/parts/owner-lights.js';
import { ownerStrings } from '../../src/words/languages.js';
import { checksView } from '../../src/documents/closeout-pack/checks.js';
import { recordView } from '../../src/documents/closeout-pack/record.js';
import { crewPackWords } from '../../src/words/crew-language.js';
import { wiringNotes } from '../../src/documents/closeout-pack/wiring-note.js';
import { ownerBoxes } from '../../src/documents/owner-sheet/boxes.js';
import { lookOf } from '../../src/documents/owner-sheet/looks.js';
import { lightSymbol } from '../../src/documents/drawing/lights.js';
import { defaultSettings } from '../../src/model/settings.js';
import { demoPlan } from './fixtures/demo-plans.js';
import { catalogueOf, dataOf, partLine } from '../plan/plan-of.js';

/** Every picture of a protector, a line each: the word of the state, and each light as it looks then. */
function pictures(plan: Plan, port: string): string[] {
  const protector = plan.protectors.find((p) => p.ports.some((x) => `${x.equipment}:${x.port}` === port));
  if (!protector) throw new Error(`nothing at ${port}`);
  return lightGroups(plan, protector, ownerStrings('en').states).flatMap((group) =>
    group.states.map((s) => `${s.state}: ${s.lights.map((l) => `${l.number} ${l.look}`).join(', ')}`),
  );
}

it('a housing that a generator’s input shares with the output: the output stays lit when the generator is off', () => {
  const plan = dataOf(
    '',
    `INV inverter-charger; ac_in=120; ac_out=120; place=Hut
     GEN generator; connects_to=INV; run_length=5 m; ac_out=120; place=Hut
     BAT battery; connects_to=INV; run_length=1 m; battery_voltage=24; battery_chemistry=lfp; place=Hut`,
  );
  expect(pictures(plan, 'INV:ac-out')).toEqual([
    'Generator on: 1 lit',
    'Generator off: 1 dark',
    'Power on: 2 lit',
    'Power off: 2 dark',
  ]);
});

it('a panel behind a transfer switch: its lights are off when nothing feeds it, not when the generator is off', () => {
  const plan = dataOf(
    '',
    `SVC service; ac_in=120/240; place=House
     TS transfer-switch; connects_to=SVC; run_length=2 m; place=House
     GEN generator; connects_to=TS; run_length=20 m; ac_out=120/240; place=House
     MP panel; connects_to=TS; run_length=9 m; ac_in=120/240; place=House; protect=yes`,
  );
  expect(pictures(plan, 'MP:feeder')).toEqual([
    'Grid power on: 1 lit, 2 lit',
    'Generator on: 1 lit, 2 lit',
    'Power off: 1 dark, 2 dark',
  ]);
});

it('what a generator alone feeds goes by the generator; what an inverter feeds goes by the power', () => {
  const plan = dataOf(
    '',
    `GEN generator; ac_out=120/240; place=Shed; protect=yes
     P panel; connects_to=GEN; run_length=9 m; ac_in=120/240; place=Shed; protect=yes`,
  );
  for (const port of ['GEN:output', 'P:feeder']) {
    expect(pictures(plan, port)).toEqual(['Generator on: 1 lit, 2 lit', 'Generator off: 1 dark, 2 dark']);
  }
});

describe('a flag', () => {
  const withFlag = (more: string): Plan =>
    dataOf('', 'S service; ac_in=120/240', {
      catalogue: catalogueOf(partLine('F', `channels=2; mcov_ac=150; up=600; indicator=flag${more}`)),
    });
  const told = withFlag('; good_flag=green; used_flag=red');
  const untold = withFlag('');
  const first = (plan: Plan): Plan['protectors'][number] => {
    const [protector] = plan.protectors;
    if (!protector) throw new Error('no protector');
    return protector;
  };

  it.each([
    [
      'en',
      'At all times: 1 good, 2 good',
      'Flags 1 and 2. GOOD: green. USED UP: red.',
      'Both must be green at all times.',
    ],
    [
      'es',
      'Siempre: 1 good, 2 good',
      'Banderas 1 y 2. BUENA: verde. GASTADA: roja.',
      'Las dos: siempre verde.',
    ],
  ])(
    '%s: the owner sees a good flag at all times, and how a used-up one looks',
    (language, look, alt, must) => {
      const strings = ownerStrings(language);
      const groups = lightGroups(told, first(told), strings.states);
      const states = groups.flatMap((g) => g.states);
      expect(
        states.map((s) => `${s.state}: ${s.lights.map((l) => `${l.number} ${l.look}`).join(', ')}`),
      ).toEqual([look]);
      const seen = lookOf(told, first(told), strings);
      expect(seen.picture('P-1', '')).toContain(`aria-label="P-1. ${alt}"`);
      expect(seen.texts).toEqual([must]);
      const unknown = lookOf(untold, first(untold), strings);
      expect(unknown.picture('P-1', '')).not.toContain(alt);
      expect(unknown.texts).toEqual([strings.boxes.flag, strings.boxes.flagUnknown]);
    },
  );

  it('the record and the checks ask for a good flag', () => {
    const words = crewPackWords('en');
    expect(recordView(told, words).rows[0]?.lights).toEqual(
      ['1 flag', '2 flag'].map((of) => ({ of, found: '' })),
    );
    const checks = (plan: Plan): string => JSON.stringify(checksView(plan, words));
    expect(checks(told)).toContain(words.checks.texts.flag);
    expect(checks(dataOf('', 'S service; ac_in=120/240'))).not.toContain(words.checks.texts.flag);
  });

  it.each([
    ['en', 'Always: all GOOD.', 'GOOD, green'],
    ['es', 'Siempre: cada una BUENA.', 'BUENA, verde'],
  ] as const)(
    '%s: a note draws it, and tells how it looks in the colour of the catalogue',
    (language, look, drawn) => {
      const [note, ...others] = wiringNotes(told, defaultSettings(), language);
      expect(others).toEqual([]);
      expect(note?.steps.at(-1)?.how).toBe(look);
      expect(note?.picture).toContain(`>${drawn}<`);
      // No light is drawn where there is none.
      const disc = /Z" stroke="#000" stroke-width="1.4"/;
      expect(lightSymbol(0, 0, 'lit', 'green')).toMatch(disc);
      expect(note?.picture).not.toMatch(disc);
    },
  );
});

it('a light that goes by the grid is off when the grid is off, at the box that makes house power too', () => {
  expect(pictures(demoPlan('UF-111'), 'INV:ac-out')).toEqual([
    'Grid power on: 1 lit, 2 lit',
    'Grid power off: 1 dark, 2 dark',
  ]);
});

it('of a turbine whose lights all blink, one that is off alone is told from a turbine that stands still', () => {
  const told = (jobId: string, tag: string): string[] => {
    const plan = demoPlan(jobId);
    const protector = plan.protectors.find((p) => p.tag === tag);
    if (!protector) throw new Error(`no protector ${tag}`);
    return besidePicture(lightGroups(plan, protector, ownerStrings('en').states), ownerStrings('en'));
  };
  const { alternator, oneOff } = ownerStrings('en').boxes;
  expect(told('UF-105', 'P-6')).toEqual([alternator, oneOff]);
  expect(told('UF-105', 'P-4')).not.toContain(oneOff);
});

it('the light of control wires goes by their own power, and dark it is no sure good', () => {
  const plan = demoPlan('UF-106');
  expect(pictures(plan, 'CTL:terminals')).toEqual([
    'Control power on: 1 either, 2 either',
    'Control power off: 1 dark, 2 dark',
  ]);
  const protector = plan.protectors.find((p) => p.tag === 'P-2');
  if (!protector) throw new Error('no protector P-2');
  const texts = lookOf(plan, protector, ownerStrings('en')).texts.join(' ');
  expect(texts).toContain('Control power off: all off. Not sure? Call us.');
  expect(lookOf(plan, protector, ownerStrings('en')).picture('P-2', '')).toContain(
    'Our ticks. None? Call us:',
  );
});

describe('the boxes of a sheet', () => {
  const strings = ownerStrings('en');
  const { boxes } = ownerBoxes(demoPlan('UF-106'), strings);
  const boxOf = (tag: string): (typeof boxes)[number] => {
    const box = boxes.find((b) => b.rooms.some((r) => r.tags.some(({ tags }) => tags.includes(tag))));
    if (!box) throw new Error(`no box ${tag}`);
    return box;
  };

  it('never send anyone up to a roof, and say so at no other place', () => {
    expect(boxOf('P-1').texts).toContain(strings.boxes.roof);
    expect(boxes.filter(({ texts }) => texts.includes(strings.boxes.roof))).toHaveLength(1);
  });

  it('say what each of several has, and of one nothing', () => {
    expect(boxOf('P-4').texts).toContain('Each has flags 1 and 2.');
    expect(boxOf('P-1').texts.join(' ')).not.toContain('Each has');
  });

  it('name a place in each row: the room again where no thing is named', () => {
    for (const { rooms } of boxes) {
      for (const { room, tags } of rooms) {
        for (const { at } of tags) expect(`${room}${at}`).not.toBe('');
      }
    }
    expect(boxOf('P-7').rooms[0]?.room).toBe('Workshop, machine hall');
  });
});
