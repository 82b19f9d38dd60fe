import type { Field } from '../../model/list.js';
import { KINDS, type Kind } from '../../model/words.js';

/** What a word of the trade says about the kind of a row. */
export interface KindWord {
  /** The kinds that the word can mean; where it is one, that is the kind. */
  readonly kinds: readonly Kind[];
  /** The kind to read it as; null: it can be several, and which isn't for us to say. */
  readonly taken: Kind | null;
  /** What the word says beside the kind. */
  readonly states: Stating | null;
}

interface Stating {
  readonly field: Field;
  readonly value: boolean;
}

/**
 * Words of the trade for each kind, from general knowledge. Case, blanks, hyphens, slashes, full stops, brackets and plurals don't
 * count. A word that can be two kinds stands in the table below instead.
 */
const WORDS: { readonly [K in Kind]: string } = {
  service: `utility, grid, mains, meter main, meter main combo, utility service, utility meter, utility grid, electric service,
    service entrance, service drop, service equipment, main service, main supply, mains supply, grid supply, incoming supply,
    incoming mains, incoming service, grid connection, utility connection, utility supply, public grid, public supply`,
  panel: `main panel, sub panel, load center, load centre, breaker panel, breaker box, fuse box, panelboard, panel board, distribution board,
    distribution panel, main distribution panel, main distribution board, sub distribution board, sub distribution panel, mdp,
    switchboard, main switchboard, consumer unit, electrical panel, electric panel, ac panel, ac distribution, ac distribution board,
    ac combiner, ac combiner panel, lighting panel, critical load panel, critical loads panel, backup panel, backup load panel,
    backup loads panel, essential load panel, essential loads panel, protected loads panel, main lug panel, motor control center`,
  'transfer-switch': `ats, mts, manual transfer, automatic transfer, manual transfer switch, automatic transfer switch, interlock,
    interlock kit, generator interlock, transfer relay, changeover, changeover switch, change over switch, generator transfer switch,
    transfer equipment, double throw switch`,
  array: `module, pv, solar, string, pv module, solar module, solar panel, pv panel, pv array, solar array, pv string, module string,
    string of modules, photovoltaic, photovoltaic array, photovoltaic module, photovoltaic panel, sub array, pv generator`,
  combiner: `combiner box, string combiner, string combiner box, dc combiner, dc combiner box, pv combiner, pv combiner box,
    array combiner, recombiner, re combiner`,
  'charge-controller': `mppt, pwm, solar controller, charge regulator, solar regulator, solar charge controller, solar charger,
    mppt controller, mppt charge controller, mppt charger, pwm controller, pwm charge controller, battery charge controller,
    pv charge controller, wind charge controller, hydro charge controller`,
  'grid-tie-inverter': `grid tied inverter, string inverter, on grid inverter, grid interactive inverter, utility interactive inverter,
    grid connected inverter, grid following inverter, central inverter`,
  'ac-module-branch': `microinverter, micro inverter, micro, ac module, microinverter branch, microinverter trunk, microinverter string,
    microinverter circuit, ac module circuit, ac branch, module level inverter`,
  'inverter-charger': `ups, uninterruptible power supply, hybrid inverter, multimode inverter, multi mode inverter, off grid inverter,
    standalone inverter, stand alone inverter, battery based inverter, bidirectional inverter, hybrid inverter charger,
    charger inverter, grid forming inverter`,
  battery: `battery bank, battery string, battery pack, battery module, battery rack, battery cabinet, battery set, storage battery, dc battery,
    accumulator, house bank, lead acid battery, lithium battery, lfp battery`,
  'wind-turbine': `wind, wind generator, wind power, windmill, wind mill, wind turbine generator`,
  'hydro-turbine': `hydro, micro hydro, pico hydro, hydro generator, water turbine, hydro turbine generator, micro hydro turbine`,
  generator: `genset, gen set, gen, generator set, engine generator, standby generator, backup generator, emergency generator,
    portable generator, diesel generator, gas generator, propane generator, natural gas generator, diesel genset`,
  load: `ac load, ev charger, evse, ev charging station, ev charge point, electric vehicle charger, electric vehicle supply equipment, car charger, charging station,
    pump, motor, well pump, water pump, bore pump, irrigation pump, pool pump, compressor, fan, blower, lighting, light, luminaire,
    appliance, receptacle, outlet, socket outlet, heater, water heater, heat pump, air conditioner, air conditioning, hvac,
    refrigerator, freezer, machine, oven, welder`,
  'control-circuit': `control wiring, control cable, control line, start circuit, two wire start, generator start, remote start,
    start signal, generator start circuit, gate control, float switch, pilot circuit, relay circuit, thermostat circuit`,
  'signal-line': `signal, signal cable, data line, data cable, data, communication, communications, communication line, communication cable,
    comms, network, network cable, network line, ethernet, antenna, antenna cable, antenna line, coax, telephone, telephone line, phone line`,
  other: ``,
  disconnect: `isolator, disconnector, disconnect switch, disconnecting means, safety switch, isolating switch, isolation switch, switch disconnector,
    load break switch, knife switch, rotary isolator, rotary switch, fused disconnect, fused switch, ac disconnect, dc disconnect, pv disconnect,
    array disconnect, battery disconnect, inverter disconnect, generator disconnect, ac isolator, dc isolator, pv isolator, battery isolator,
    battery switch, circuit breaker, breaker, fuse, fuse holder, dc breaker, ac breaker, battery breaker, production meter, pv meter, solar meter, generation meter,
    sub meter, junction box, j box, pull box, transition box, splice box, control box, motor control box, pump control box, motor starter,
    starter, contactor`,
  transformer: `xfmr, xfrmr, trafo, step up transformer, step down transformer, distribution transformer, dry type transformer, power transformer`,
  'dc-load': `dc lighting, dc light, dc pump, dc appliance, dc motor, dc fan, radio, base station, dc equipment, telecom load`,
  'dc-panel': `dc load center, dc load centre, dc distribution, dc distribution panel, dc distribution board, dc breaker panel, dc breaker box,
    dc fuse panel, dc fuse box, dc bus, dc busbar, dc bus bar, battery busbar`,
  'diversion-load': `dump load, load dump, diversion, dump, dump heater, dump resistor, diversion heater, diversion resistor, ballast load`,
  'ac-battery': `ac coupled battery, ac battery module, ac battery system, ac coupled storage, ac storage`,
  'pump-drive': `vfd, vsd, asd, variable frequency drive, variable speed drive, adjustable speed drive, variable speed pump drive,
    variable frequency pump drive, solar pump drive, pump inverter, solar pump inverter, motor drive`,
};

/** Words that say more than a kind: a row that states the field itself is asked, or goes before. */
const STATING: readonly (readonly [string, Kind, Stating])[] = [
  [
    'rapid shutdown, rapid shutdown box, rapid shutdown device, rapid shutdown unit, rapid shutdown disconnect, rapid shutdown equipment, rsd, rsd box',
    'disconnect',
    { field: 'rapid_shutdown', value: true },
  ],
  ['autotransformer, auto transformer', 'transformer', { field: 'isolated', value: false }],
  ['isolation transformer, isolating transformer', 'transformer', { field: 'isolated', value: true }],
];

/** Words that can be several kinds: which is asked. */
const EITHER: readonly (readonly [string, readonly Kind[]])[] = [
  [
    'inverter, solar inverter, pv inverter, dc to ac inverter, power inverter, transformerless inverter',
    ['grid-tie-inverter', 'inverter-charger', 'pump-drive'],
  ],
  ['battery inverter', ['inverter-charger', 'ac-battery']],
  ['controller, regulator', ['charge-controller', 'pump-drive', 'diversion-load', 'control-circuit']],
  [
    'wind controller, hydro controller, turbine controller, dump controller, diversion controller',
    ['charge-controller', 'diversion-load'],
  ],
  ['charger, battery charger, rectifier, power supply', ['charge-controller', 'inverter-charger', 'load']],
  ['pump controller, pump control, solar pump controller', ['pump-drive', 'disconnect']],
  ['controls, control', ['control-circuit', 'disconnect']],
  ['control panel', ['panel', 'disconnect', 'control-circuit']],
  ['generator panel, transfer panel, generator transfer panel', ['panel', 'transfer-switch']],
  ['service panel, service entrance panel, meter panel, main', ['service', 'panel']],
  [
    'main disconnect, service disconnect, main switch, main isolator, service switch',
    ['service', 'disconnect'],
  ],
  ['main breaker, service breaker', ['service', 'panel', 'disconnect']],
  ['switch, switchgear', ['disconnect', 'transfer-switch', 'panel']],
  ['combiner panel', ['combiner', 'panel']],
  ['rapid shutdown combiner', ['combiner', 'disconnect']],
  [
    'rapid shutdown switch, rapid shutdown initiator, rsd switch, emergency stop, e stop',
    ['disconnect', 'control-circuit'],
  ],
  [
    'energy storage, energy storage system, ess, bess, battery system, battery storage, battery energy storage system, home battery, storage',
    ['battery', 'ac-battery'],
  ],
  ['turbine', ['wind-turbine', 'hydro-turbine']],
  ['alternator', ['generator', 'wind-turbine', 'hydro-turbine']],
  ['source, supply, power source', ['service', 'generator', 'battery']],
  ['bus, busbar, bus bar', ['panel', 'dc-panel']],
  ['drive', ['pump-drive', 'load']],
];

/** A meter with nothing ahead of it is the service; any other passes a circuit through. The site asks where it can't tell. */
const METERS =
  'meter, meter socket, meter base, meter box, meter can, revenue meter, net meter, energy meter, electricity meter, kwh meter';

const BETWEEN = /[\s\-_/.,&()[\]\u2010-\u2015]+/;

/** A word of the trade without what doesn't count. */
function keyOf(text: string): string {
  return wordsIn(text).join('');
}

/** The words of a text, in lower case. */
export function wordsIn(text: string): readonly string[] {
  return text
    .toLowerCase()
    .split(BETWEEN)
    .filter((word) => word !== '');
}

/** A word in the singular, as far as English is regular; short ones (ATS, UPS) are abbreviations. */
export function singular(word: string): string {
  if (word.length < 4) return word;
  if (word.endsWith('ies')) return `${word.slice(0, -3)}y`;
  if (/(?:ss|x|ch|sh)es$/.test(word)) return word.slice(0, -2);
  return /[^s]s$/.test(word) ? word.slice(0, -1) : word;
}

/** What each word says, by its key, in the order of the kinds. */
export const KIND_WORDS: ReadonlyMap<string, KindWord & { readonly words: readonly string[] }> = new Map([
  ...KINDS.flatMap((kind) =>
    entries(`${kind}, ${WORDS[kind]}`, { kinds: [kind], taken: kind, states: null }),
  ),
  ...STATING.flatMap(([words, kind, states]) => entries(words, { kinds: [kind], taken: kind, states })),
  ...EITHER.flatMap(([words, kinds]) => entries(words, { kinds, taken: null, states: null })),
  ...entries(METERS, { kinds: ['disconnect', 'service'], taken: 'disconnect', states: null }),
]);

function entries(
  words: string,
  says: KindWord,
): (readonly [string, KindWord & { readonly words: readonly string[] }])[] {
  return words
    .split(',')
    .map((word) => word.trim())
    .filter((word) => word !== '')
    .map((word) => [keyOf(word), { ...says, words: wordsIn(word) }]);
}

/**
 * What a word of the trade says about a kind.
 * @param text the cell, trimmed
 * @returns undefined where the word isn't known
 */
export function kindWord(text: string): KindWord | undefined {
  const words = wordsIn(text);
  return KIND_WORDS.get(words.join('')) ?? KIND_WORDS.get(words.map(singular).join(''));
}
