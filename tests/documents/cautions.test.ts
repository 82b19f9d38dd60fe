import { describe, expect, it } from 'vitest';
import { wiringNotes } from '../../src/documents/closeout-pack/wiring-note.js';
import { boxCautions, siteCautions } from '../../src/documents/parts/cautions.js';
import { labelsView } from '../../src/documents/labels/view.js';
import { defaultSettings } from '../../src/model/settings.js';
import type { Plan } from '../../src/model/plan.js';
import { embeddedFonts } from '../../src/print/fonts.js';
import { ownerStrings } from '../../src/words/languages.js';
import { dataOf } from '../plan/plan-of.js';
import { setByHand } from './fixtures/set-by-hand.js';

// rules.md section 5: DANGER over 60 V DC or 30 V AC (common practice, no source); a battery bus up to 60 V: WARNING (arc, burns).

const battery = (volts: string): Plan =>
  dataOf(
    '',
    `B battery; battery_voltage=${volts}; battery_chemistry=lfp; protect=yes; cells=${Number(volts) / 3}; place=Hut`,
  );
const gate = dataOf('', 'K control-circuit; control_voltage=24 V dc; place=Gate; outdoors=yes; protect=yes');
const house = dataOf('', 'S service; ac_in=120/240');
const shared = dataOf('', 'I inverter-charger; ac_in=120; ac_out=120');
const atBox = (plan: Plan): readonly string[] =>
  plan.protectors.flatMap((p) => boxCautions(p, plan).map((c) => `${c.word}: ${c.hazard}`));
const atSite = (plan: Plan): readonly string[] => siteCautions(plan, 'en').map((c) => c.word);
const ARC = /^WARNING: A battery drives a very high current/;
const SHOCK = /^DANGER: Hazardous voltage/;
const LOW = /^WARNING: Other circuits/;
const GAS = /^WARNING: A lead-acid or nickel-cadmium battery makes explosive gas/;

describe('the gravest caution of a box', () => {
  it.each([
    ['a battery of 48 V', battery('48'), [ARC]],
    ['a battery of 96 V', battery('96'), [SHOCK]],
    ['a control circuit of 24 V at a gate', gate, [LOW]],
    ['a service', house, [SHOCK]],
    ['a housing of two supplies', shared, [SHOCK, /^WARNING: This housing is fed from two supplies/]],
  ])('%s', (_, plan, expected) => {
    const found = atBox(plan);
    expect(found).toHaveLength(expected.length);
    expected.forEach((pattern, i) => {
      expect(found[i]).toMatch(pattern);
    });
  });

  it('stands first at the site too; one whose boxes are all below the limits has no DANGER', () => {
    expect(atSite(house)[0]).toBe('DANGER');
    expect(atSite(battery('96'))[0]).toBe('DANGER');
    for (const plan of [battery('48'), gate]) {
      expect(atSite(plan)).toContain('WARNING');
      expect(atSite(plan)).not.toContain('DANGER');
    }
    // Where there is no protector nothing says that the voltages are low.
    expect(atSite(dataOf('', 'B battery; battery_voltage=12; battery_chemistry=lfp; place=Hut'))[0]).toBe(
      'DANGER',
    );
  });

  it('is printed in the wiring note', () => {
    const settings = defaultSettings();
    const words = (plan: Plan): readonly string[] =>
      wiringNotes(plan, settings, 'en').map(({ danger }) => `${danger.word}: ${danger.says}`);
    expect(words(battery('48'))).toEqual([expect.stringMatching(/^WARNING: Battery, .*short circuit/)]);
    expect(words(house)).toEqual([expect.stringMatching(/^DANGER: Up to .*kill or severely injure/)]);
    expect(words(gate)).toEqual([expect.stringMatching(/^WARNING: .*circuits beside it may be at a hazard/)]);
  });

  it('the note of a housing of two supplies says that the steps of one leave it live', () => {
    const told = (plan: Plan): readonly boolean[] =>
      wiringNotes(plan, defaultSettings(), 'en').map(({ danger }) =>
        danger.banners.some(({ says }) => says.startsWith('TWO SUPPLIES feed this housing')),
      );
    expect(told(shared)).toEqual([true]);
    expect(told(house)).toEqual([false]);
  });
});

const fonts = (await embeddedFonts()).standAloneKit;

describe('a label', () => {
  const settings = defaultSettings();
  const labels = (plan: Plan, language: string) =>
    labelsView(
      plan,
      { settings, date: '2026-11-30', fonts, measure: setByHand },
      'letter',
      ownerStrings(language),
      '',
    ).sheets.flatMap((s) => s.labels);

  it.each(['en', 'es'])('%s: has the signal word of its box, in the language of the owner', (language) => {
    const strings = ownerStrings(language);
    const { dangerWord, hazards } = strings.label;
    const told = (plan: Plan): unknown => labels(plan, language).map((l) => [l.word, l.style, l.hazard]);
    expect(told(house)).toEqual([[dangerWord, 'danger', hazards.shock.is]]);
    expect(told(shared)).toEqual([[dangerWord, 'danger', hazards['two-supplies'].is]]);
    expect(told(battery('48'))).toEqual([[strings.warningWord, 'warning', hazards.arc.is]]);
    expect(told(gate)).toEqual([[strings.warningWord, 'warning', hazards['low-voltage'].is]]);
  });
});

describe('the gas of a battery', () => {
  const site = (facts: string): Plan =>
    dataOf(
      '',
      `B battery; battery_voltage=24; protect=yes; place=Hut${facts}\nI inverter-charger; connects_to=B`,
    );

  it.each([
    ['lead-acid', '; battery_chemistry=lead-acid', true],
    ['nickel-cadmium', '; battery_chemistry=nicd', true],
    ['a chemistry that nobody states', '', true],
    ['lithium iron phosphate', '; battery_chemistry=lfp', false],
  ])('%s', (_, facts, isTold) => {
    const plan = site(facts);
    const told = siteCautions(plan, 'en').filter(({ hazard }) => GAS.test(`WARNING: ${hazard}`));
    expect(told).toHaveLength(isTold ? 1 : 0);
    for (const one of told)
      expect(one.avoidance).toMatch(/^Ventilate\. No sparks.*eye protection.*no switching device/);
    const boxes = plan.protectors.map((p) => ({
      battery: p.ports.some(({ equipment }) => equipment === 'B'),
      told: boxCautions(p, plan).some(({ hazard }) => GAS.test(`WARNING: ${hazard}`)),
    }));
    expect(boxes.some(({ battery }) => battery)).toBe(true);
    for (const box of boxes) expect(box.told).toBe(isTold && box.battery);
    // The wiring note says it too, with the same tags.
    const noted = wiringNotes(plan, defaultSettings(), 'en')
      .filter(({ danger }) => danger.banners.some(({ says }) => says.startsWith('BATTERY GAS')))
      .flatMap(({ rows }) => rows.map(({ tag }) => tag));
    const expected = plan.protectors.filter((_one, index) => isTold && boxes[index]?.battery);
    expect(noted).toEqual(expected.map(({ tag }) => tag));
  });

  it('isn’t told where there is no battery', () => {
    expect(siteCautions(house, 'en').some(({ hazard }) => GAS.test(`WARNING: ${hazard}`))).toBe(false);
  });
});

describe('light on modules', () => {
  const told = (rows: string): readonly string[] =>
    siteCautions(dataOf('', `S service; ac_in=240; place=House\n${rows}`), 'en')
      .filter(({ hazard }) => hazard.startsWith('Light on'))
      .map(({ avoidance }) => avoidance);

  it('an array has a disconnect; modules with inverters of their own have a breaker, and no array disconnect', () => {
    const modules = 'T ac-module-branch; ac_out=240; connects_to=S; run_length=9 m; place=Roof';
    const array = `X grid-tie-inverter; ac_out=240; connects_to=S; run_length=9 m; place=House
      A array; connects_to=X; run_length=9 m; open_circuit_voltage=300; place=Roof`;
    expect(told(array)).toEqual([expect.stringMatching(/^Open the array disconnect/)]);
    expect(told(modules)).toEqual([
      expect.stringMatching(/^Switch the modules’ AC branch off at its breaker/),
    ]);
    expect(told(`${modules}\n${array}`)).toHaveLength(1);
    expect(told('P panel; ac_in=240; connects_to=S; run_length=2 m; place=House')).toEqual([]);
  });
});
