import type { WireReasons } from '../../../model/reasons/wire.js';
import { quantity } from '../../figures.js';
import type { Sayings } from '../sayings.js';

const RECORDED = 'recorded at commissioning; a change from the record: call';

/** How conductors, leads and lights come about, in English. */
export const WIRE: Sayings<WireReasons> = {
  'conductors/both-poles': () =>
    'both poles, since a grounded pole floats once its ground-fault device or its bond opens',
  'conductors/control-wires': () => 'both wires of an AC control circuit',
  'conductors/lines': () => 'every ungrounded conductor, and a grounded phase like the others',
  'conductors/lines-and-neutral': () => 'every line, and N',
  'neutral/not-in-circuit': () => 'this circuit has no neutral',
  'neutral/ungrounded-system': () => 'the system is ungrounded, so N floats like the lines',
  'neutral/system-tt': () => 'in a TT system lines go to N and N goes to ground',
  'neutral/system-it': () => 'in an IT system N floats',
  'neutral/linked-at-service': () => 'N is linked to ground at this service',
  'neutral/away-from-link': () => 'in a TN system N is protected away from its link to ground',
  'neutral/bonded-here': () => 'N is bonded to ground here',
  'neutral/spare-channel': () =>
    'N isn’t bonded to ground here: a spare channel takes it, none is asked for it',
  'names/positive-ground': () => 'the positive pole is grounded: poles go by their voltage and their use',
  'names/iec': () => 'names and colours of IEC 60445',
  'names/nec': () => 'no colour of its own beside those of the settings',
  'names/nec-480': () => 'a system of 480 or 600 V between lines has colours of its own',
  'names/high-leg': () => 'the high leg has a colour and a name of its own',
  'names/no-high-leg': () => 'no line of this circuit is a high leg',
  'names/grounded-phase': () => 'the grounded phase is white or gray',
  'names/grounded-pole': () => 'the grounded pole of a battery’s bus is white or gray',
  'spare-channel/direct-current': () => 'DC never doubles',
  'spare-channel/three-plus-one': () => 'in a 3+1 part each channel has its own conductor',
  'spare-channel/takes-neutral': () => 'N isn’t bonded to ground here, so a spare channel takes it',
  'spare-channel/doubles-line': () => 'a spare channel doubles a line',
  'ground-lead/bonded-bar': () => 'the bonded bar of the service equipment',
  'ground-lead/electrode-bar': () =>
    'the bar of the service equipment where the grounding electrode conductor lands',
  'ground-lead/equipment-ground-bar': () =>
    'the equipment-ground bar of this enclosure, not its neutral bar and not a rod of its own',
  'ground-lead/equipment-ground-terminal': () =>
    'the equipment-ground bar or terminal of this enclosure, not a rod of its own that isn’t bonded',
  'ground-lead/main-earthing-terminal': () =>
    'the main earthing terminal or the protective earth bar of the service equipment, not its neutral bar',
  'ground-lead/protective-earth-bar': () =>
    'the protective earth bar of this enclosure, not its neutral bar and not an electrode of its own',
  'ground-lead/protective-earth-terminal': () =>
    'the protective earth bar or terminal of this enclosure, not an electrode of its own that isn’t bonded',
  'leads/short': () => 'Leads short, straight and tied together; no coils, no needless bends.',
  'leads/insulation-test': () =>
    'Disconnect the protector before an insulation test, and connect it again after.',
  'smallest-lead/metals': ({ copper, aluminium }) =>
    `${copper.gauge} ${copper.metal} or ${aluminium.gauge} ${aluminium.metal}`,
  'smallest-lead/earth-and-live': ({ earth, live }) =>
    `earth lead ${earth.gauge}, live leads ${live.gauge} (values from memory)`,
  'smallest-lead/by-class': ({ earth, live, earthOfT1, liveOfT1 }) =>
    `earth lead ${earth.gauge}, live leads ${live.gauge}; of a class T1 part ${earthOfT1.gauge} and ${liveOfT1.gauge} (values from memory)`,
  'light/sun': () => 'in the sun the modules give it its voltage to ground',
  'light/sun-inverter-on': () =>
    'in the sun, with the inverter on, the rapid-shutdown box lets the modules’ voltage through; with the inverter off dark is no fault',
  'light/night': () => 'modules give no voltage at night: look in daylight',
  'light/turbine': () => 'the turbine gives it its voltage to ground',
  'light/turbine-still': () => 'a turbine that stands still gives no voltage: not a fault',
  'light/battery': () => 'the battery gives it its voltage to ground, as long as its disconnect is closed',
  'light/control-supply': () => 'the control supply gives it its voltage to ground',
  'light/control-supply-off': () => 'the control supply is off: not a fault',
  'light/utility': () => 'the utility gives it its voltage to ground',
  'light/own-source': () => 'the inverter or generator gives it its voltage to ground',
  'light/nothing-feeds': () => 'nothing feeds it: not a fault',
  'light/floating': ({ neither }) => `neither ${neither} is tied to ground: ${RECORDED}`,
  'light/grounding-not-known': () => `its grounding isn’t known: ${RECORDED}`,
  'light/grounded': ({ conductor }) =>
    `${GROUNDED[conductor]} has no voltage to ground: normal, and this light can’t show whether the channel is used up: judge by its partner in the housing, by the part’s own test, or replace by age`,
  'light/ground-fault-device-open': () =>
    'the pole floats once the ground-fault device has opened: if this light is ever lit, call and touch nothing',
  'light/ungrounded-system': () =>
    'the system isn’t solidly tied to ground; one dark and the others brighter: a ground fault may be on the line, call',
  'light/neutral-held': () =>
    'an impedance holds N near ground in a sound system; if it lights, a ground fault may be on a line: call',
  'light/neutral-free': () =>
    'nothing ties N to ground; recorded at commissioning; if it gets brighter, a ground fault may be on a line: call',
  'light/flickers': ({ frequency, least }) => {
    const upTo = frequency === null ? '' : `, up to ${quantity(frequency)}`;
    const slow =
      least === null
        ? ''
        : `, or dark where the load, or too little speed, holds it below the ${quantity(least)} that it needs: recorded at commissioning`;
    return `it flickers at the frequency of its generator${upTo}: normal${slow}`;
  },
  'light/output-not-stated': () => 'whether the turbine gives alternating or direct current isn’t stated',
  'light/no-indicator': () => 'this part has no indicator: nothing shows whether the channel is used up',
  'light/flag': () =>
    'a flag, not a light: it needs no voltage, and a new part shows its good flag at commissioning',
  'light/below-its-voltage': ({ needs, has }) =>
    `the light of this part needs ${quantity(needs)}, and this conductor has about ${quantity(has)}: dark because of the part`,
  'light-outside/array-pole': () => 'no ungrounded pole of a grounded DC source',
  'light-outside/battery-pole': () => 'no ungrounded pole of a grounded battery',
  'light-outside/control-circuit': () => 'no ungrounded conductor of a control circuit',
  'light-outside/floating-pair': () => 'no floating DC pair',
  'light-outside/grounded-conductor': () => 'this conductor isn’t grounded',
  'light-outside/grounded-system-line': () => 'no ungrounded conductor of a grounded AC system',
  'light-outside/part-limit': () => 'the part lets its light show what the conductor does',
  'light-outside/turbine-phase': () => 'no phase of a turbine',
  'light-outside/ungrounded-system-line': () => 'no conductor of an AC system that floats',
};

const GROUNDED = {
  neutral: 'N of a grounded system',
  phase: 'the grounded phase',
  pole: 'the grounded pole',
};
