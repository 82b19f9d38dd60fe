import type { PlaceReasons } from '../../../model/reasons/place.js';
import { list, quantity } from '../../figures.js';
import { runLength } from '../../lengths.js';
import type { Sayings } from '../sayings.js';

/** Why rules place a protector at a kind of equipment, or don't, in English. */
export const PLACE: Sayings<PlaceReasons> = {
  'asked/no': () => 'the list says protect "no"',
  'asked/yes': () => 'the list says protect "yes"',
  'asked/at-main-port': () => 'the list asks for one at the main port, which is another',
  'asked/not-asked': () => 'the list doesn’t ask for one',
  'asked/no-by-exception': () =>
    'the list says protect "no", and each next panel has a protector (230.67(B) exception)',
  'asked/kind-other': () => 'no rule looks at equipment of kind other',
  'run/in-doubt': () => 'a connection of it can’t be used as it stands on the list',
  'control/above-low-voltage': ({ voltage }) =>
    `${quantity(voltage)} is more than a low-voltage control circuit`,
  'control/end-unknown': () =>
    'it is neither outdoors nor between buildings; where it leads isn’t on the list',
  'control/length-unknown': () =>
    'it is neither outdoors nor between buildings; the length of its run isn’t stated',
  'control/nothing-asks': () => 'it is neither outdoors nor between buildings nor on a long run',
  'control/outdoors': () => 'a control circuit out of doors',
  'control/between-buildings': ({ to }) => `a control circuit between buildings, to ${to}`,
  'control/place-unknown': ({ to }) =>
    `whether ${to} is in the same building isn’t known: a place isn’t stated`,
  'control/long-run': ({ length: of, basis }) => `a control circuit of ${runLength(of.value, basis)}`,
  'control-end/refused': ({ circuit, reason }, say) => `${circuit}: ${say(reason)}`,
  'control-end/placed': ({ circuit, reason }, say) =>
    `the other end of the control circuit ${circuit}: ${say(reason)}`,
  'control-end/waived': () => 'the list waives this end of the control circuit',
  'dc-input/spare': () => 'no source on the list uses this input: it is spare',
  'dc-input/fed': ({ by }) => `${list(by)} feeds this input`,
  'dc-input/assumed-fed': () => 'no source on the list names this converter, so this input counts as fed',
  'dc-input/service-required': ({ fed }, say) =>
    `${say(fed)}, and protection is required at the service of this site`,
  'dc-input/length-not-compared': ({ fed }, say) =>
    `${say(fed)}; its length isn’t compared with the critical length`,
  'dc-input/length-compared': ({ fed, length: of, critical, shorter, basis }, say) =>
    `${say(fed)}; the runs of its arrays, ${runLength(of.value, basis)}, against the critical length of ${runLength(critical.value, basis)}: ${shorter ? 'shorter' : 'not shorter'}`,
  'exempt/worth-protecting': () => 'what is here is worth protecting',
  'exempt/service': () => 'a service has no far end',
  'exempt/nothing-worth-protecting': () => 'the list says that nothing here is worth protecting',
  'exempt/diversion-load': () => 'a diversion load is one that nobody need protect',
  'drive/switched-pulses': ({ drive }) =>
    `the output of the pump drive ${drive} carries switched pulses, which a protector for a sine wave doesn’t bear`,
  'grid-tie/module-branch': () => 'a trunk of AC modules always has one at its output',
  'grid-tie/target-unknown': () => 'the list doesn’t say where the output goes',
  'grid-tie/target-bare': ({ target }) => `${target}, where the output goes, has no protector`,
  'grid-tie/run-unknown': ({ target }) => `the run to ${target} isn’t stated`,
  'grid-tie/place-unknown': ({ target }) =>
    `whether ${target} is in the same building isn’t known: a place isn’t stated`,
  'grid-tie/other-building': ({ target }) => `${target} isn’t in the same building`,
  'grid-tie/reach-unknown': ({ target }) => `the reach of the protector at ${target} isn’t known`,
  'grid-tie/no-reach': ({ target, basis }) =>
    `the protector at ${target} covers nothing along the cable: its reach is ${runLength(0, basis)}`,
  'grid-tie/within-reach': ({ target, run, reach, basis }) =>
    `the protector at ${target} is ${runLength(run.value, basis)} away in the same building${reach === null ? ', and its reach isn’t limited' : `, within its reach of ${runLength(reach.value, basis)}`}`,
  'grid-tie/beyond-reach': ({ target, run, reach, basis }) =>
    `the protector at ${target} is ${runLength(run.value, basis)} away, beyond its reach of ${runLength(reach.value, basis)}`,
  'inverter-ac/in-use': ({ port, kind }) =>
    `the ${port} port of an ${kind === 'ac-battery' ? 'AC battery' : 'inverter-charger'} is in use`,
  'port/unused': () => 'the list says that this port is unused',
  'port/nothing-named': () => 'the list names no system for this port, and nothing on it connects there',
  'signal/outside-plan': () => 'a signal line takes no power protector; its protection is outside this plan',
  'wind/tower-base': () => 'the base of a wind turbine’s tower',
  'wind/enters': ({ turbine }) => `the run of the wind turbine ${turbine} enters here`,
  'wind/enters-at-combiner': () => 'the run of the wind turbine enters at the combiner before it',
  'wind/no-run': () => 'no run of a wind turbine enters here',
  'wind-premises/here': () =>
    'the site has a wind turbine, and this is the place between its system and the loads',
  'wind-premises/no-turbine': () => 'no wind turbine is on the list',
  'wind-premises/elsewhere': () => 'it isn’t the place that 694.7(D) falls to on this site',
};
