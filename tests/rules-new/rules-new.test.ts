import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { SECTION_2 } from './section-2.js';
import { SECTION_3, SECTION_4 } from './section-3-4.js';
import { SECTION_5 } from './section-5.js';

// What is new in rules.md since the first packs: of sections 2 to 4 each phrase that its list of novelties has between semicolons.
const NEW = {
  2: 'unknown Voc; above even the assumed withstand; between two conductors; N-PE path (In, Iimp); fault current of sources, of ports, of sources together and apart, backfeed; reach on level plus leads, category II at services and panels; 2.10 device of each kind of circuit, corner, high leg, shared housing, ahead of the disconnect, the circuit’s own device, no device, smallest lead by metal; 2.11 long leads; choice: 10 kA at AC ends outdoors',
  3: 'measuring bands by kind of conductor, pole to pole, ground fault, meter; isolation in order, the way back, sources not all known, stays live; no ground bar; colours by voltage, positive-ground plants',
  4: 'flags `good`; floating battery; `sun, inverter on`',
};
const SECTIONS = { 2: SECTION_2, 3: SECTION_3, 4: SECTION_4 };

// Of section 5 each statement behind the bullet on type 3: how many pairs of lists it has in SECTION_5, or the test of section-5.test.ts
// that plans both.
const PAIRS = 'pairs of lists';
const BULLETS: readonly (readonly [statement: string, test: string])[] = [
  ['type 3 never stands in with nec', 'nec asks a UL type: 1 or 2 fits, 3 does not'],
  ['iec asks iec_class, not UL type', 'iec asks a class, whatever the UL type'],
  [
    'Table F.1 is entered with the nominal voltage of a battery, DC load or control circuit, 51.2 V with its class',
    PAIRS,
  ],
  ['230 V in IT enters at 230 V', PAIRS],
  ['an array whose temperature isn’t known enters with the lower of draft and maximum', PAIRS],
  ['iec asks In 5 kA everywhere', PAIRS],
  ['attached asks T1 on DC at arrays, batteries and converters, not at control circuits', PAIRS],
  ['AC in 2 shares with AC out too, if all conductors fit', 'AC in 2 shares too where all conductors fit'],
  [
    'a service outdoors with nothing indoors is no building of its own',
    'with nothing indoors in its building is no building of its own: what it feeds has the job’s occupancy, confirm',
  ],
  ['spare channels of a shared part', 'spare channels: the N of each port first, then a doubled L1'],
  [
    'terminals at the other end of a control circuit',
    'belong to the control circuit: its protect counts there',
  ],
  ['TT without N', 'TT with a system that has no N: conflict'],
  ['IT with a link', 'IT with n_pe_link yes: conflict'],
  [
    'a stated dc_grounding at its own port',
    'a row’s stated dc_grounding counts at its own port, whatever input it was given by order',
  ],
  [
    'place and outdoors of a disconnect',
    'its place and outdoors count for the run, not for a port of its own',
  ],
  [
    'worth_protecting and protect of a disconnect or transfer switch',
    'worth_protecting and protect of a %s: nothing to do, confirm',
  ],
  ['place/asked at a transformer', 'at a transformer: ac-out'],
  ['place/asked at a dc-load, dc-panel', 'at a dc-load and a dc-panel: dc-in'],
  [
    'a cable to a DC load that leaves the room',
    'that leaves the room asks at what it hangs on; at the load’s end only a long run does',
  ],
  ['a diversion load', 'a diversion load is exempt unless protect is yes'],
  ['a DC load outdoors on a long run', 'outdoors on a run over the limit: both ends'],
  ['place/inverter-ac for an AC battery', 'place/inverter-ac for an AC battery'],
  ['place/dc-input for a pump drive', 'place/dc-input for the DC input of a pump drive'],
  ['place/feeder never for a disconnect', 'place/feeder never for a disconnect'],
  ['existing and protector of a row with several ports', 'count for each of its placements'],
  [
    'an array on a charge controller has the grounding of its battery',
    'an array on a charge controller has that of its battery, unless stated',
  ],
  ['negative where no battery is on the list', 'negative where no battery is on the list'],
  ['dc_grounding of a battery over 60 V', 'of a battery over 60 V nominal: floating'],
  ['DANGER over 60 V DC', 'a battery bus up to 60 V: arc and burns; above it shock'],
  [
    'DANGER over 30 V AC, by the highest voltage at that box',
    'an AC system is above 30 V, also where the protector is at the battery port of that box',
  ],
  [
    'impulseWithstand of the plan',
    'is the Uw that clamping was held against: stated, else that of the table, and it says which',
  ],
  [
    'an existing protector kept beside a new one at one place: confirm that both are of one MCOV class',
    PAIRS,
  ],
  ['cells of the classes', '%s V: 4, 8, 12 or 16 LFP cells of 3.65 V (value from memory)'],
  [
    'battery_voltage of a DC load, DC panel or inverter',
    'battery_voltage of a DC load, a DC panel or an inverter is the nominal that it asks for',
  ],
  ['a generator without transfer equipment', 'missing at its row, looked for through panels and disconnects'],
  [
    'not through an inverter’s second AC in',
    'not through a second AC in of an inverter, nor where there is a transfer switch',
  ],
  [
    'for reach: category II behind a delta: its line to line; behind an impedance-grounded wye: line to neutral',
    PAIRS,
  ],
  ['behind a rapid-shutdown box', 'means the converter’s side of it; the array’s own output follows the sun'],
  ['an empty place', 'an empty place is that of the first equipment it connects to, through disconnects'],
  ['as many lengths as targets', 'as many lengths as targets, or one; else conflict'],
  [
    'modules with strings_in_parallel alone',
    'modules with strings_in_parallel alone: series follows; a product that differs is a conflict',
  ],
  ['what names a transformer', 'what names it sits on its ac-out, a service feeds its ac-in'],
  [
    'fault_current, system_grounding, n_pe_link of a transformer',
    'its fault_current, system_grounding and n_pe_link speak of ac-out',
  ],
  ['protect yes at a drive’s motor', 'protect yes: conflict; its run’s length isn’t asked'],
  ['a word of two kinds', 'a word of two kinds: missing kind, with its candidates'],
  ['“no source on the list”', 'no source on the list means none that names the converter'],
  ['“nothing indoors”: disconnects and meters don’t count', PAIRS],
  [
    'a lone `other`',
    'a lone `other` is asked about where a source or a load names it, or something hangs on both its sides',
  ],
  [
    'a place asked for only because the choice of 10 kA would turn on it isn’t asked; the plan takes the stronger',
    PAIRS,
  ],
];

describe.each([2, 3, 4] as const)('rules.md section %i', (section) => {
  it('has pairs of lists for each phrase of its novelties, and for nothing else', () => {
    expect(Object.keys(SECTIONS[section])).toEqual(NEW[section].split('; '));
  });
});

describe('rules.md section 5', () => {
  it('has a test for each statement behind that on type 3', () => {
    const source = readFileSync('tests/rules-new/section-5.test.ts', 'utf8');
    const titles = [...source.matchAll(/^ *(?:it\(|it\.each\(.*|\]\)\()?\s*'((?:[^'\\]|\\.)*)',/gm)].map(
      (m) => m[1],
    );
    for (const [statement, test] of BULLETS) if (test !== PAIRS) expect(titles, statement).toContain(test);
    expect(Object.keys(SECTION_5)).toEqual(
      BULLETS.filter(([, test]) => test === PAIRS).map(([statement]) => statement),
    );
  });
});

const PHRASES = [SECTION_2, SECTION_3, SECTION_4, SECTION_5].flatMap((section) => Object.entries(section));

describe.each(PHRASES)('%s', (_, pairs) => {
  it('has a pair', () => {
    expect(pairs.length).toBeGreaterThan(0);
  });

  it.each(pairs)('$shows', ({ plan, sees, fires, spares }) => {
    expect(sees(plan(fires[0]))).toEqual(fires[1]);
    expect(sees(plan(spares[0]))).toEqual(spares[1]);
    // Were both alike, the cell would decide nothing.
    expect(fires[1]).not.toEqual(spares[1]);
  });
});
