import { describe, expect, it } from 'vitest';
import { noteDanger } from '../../src/documents/closeout-pack/note-danger.js';
import { noteReadings, watchTexts } from '../../src/documents/closeout-pack/note-readings.js';
import { measuredOn } from '../../src/documents/closeout-pack/note-steps.js';
import { crewNoteWords } from '../../src/words/crew-notes.js';
import { dataOf, one, planOf } from './plan-of.js';

// In which state a place is measured (rules.md section 3), from the list to the plan: by tag, and never a turbine without its load.
const ARRAY = 'A array; voc_stc=40; modules_in_series=3; protect=yes; connects_to=X';
const WIND = 'W wind-turbine; output=three-phase; open_circuit_voltage=120; place=Tower';
const CONTROLLER = 'X charge-controller; max_dc_voltage=250; connects_to=B';
const BATTERY =
  'B battery; battery_voltage=48; battery_chemistry=lfp; connects_to=I; protect=yes; place=Shed';
const INVERTER = 'I inverter-charger; ac_out=120/240; place=House';
const FACTS = 'occupancy=other; lowest_temp=-10 C';

const state = (where: string, ...rows: readonly string[]): unknown =>
  one(planOf(FACTS, rows.join('\n')), where).wiring.measuring.state;

describe('the state of the sources', () => {
  it('at an array its own controller is off, and so is the inverter', () => {
    const rows = [ARRAY, CONTROLLER, BATTERY, INVERTER];
    expect(state('A:output', ...rows)).toBe('A in the sun and connected; X and I off');
    expect(state('X:dc-in-1', ...rows)).toBe('A in the sun and connected; X and I off');
    expect(state('B:battery', ...rows)).toBe('B connected; I and X off');
    expect(state('I:ac-out', ...rows)).toBe('I on; X off');
  });

  it('at a turbine what loads it stays on, with its battery', () => {
    const rows = [`${WIND}; connects_to=X`, CONTROLLER, BATTERY, INVERTER];
    expect(state('W:output', ...rows)).toBe('W turning under load: X and B on; I off');
    expect(state('X:dc-in-1', ...rows)).toBe('W turning under load: X and B on; I off');
    expect(state('B:battery', ...rows)).toBe('B connected; X left on, since it loads a turbine; I off');
    expect(state('I:ac-out', ...rows)).toBe(
      'I on; X left on, since it loads a turbine, and so B, which it needs',
    );
  });

  it('a turbine on an inverter that runs with the utility needs that too; an array on it: the turbine is stopped first', () => {
    const rows = [
      'S service; ac_in=240; place=House',
      'X grid-tie-inverter; ac_out=240; dc_inputs=2; max_dc_voltage=600; connects_to=S; run_length=5 m; place=House',
      'A array; voc_stc=40; modules_in_series=8; protect=yes; connects_to=X/1; place=House',
      `${WIND}; connects_to=X/2`,
    ];
    expect(state('W:output', ...rows)).toBe('W turning under load: X and S on');
    expect(state('A:output', ...rows)).toBe(
      'first stop W (section 1), since what loads it goes off; A in the sun and connected; X off',
    );
  });

  it('a turbine elsewhere keeps its inverter on, and the supply that this keeps step with', () => {
    const site = (supply: string, of: string): readonly string[] => [
      supply,
      `P panel; ac_in=240; connects_to=${of}; run_length=5 m; place=House`,
      'X grid-tie-inverter; ac_out=240; dc_inputs=1; max_dc_voltage=600; connects_to=P; run_length=5 m; place=House',
      'Y grid-tie-inverter; ac_out=240; dc_inputs=1; max_dc_voltage=600; connects_to=P; run_length=5 m; place=House',
      'A array; voc_stc=40; modules_in_series=8; protect=yes; connects_to=X; place=House',
      `${WIND}; connects_to=Y`,
    ];
    expect(state('A:output', ...site('S service; ac_in=240; place=House', 'S'))).toBe(
      'A in the sun and connected; Y left on, since it loads a turbine, and so S, which it needs; X off',
    );
    const alone = `I inverter-charger; ac_out=240; place=House
      B battery; battery_voltage=48; battery_chemistry=lfp; connects_to=I; protect=yes; place=Shed`;
    const island = site(alone, 'I');
    expect(state('A:output', ...island)).toBe(
      'A in the sun and connected; Y left on, since it loads a turbine, and so I and B, which it needs; X off',
    );
    expect(state('B:battery', ...island)).toBe(
      'B connected; Y left on, since it loads a turbine, and so I, which it needs; X off',
    );
    expect(state('W:output', ...island)).toBe('W turning under load: Y, I and B on; X off');
  });

  it('an inverter-charger that passes the utility through is measured on both', () => {
    const rows = `S service; ac_in=120/240; place=House
      I inverter-charger; ac_in=120/240; ac_out=120/240; connects_to=S; run_length=5 m; place=House
      P panel; ac_in=120; connects_to=I; run_length=5 m; protect=yes; place=House`;
    expect(one(planOf('', rows), 'P:feeder').wiring.measuring.state).toBe('I and S on, as each reading says');
  });

  it('names no converter where there are more than eight', () => {
    const many = (count: number): unknown => {
      const rows = Array.from(
        { length: count },
        (_, i) => `I${i + 1} grid-tie-inverter; ac_out=240; connects_to=S; run_length=5 m; place=House`,
      );
      return state('S:service', 'S service; ac_in=240; place=House', ...rows);
    };
    expect(many(8)).toBe('S on; I1, I2, I3, I4, I5, I6, I7 and I8 off');
    expect(many(9)).toBe('S on; every other converter off');
  });
});

describe('a turbine whose voltage isn’t known', () => {
  const rows = (facts: string): string =>
    [`W wind-turbine; output=${facts}; connects_to=X; place=Tower`, CONTROLLER, BATTERY, INVERTER].join('\n');
  const words = crewNoteWords('en');
  /** What the wiring note of a place says of measuring there. */
  const view = (facts: string, where: string) => {
    const [equipment = '', port = ''] = where.split(':');
    const plan = dataOf(FACTS, rows(facts));
    const found = plan.protectors.find((p) =>
      p.ports.some((q) => q.equipment === equipment && q.port === port),
    );
    if (!found) throw new Error(`no protector at ${where}`);
    return {
      doNotOpen: noteDanger(plan, [found], words)
        .banners.map(({ says }) => says)
        .filter((says) => says.startsWith('DO NOT OPEN')),
      readings: noteReadings([[found]], words),
      watch: watchTexts([[found]], words),
      conditions: measuredOn([[found]], words),
    };
  };
  const CLOSED = 'DO NOT OPEN OR MEASURE HERE until the maker’s voltage of W is known.';

  it.each(['three-phase', 'dc'])(
    '%s: nothing is opened or measured, no band is printed and no meter',
    (output) => {
      for (const where of ['W:output', 'X:dc-in-1'])
        expect(view(output, where)).toEqual({ doNotOpen: [CLOSED], readings: [], watch: [], conditions: [] });
      expect(view(output, 'B:battery')).toMatchObject({ doNotOpen: [] });
    },
  );

  it('is measured once it is known', () => {
    const known = view('three-phase; open_circuit_voltage=120', 'W:output');
    expect(known).toMatchObject({ doNotOpen: [] });
    expect(known.readings).toHaveLength(2);
    expect(known.conditions.join(' ')).toMatch(/Meter CAT III/);
  });
});
