import type { IsolateReasons } from '../../../model/reasons/isolate.js';
import { list } from '../../figures.js';
import type { Sayings } from '../sayings.js';

const ELECTRODES = {
  circuit: 'the bond to the electrode of what the circuit belongs to, where it has one',
  tower: 'the bond to the tower’s own electrode',
  frame: 'the bond to the array frame’s own electrode, where it has one',
  casing: 'the bond to the casing’s own electrode, where it has one',
};

const GROUNDING_CONDUCTOR = {
  nec: 'the equipment grounding conductor that comes with the circuit’s cable',
  iec: 'the protective conductor that comes with the circuit’s cable',
};

/** Lists seldom have a disconnect of their own for an array, a turbine or a battery. */
const NONE_THERE = 'none there: stop and ask the office';

/** Where the supply of a control circuit is. */
function atEnd(tags: readonly string[]): string {
  return `at its other ${tags.length === 1 ? 'end' : 'ends'}, ${list(tags)}`;
}

/** How a site is made dead and live again, in English. */
export const ISOLATE: Sayings<IsolateReasons> = {
  'isolate/block-generator': () => 'Block the automatic start of the generator, and lock it',
  'isolate/block-inverter': () => 'Block automatic start and transfer of the inverter-charger, and lock it',
  'isolate/block-ac-battery': () => 'Block the automatic start of the AC battery, and lock it',
  'isolate/control-supply': () => 'Switch the supply of the control circuit off, and lock it',
  'isolate/control-supply-at': ({ at }) =>
    `Switch the supply of the control circuit off ${atEnd(at)}, and lock it`,
  'isolate/stop-wind': () =>
    'Stop the wind turbine while its load is still on, by its brake or its short as the maker says; leave the short on, and lock it',
  'isolate/stop-hydro': () =>
    'Stop the hydro turbine while its load is still on, by shutting its water; lock the valve',
  'isolate/keep-diversion': () => 'Leave the diversion load on until every turbine stands still',
  'isolate/loads-off': () => 'Switch the load off',
  'isolate/inverters-off': () => 'Switch the inverter off',
  'isolate/controllers-off': () =>
    'Switch the charge controller off as its maker says; no switch there: write that down, and go on',
  'isolate/ac-modules-off': () => 'Switch the modules’ AC branch off at its breaker',
  'isolate/drives-off': () => 'Stop the pump drive before any switch behind it is opened, and switch it off',
  'isolate/ac-batteries-off': () => 'Switch the AC battery off',
  'isolate/open-generator': () => 'Stop the generator, and open its breaker',
  'isolate/open-utility': () => 'Open the main disconnect of the utility service',
  'isolate/utility-off': () =>
    'For work ahead of its main disconnect: have the utility make the service dead, and prove it; until then do not connect there',
  'isolate/open-array': () =>
    `Open the load-break disconnect of the array; never a fuse holder or a plug under load; ${NONE_THERE}`,
  'isolate/open-turbine': () => `Open the turbine’s disconnect, on the load side of its short; ${NONE_THERE}`,
  'isolate/open-battery': () => `Open the battery’s disconnect; ${NONE_THERE}`,
  'isolate/wait': ({ minutes }) =>
    `Wait as the makers say; where they say nothing, ${minutes} ${minutes === 1 ? 'minute' : 'minutes'}`,
  'isolate/lock': () => 'Lock and tag every device that was opened, and write it down',
  'isolate/prove-dead': () =>
    'Prove dead: the tester on a known live source, then each conductor to ground and to each other, then the tester on the live source again',
  'restore/unlock': ({ stay }) =>
    `Take locks and tags off once nobody is at the equipment, each by whoever put it on${stay.length === 0 ? '' : `; those of ${stay.length === 1 ? 'step' : 'steps'} ${list(stay.map(String))} when that step comes`}`,
  'restore/battery': () => 'Close the battery’s disconnect',
  'restore/turbine': () => 'Close the turbine’s disconnect; its short stays on',
  'restore/array': () => 'Close the disconnect of the array',
  'restore/utility': () => 'Close the main disconnect of the utility service',
  'restore/utility-on': () =>
    'After work ahead of its main disconnect: have the utility put the service on again, the main disconnect still open',
  'restore/generator': () => 'Close the generator’s breaker',
  'restore/loads': () => 'Switch the load on',
  'restore/inverters': () => 'Switch the inverter on',
  'restore/controllers': () => 'Switch the charge controller on as its maker says',
  'restore/ac-modules': () => 'Close the breaker of the modules’ AC branch',
  'restore/drives': () => 'Switch the pump drive on, once every switch behind it is closed',
  'restore/ac-batteries': () => 'Switch the AC battery on',
  'restore/release-wind': () =>
    'Let the wind turbine go, once all that loads it is on, its diversion load too: take its short or its brake off',
  'restore/release-hydro': () =>
    'Let the water onto the hydro turbine, once all that loads it is on, its diversion load too',
  'restore/automatic-starts': () => 'Free the automatic start, last of all',
  'restore/control-supply': () => 'Switch the supply of the control circuit on',
  'restore/control-supply-at': ({ at }) => `Switch the supply of the control circuit on ${atEnd(at)}`,
  'live/ahead-of-main': () =>
    'This place is ahead of the main disconnect: opening that makes nothing dead here',
  'live/line-side-of-service': () =>
    'The line side of the service, and all that is ahead of its main disconnect',
  'live/battery-terminals': () => 'The battery’s terminals, up to its first device',
  'live/array-side': () => 'In daylight, all between the modules and the opened disconnect',
  'live/array-conductors': () => 'In daylight, the conductors here themselves, up to the opened disconnect',
  'live/turbine-conductors': () =>
    'The turbine’s conductors here, whenever it turns, whatever disconnect is open',
  'live/turbine-side': () => 'Whenever the turbine turns, all between it and its opened disconnect',
  'live-who/utility-first': () =>
    'the utility makes the service dead first and the crew proves it; until then do not connect',
  'live-who/utility': () => 'only the utility can make it dead',
  'live-who/nobody-battery': () => 'nobody can make it dead: cover it, use insulated tools',
  'live-who/nobody-array': () => 'no switch makes it dead: cover the modules, or work in the dark',
  'live-who/locked-rotor': () => 'only its locked short or brake holds it',
  'live-who/shut-water': () => 'only its shut and locked water holds it',
  'ground-terminal/fit': () => 'Where this enclosure has no ground bar, fit a ground terminal in it',
  'ground-terminal/lead': () => 'the protector’s short ground lead, whose length counts to this terminal',
  'ground-terminal/electrode': ({ of }) => ELECTRODES[of],
  'ground-terminal/conductor': ({ practice }) => GROUNDING_CONDUCTOR[practice],
  'ground-terminal/never': ({ practice }) =>
    `Never an electrode alone, without ${GROUNDING_CONDUCTOR[practice]}`,
  'ground-terminal/ask': ({ practice }) =>
    `Look whether the cable brings ${practice === 'nec' ? 'an equipment grounding conductor' : 'a protective conductor'}; where it brings none, stop and ask the office`,
};
