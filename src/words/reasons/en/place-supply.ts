import type { PlaceSupplyReasons } from '../../../model/reasons/place-supply.js';
import { list, plain } from '../../figures.js';
import { runLength } from '../../lengths.js';
import type { Sayings } from '../sayings.js';

/** Why rules place a protector where a site is supplied and along its runs, or don't, in English. */
export const PLACE_SUPPLY: Sayings<PlaceSupplyReasons> = {
  'battery/may-leave-room': ({ to }) =>
    `whether its cable to ${to} leaves the room isn’t known: a place isn’t stated`,
  'battery/leaves-room': ({ to }) => `its cable leaves the room: ${to} is in another place`,
  'battery/longer-than-limit': ({ to, length: of, limit, basis }) =>
    `its cable to ${to} is ${runLength(of.value, basis)}, longer than ${runLength(limit.value, basis)}`,
  'battery/no-cable': () => 'no cable of it is on the list',
  'battery/stays-in-room': () => 'its cable stays in the room, by the places on the list',
  'battery/nothing-hangs': () => 'nothing on the list hangs on it; what feeds it is the battery’s',
  'feeder/no-unit': ({ outside }) =>
    `its building holds no dwelling or sleeping unit, so ${outside ? '225.42' : '215.18'} doesn’t ask`,
  'feeder/feed-unknown': () => 'the list doesn’t say what feeds it',
  'feeder/supplies-unit': ({ from, unit, outside }) =>
    `a feeder from ${list(from)} supplies this panel of a ${unit} unit (${outside ? '225.42, outside feeder' : '215.18'})`,
  'generator/beside': () => 'it is neither outdoors nor in another building than what it feeds',
  'generator/far': ({ outdoors, length: of, from, basis }) =>
    `it stands ${outdoors ? 'outdoors' : 'in another building'}, ${runLength(of.value, basis)} from ${from}`,
  'generator/no-run': () => 'no run of it is on the list',
  'generator/length-unknown': () => 'the length of its run isn’t stated',
  'generator/not-longer': ({ limit, basis }) => `its run isn’t longer than ${runLength(limit.value, basis)}`,
  'long-run/module-branch': () => 'a long run of a trunk of AC modules asks at its other end only',
  'long-run/transfer-switch': () =>
    'a transfer switch has no protector of its own: what it connects is protected at its ends',
  'long-run/disconnect': () =>
    'a disconnect has no protector of its own: what it connects is protected at its ends',
  'long-run/length-unknown': () => 'the length of a run that ends here isn’t stated',
  'long-run/no-run': () => 'no run on the list ends here',
  'long-run/indoors': () => 'no run that ends here is outdoors or between buildings',
  'long-run/not-longer': ({ limit, basis }) =>
    `no run outdoors or between buildings that ends here is longer than ${runLength(limit.value, basis)}`,
  'long-run/longer-than-limit': ({ upstream, other, length: of, limit, outdoors, basis }) =>
    `the run ${upstream ? 'to' : 'from'} ${other} is ${runLength(of.value, basis)}, longer than ${runLength(limit.value, basis)}, and ${outdoors ? 'outdoors' : 'between buildings'}`,
  'outbuilding/no-feeder': () => 'no feeder from another building enters here',
  'outbuilding/length-unknown': ({ from }) =>
    `the length of the feeder from ${from} in another building isn’t stated`,
  'outbuilding/not-longer': ({ from, limit, basis }) =>
    `the feeder from ${from} in another building isn’t longer than ${runLength(limit.value, basis)}`,
  'outbuilding/enters': ({ from }) => `the feeder from ${from} in another building enters here`,
  'service/here': () => 'a utility service is here',
  'service/not-of-clause': ({ occupancy, units }) =>
    units.length > 0
      ? `230.67 is taken not to ask here, as the service’s own building holds no dwelling or sleeping unit; yet it feeds such a unit through ${list(units)}: the authority having jurisdiction says whether the clause means this service`
      : `230.67 doesn’t ask at the service of ${occupancy === 'sleeping' ? 'a building with sleeping rooms in this cycle' : 'a building that holds no dwelling or sleeping unit'}: one there is common practice`,
  'service/of-unit': ({ unit }) =>
    `a utility service of a ${unit === 'sleeping' ? 'building with sleeping rooms' : 'dwelling unit'} is here`,
  'service/no-single-dwelling': () => 'a service of a building that isn’t a single dwelling is here',
  'service/risk-unknown': () => 'a utility service is here; the calculated risk level isn’t known',
  'service/risk-compared': ({ level, limit, below }) =>
    `the calculated risk level is ${plain(Math.round(level.value))}, ${below ? 'below' : 'not below'} ${plain(limit.value)}`,
  'service-place/shared': ({ service }) =>
    `it stands at the service ${service}, whose protector is its protector`,
  'service-place/reason': ({ reason, panel }, say) =>
    `${say(reason)} (at ${panel}, which stands at this service)`,
};
