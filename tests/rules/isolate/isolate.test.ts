import { describe, expect, it } from 'vitest';
import { KINDS, type Kind, type PortClass } from '../../../src/model/words.js';
import { isBatteryKnown } from '../../../src/rules/isolate/battery-known.js';
import { boxSteps } from '../../../src/rules/isolate/box-steps.js';
import { isFeedKnown } from '../../../src/rules/isolate/feed-known.js';
import { isolationOrder, type IsolationStep } from '../../../src/rules/isolate/order.js';
import { staysLive, type LivePortFacts } from '../../../src/rules/isolate/stays-live.js';
import { say } from '../../../src/words/reasons/say.js';

const orderOf = (...kinds: readonly Kind[]): ReturnType<typeof isolationOrder> =>
  isolationOrder(
    kinds.map((kind, i) => ({ tag: `${kind}-${i}`, kind })),
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
      '3 isolate/loads-off load dc-load',
      '3 isolate/inverters-off grid-tie-inverter inverter-charger',
      '3 isolate/ac-modules-off ac-module-branch',
      '3 isolate/drives-off pump-drive',
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

  it('has its way back from 7 to 1', () => {
    const { back } = orderOf(...KINDS);
    expect(linesOf(back).map((line) => line.replaceAll(/-\d+/g, ''))).toEqual([
      '7 restore/battery battery',
      '6 restore/turbine wind-turbine hydro-turbine',
      '5 restore/array array',
      '4 restore/utility service',
      '4 restore/generator generator',
      '3 restore/inverters grid-tie-inverter inverter-charger',
      '3 restore/ac-modules ac-module-branch',
      '3 restore/ac-batteries ac-battery',
      '3 restore/drives pump-drive',
      '3 restore/loads load dc-load',
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

  it('waits where something stores a charge, as long as it is told', () => {
    expect(linesOf(orderOf('service').steps)).toEqual([
      '4 isolate/open-utility service-0',
      '9 isolate/lock',
      '10 isolate/prove-dead',
    ]);
    const [, wait] = isolationOrder([{ tag: 'X', kind: 'grid-tie-inverter' }], 7).steps;
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
    aheadOfMain: false,
    sun: false,
    ...some,
  });

  it.each<[Partial<LivePortFacts>, string]>([
    [{ port: 'service', kind: 'service' }, 'live/line-side-of-service live-who/utility false'],
    [{ port: 'service', kind: 'service', aheadOfMain: true }, 'live/ahead-of-main live-who/utility true'],
    [{ port: 'battery', kind: 'battery' }, 'live/battery-terminals live-who/nobody-battery false'],
    [{ port: 'ac-out', kind: 'ac-battery' }, 'live/battery-terminals live-who/nobody-battery false'],
    [{ port: 'output', kind: 'array', sun: true }, 'live/array-conductors live-who/nobody-array true'],
    [{ port: 'output', kind: 'combiner', sun: true }, 'live/array-conductors live-who/nobody-array true'],
    [{ port: 'dc-in', kind: 'charge-controller', sun: true }, 'live/array-side live-who/nobody-array false'],
    [{ port: 'output', kind: 'wind-turbine' }, ''],
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
