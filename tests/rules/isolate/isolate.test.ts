import { describe, expect, it } from 'vitest';
import { KINDS, type Kind, type PortClass } from '../../../src/model/words.js';
import { isBatteryKnown } from '../../../src/rules/isolate/battery-known.js';
import { boxSteps } from '../../../src/rules/isolate/box-steps.js';
import { isFeedKnown } from '../../../src/rules/isolate/feed-known.js';
import {
  isolationOrder,
  type IsolatedEquipment,
  type IsolationStep,
} from '../../../src/rules/isolate/order.js';
import { staysLive, type LivePortFacts } from '../../../src/rules/isolate/stays-live.js';
import { say } from '../../../src/words/reasons/say.js';

const equipment = (tag: string, kind: Kind, some: Partial<IsolatedEquipment> = {}): IsolatedEquipment => ({
  tag,
  kind,
  suppliedAt: [],
  aheadOfMain: false,
  ...some,
});
const orderOf = (...kinds: readonly Kind[]): ReturnType<typeof isolationOrder> =>
  isolationOrder(
    kinds.map((kind, i) => equipment(`${kind}-${i}`, kind)),
    5,
  );
const linesOf = (steps: readonly IsolationStep[]): readonly string[] =>
  steps.flatMap(({ number, acts }) =>
    acts.map(({ does, tags }) => `${number} ${does.code} ${tags.join(' ')}`.trim()),
  );

describe('the order of isolation (common practice; proving dead: NFPA 70E 120.5)', () => {
  it('has each kind where it belongs', () => {
    const { steps } = orderOf(...KINDS);
    expect(linesOf(steps).map((line) => line.replaceAll(/-\d+/g, ''))).toEqual([
      '1 isolate/block-generator generator',
      '1 isolate/block-inverter inverter-charger',
      '1 isolate/block-ac-battery ac-battery',
      '1 isolate/control-supply control-circuit',
      '2 isolate/stop-wind wind-turbine',
      '2 isolate/stop-hydro hydro-turbine',
      '2 isolate/keep-diversion diversion-load',
      '3 isolate/drives-off pump-drive',
      '3 isolate/loads-off load dc-load',
      '3 isolate/inverters-off grid-tie-inverter inverter-charger',
      '3 isolate/controllers-off charge-controller',
      '3 isolate/ac-modules-off ac-module-branch',
      '3 isolate/ac-batteries-off ac-battery',
      '4 isolate/open-generator generator',
      '4 isolate/open-utility service',
      '5 isolate/open-array array',
      '6 isolate/open-turbine wind-turbine hydro-turbine',
      '7 isolate/open-battery battery',
      '8 isolate/wait charge-controller grid-tie-inverter inverter-charger pump-drive ac-battery',
      '9 isolate/lock',
      '10 isolate/prove-dead',
    ]);
  });

  it('opens the supply of a control circuit first, also where nothing starts by itself', () => {
    const { steps } = orderOf('load', 'service', 'battery', 'control-circuit');
    expect(linesOf(steps)).toEqual([
      '1 isolate/control-supply control-circuit-3',
      '3 isolate/loads-off load-0',
      '4 isolate/open-utility service-1',
      '7 isolate/open-battery battery-2',
      '9 isolate/lock',
      '10 isolate/prove-dead',
    ]);
  });

  it('has its way back from 7 to 1, behind the locks', () => {
    const { back } = orderOf(...KINDS);
    expect(linesOf(back).map((line) => line.replaceAll(/-\d+/g, ''))).toEqual([
      '9 restore/unlock',
      '7 restore/battery battery',
      '6 restore/turbine wind-turbine hydro-turbine',
      '5 restore/array array',
      '4 restore/utility service',
      '4 restore/generator generator',
      '3 restore/controllers charge-controller',
      '3 restore/inverters grid-tie-inverter inverter-charger',
      '3 restore/ac-modules ac-module-branch',
      '3 restore/ac-batteries ac-battery',
      '3 restore/loads load dc-load',
      '3 restore/drives pump-drive',
      '2 restore/release-wind wind-turbine',
      '2 restore/release-hydro hydro-turbine',
      '1 restore/control-supply control-circuit',
      '1 restore/automatic-starts generator inverter-charger ac-battery',
    ]);
  });

  it('names several of a kind together, in their order', () => {
    expect(linesOf(orderOf('array', 'battery', 'array').steps).slice(0, 2)).toEqual([
      '5 isolate/open-array array-0 array-2',
      '7 isolate/open-battery battery-1',
    ]);
  });

  it('leaves a diversion load on for a turbine alone', () => {
    const lines = (...kinds: readonly Kind[]): string => linesOf(orderOf(...kinds).steps).join();
    expect(lines('diversion-load', 'battery')).not.toContain('keep-diversion');
    expect(lines('diversion-load', 'wind-turbine')).toContain('2 isolate/keep-diversion diversion-load-0');
    expect(lines('diversion-load', 'hydro-turbine')).toContain('2 isolate/keep-diversion diversion-load-0');
  });

  it('has the utility’s part where work is ahead of a main disconnect, the main disconnect open both times', () => {
    const parts = [equipment('S', 'service', { aheadOfMain: true }), equipment('G', 'generator')];
    const { steps, back } = isolationOrder(
      [...parts, equipment('B', 'battery'), equipment('T', 'service')],
      5,
    );
    expect(linesOf(steps)).toEqual([
      '1 isolate/block-generator G',
      '4 isolate/open-generator G',
      '4 isolate/open-utility S T',
      '4 isolate/utility-off S',
      '7 isolate/open-battery B',
      '9 isolate/lock',
      '10 isolate/prove-dead',
    ]);
    expect(linesOf(back)).toEqual([
      '9 restore/unlock',
      '7 restore/battery B',
      '4 restore/utility-on S',
      '4 restore/utility S T',
      '4 restore/generator G',
      '1 restore/automatic-starts G',
    ]);
  });

  it('names the other ends of control circuits, where their supply is', () => {
    const circuits = [
      equipment('A', 'control-circuit', { suppliedAt: ['T'] }),
      equipment('B', 'control-circuit', { suppliedAt: ['T', 'U'] }),
      equipment('C', 'control-circuit'),
      equipment('D', 'control-circuit', { suppliedAt: ['T'] }),
      equipment('G', 'generator', { suppliedAt: ['T'] }),
    ];
    const { steps, back } = isolationOrder(circuits, 5);
    const told = (of: readonly IsolationStep[]): readonly string[] =>
      of
        .filter(({ number }) => number === 1)
        .flatMap(({ acts }) => acts.map(({ does, tags }) => `${say(does)}: ${tags.join(' ')}`));
    expect(told(steps)).toEqual([
      'Block the automatic start of the generator, and lock it: G',
      'Switch the supply of the control circuit off at its other end, T, and lock it: A D',
      'Switch the supply of the control circuit off at its other ends, T and U, and lock it: B',
      'Switch the supply of the control circuit off, and lock it: C',
    ]);
    expect(told(back)).toEqual([
      'Switch the supply of the control circuit on at its other end, T: A D',
      'Switch the supply of the control circuit on at its other ends, T and U: B',
      'Switch the supply of the control circuit on: C',
      'Free the automatic start, last of all: G',
    ]);
  });

  it('keeps the locks of turbines and automatic starts on until their steps come', () => {
    const unlock = (...kinds: readonly Kind[]): string => {
      const [first] = orderOf(...kinds).back;
      return first?.acts.map(({ does }) => say(does)).join() ?? '';
    };
    const off = 'Take locks and tags off once nobody is at the equipment, each by whoever put it on';
    expect(unlock('service', 'load')).toBe(off);
    expect(unlock('service', 'generator')).toBe(`${off}; those of step 1 when that step comes`);
    expect(unlock('wind-turbine', 'generator')).toBe(`${off}; those of steps 2 and 1 when that step comes`);
  });

  it('stops where an array, a battery or a turbine has no disconnect', () => {
    for (const kind of ['array', 'battery', 'wind-turbine', 'hydro-turbine'] as const) {
      const opens = orderOf(kind).steps.find(({ number }) => number >= 5 && number <= 7);
      expect(opens?.acts.map(({ does }) => say(does)).join()).toMatch(
        /; none there: stop and ask the office$/,
      );
    }
  });

  it('waits where something stores a charge, as long as it is told', () => {
    expect(linesOf(orderOf('service').steps)).toEqual([
      '4 isolate/open-utility service-0',
      '9 isolate/lock',
      '10 isolate/prove-dead',
    ]);
    const [, wait] = isolationOrder([equipment('X', 'grid-tie-inverter')], 7).steps;
    expect(wait).toMatchObject({ number: 8, acts: [{ tags: ['X'] }] });
    expect(wait?.acts.map(({ does }) => say(does))).toEqual([
      'Wait as the makers say; where they say nothing, 7 minutes',
    ]);
  });
});

describe('what a box needs of the steps', () => {
  it.each([
    [false, [1, 2, 3, 4, 5, 6, 7, 8, 9, 10], [1, 2, 3, 4, 5, 6, 7, 8, 9, 10]],
    [true, [1, 2, 3, 4, 5, 6, 7, 8, 9, 10], [1, 9, 10]],
    [true, [4, 9, 10], [9, 10]],
    [false, [], []],
  ])('at a control circuit’s own end %s: of %j %j', (isControl, steps, needs) => {
    expect(boxSteps(steps, isControl)).toEqual(needs);
  });
});

describe('what stays live', () => {
  const facts = (some: Partial<LivePortFacts>): LivePortFacts => ({
    port: 'feeder',
    kind: 'panel',
    own: true,
    aheadOfMain: false,
    sun: false,
    wind: false,
    water: false,
    ...some,
  });

  it.each<[Partial<LivePortFacts>, string]>([
    [{ port: 'service', kind: 'service' }, 'live/line-side-of-service live-who/utility false'],
    [
      { port: 'service', kind: 'service', aheadOfMain: true },
      'live/ahead-of-main live-who/utility-first true',
    ],
    [{ port: 'battery', kind: 'battery' }, 'live/battery-terminals live-who/nobody-battery false'],
    [{ port: 'ac-out', kind: 'ac-battery' }, 'live/battery-terminals live-who/nobody-battery false'],
    [{ port: 'output', kind: 'array', sun: true }, 'live/array-conductors live-who/nobody-array true'],
    [{ port: 'output', kind: 'combiner', sun: true }, 'live/array-conductors live-who/nobody-array true'],
    [{ port: 'dc-in', kind: 'charge-controller', sun: true }, 'live/array-side live-who/nobody-array false'],
    [
      { port: 'service', kind: 'service', own: false, aheadOfMain: true },
      'live/line-side-of-service live-who/utility false',
    ],
    [{ port: 'output', kind: 'array', own: false, sun: true }, 'live/array-side live-who/nobody-array false'],
    [{ port: 'output', kind: 'array' }, ''],
    [{ port: 'output', kind: 'wind-turbine' }, 'live/turbine-conductors live-who/locked-rotor true'],
    [
      { port: 'output', kind: 'wind-turbine', own: false },
      'live/turbine-conductors live-who/locked-rotor false',
    ],
    [{ port: 'output', kind: 'hydro-turbine' }, 'live/turbine-conductors live-who/shut-water true'],
    [{ port: 'terminals', kind: 'wind-turbine' }, ''],
    // The far end of a turbine's line: live up to what was opened, whenever it turns.
    [
      { port: 'dc-in', kind: 'charge-controller', wind: true },
      'live/turbine-side live-who/locked-rotor false',
    ],
    [
      { port: 'dc-in', kind: 'grid-tie-inverter', water: true },
      'live/turbine-side live-who/shut-water false',
    ],
    [
      { port: 'dc-in', kind: 'charge-controller', wind: true, water: true },
      'live/turbine-side live-who/locked-rotor false; live/turbine-side live-who/shut-water false',
    ],
    [
      { port: 'output', kind: 'combiner', sun: true, wind: true },
      'live/array-conductors live-who/nobody-array true; live/turbine-side live-who/locked-rotor false',
    ],
    [
      { port: 'output', kind: 'wind-turbine', wind: true },
      'live/turbine-conductors live-who/locked-rotor true',
    ],
    [{ port: 'output', kind: 'generator' }, ''],
    [{ port: 'battery', kind: 'inverter-charger' }, ''],
    [{ aheadOfMain: true }, ''],
  ])('%o: %s', (some, found) => {
    const live = staysLive(facts(some)).map(
      ({ what, who, here }) => `${what.code} ${who.code} ${String(here)}`,
    );
    expect(live.join('; ')).toBe(found);
  });
});

describe('whether what feeds a port is known', () => {
  it.each<[PortClass, Kind, boolean]>([
    ['feeder', 'panel', false],
    ['feeder', 'load', false],
    ['ac-in', 'inverter-charger', false],
    ['ac-in', 'transformer', false],
    ['ac-in-2', 'inverter-charger', false],
    ['ac-out', 'grid-tie-inverter', false],
    ['output', 'ac-module-branch', false],
    ['ac-out', 'inverter-charger', true],
    ['ac-out', 'ac-battery', true],
    ['output', 'generator', true],
    ['output', 'array', true],
    ['service', 'service', true],
    ['dc-in', 'grid-tie-inverter', true],
    ['battery', 'battery', true],
    ['terminals', 'ac-module-branch', true],
  ])('%s of %s that nothing feeds: %s', (port, kind, known) => {
    for (const endsControl of [false, true]) {
      expect(isFeedKnown({ port, kind, isFed: false, endsControl, unused: '' })).toBe(known);
      expect(isFeedKnown({ port, kind, isFed: false, endsControl, unused: 'nothing-named' })).toBe(known);
      expect(isFeedKnown({ port, kind, isFed: true, endsControl, unused: '' })).toBe(true);
      expect(isFeedKnown({ port, kind, isFed: false, endsControl, unused: 'stated' })).toBe(true);
    }
  });

  it('of a box of no known kind it isn’t where a control circuit ends', () => {
    const box = { port: 'terminals', kind: 'other', unused: '' } as const;
    expect(isFeedKnown({ ...box, isFed: false, endsControl: true })).toBe(false);
    expect(isFeedKnown({ ...box, isFed: false, endsControl: false })).toBe(true);
    expect(isFeedKnown({ ...box, isFed: true, endsControl: true })).toBe(true);
  });
});

describe('whether the battery of a bus is known', () => {
  it.each<[Kind, readonly number[], boolean]>([
    ['charge-controller', [], false],
    ['charge-controller', [1], true],
    ['charge-controller', [0], false],
    ['inverter-charger', [], true],
    ['inverter-charger', [2], true],
    ['dc-load', [0], false],
    ['dc-panel', [1, 0], false],
    ['diversion-load', [0], true],
    ['panel', [], true],
  ])('%s on buses of %j batteries: %s', (kind, batteries, known) => {
    expect(isBatteryKnown({ kind, batteries })).toBe(known);
  });
});
