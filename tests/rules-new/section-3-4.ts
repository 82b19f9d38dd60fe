import { bandsAt, catalogueOf, conductorsAt, lightsOf, one, partLine, planOf } from '../plan/plan-of.js';
import { housing, type Section } from './contrast.js';
import type { EnglishPlan } from '../in-english.js';

const array = (more: string): string =>
  `A array; connects_to=X; run_length=4 m; voc_stc=40; modules_in_series=3${more}
   X charge-controller; dc_inputs=1; max_dc_voltage=250; connects_to=B; run_length=2 m
   B battery; battery_voltage=48; battery_chemistry=lfp`;
const battery = (more: string): string => `B battery; battery_voltage=48; protect=yes${more}`;
const one1 = { catalogue: catalogueOf(partLine('ELM', 'channels=1; mcov_ac=150; up=600')) };
const WIND = `X charge-controller; dc_inputs=1; max_dc_voltage=250; connects_to=B; run_length=2 m; place=Hut
  I inverter-charger; ac_in=unused; ac_out=120; place=Hut
  B battery; battery_voltage=48; battery_chemistry=lfp; connects_to=I; run_length=2 m; place=Hut; protect=yes`;
const bands = (where: string) => (plan: EnglishPlan) => bandsAt(plan, where);
const faultsAt = (where: string) =>
  housing(where, ({ wiring }) => wiring.measuring.bands.filter(({ fault }) => fault !== null).length > 0);
/** `2 W` for each act of the isolation, in order; or of the way back. */
const acts = (way: 'steps' | 'back') => (plan: EnglishPlan) =>
  plan.isolation.parts.flatMap((part) =>
    part[way].flatMap(({ number, acts: each }) =>
      each.map(({ tags }) => `${number} ${tags.join(' ')}`.trim()),
    ),
  );

/** rules.md section 3. */
export const SECTION_3: Section = {
  'measuring bands by kind of conductor, pole to pole, ground fault, meter': [
    {
      shows:
        'a string: 0.8 x Voc(STC) (common practice) to its cold voltage pole to pole, and a grounded pole 0 to 5 V',
      plan: (cell) => planOf('lowest_temp=25 C', array(`; dc_grounding=${cell}`)),
      sees: bands('X:dc-in-1'),
      fires: [
        'negative',
        ['positive>negative +: 96 to 120', 'positive>ground +: 96 to 120', 'negative>ground: 0 to 5'],
      ],
      spares: [
        'floating',
        ['positive>negative +: 96 to 120', 'positive>ground +: - to 120', 'negative>ground -: - to 120'],
      ],
    },
    {
      shows: 'a battery: 1.75 or 2.5 V a cell (common practice) to 2.70 or 3.65 V (values from memory)',
      plan: (cell) => planOf('', battery(`; battery_chemistry=${cell}`)),
      sees: (plan) => bandsAt(plan, 'B:battery')[0],
      fires: ['lead-acid', 'positive>negative +: 42 to 64.8'],
      spares: ['lfp', 'positive>negative +: 40 to 58.4'],
    },
    {
      shows:
        'range B of the service voltage at a service, of utilization at a load (ANSI C84.1, lows from memory)',
      plan: (cell) => planOf('', `S service; ac_in=120; place=House\n${cell}`, one1),
      sees: (plan) => [
        bandsAt(plan, 'S:service'),
        plan.protectors.length > 1 ? bandsAt(plan, 'L:feeder') : [],
      ],
      fires: [
        'L load; connects_to=S; run_length=2 m; ac_in=120; place=House; protect=yes',
        [
          ['L1>ground: 110 to 127', 'N>ground: 0 to 5'],
          ['L1>ground: 104 to 127', 'N>ground: 0 to 5'],
        ],
      ],
      spares: [
        'L load; connects_to=S; run_length=2 m; ac_in=120; place=House',
        [['L1>ground: 110 to 127', 'N>ground: 0 to 5'], []],
      ],
    },
    {
      shows: 'a generator alone: nominal +-10 %',
      plan: (cell) => planOf('', `${cell}; protect=yes`, one1),
      sees: (plan) => bandsAt(plan, `X:${plan.protectors[0]?.ports[0]?.port ?? ''}`)[0],
      fires: ['X generator; ac_out=120', 'L1>ground: 108 to 132'],
      spares: ['X service; ac_in=120', 'L1>ground: 110 to 127'],
    },
    {
      shows: 'a high leg its own',
      plan: (cell) => planOf('', `S service; ac_in=${cell}`),
      sees: (plan) => bandsAt(plan, 'S:service').filter((band) => band.startsWith('L2>ground')),
      fires: ['240/120 high-leg', ['L2>ground: 191 to 220.13']],
      spares: ['208Y/120', ['L2>ground: 110 to 127']],
    },
    {
      shows: 'impedance: line to line by range B, to ground no band',
      plan: (cell) => planOf('', `S service; ac_in=480Y/277; system_grounding=${cell}`),
      sees: (plan) => bandsAt(plan, 'S:service').filter((band) => /^L1>/.test(band)),
      fires: ['impedance', ['L1>L2: 440 to 508', 'L1>L3: 440 to 508', 'L1>ground: - to 508']],
      spares: ['solid', ['L1>ground: 254 to 293.16']],
    },
    {
      shows: 'a corner’s L2: 0 to 5 V',
      plan: (cell) => planOf('', `S service; ac_in=240 delta; system_grounding=${cell}`),
      sees: (plan) => bandsAt(plan, 'S:service').filter((band) => band.startsWith('L2>ground')),
      fires: ['corner', ['L2>ground: 0 to 5']],
      spares: ['none', ['L2>ground: - to 254']],
    },
    {
      shows: 'TT: N to PE 0 to 15 V, a setting',
      plan: (cell) => planOf(`basis=iec; earthing=${cell}`, 'S service; ac_in=400Y/230'),
      sees: (plan) => bandsAt(plan, 'S:service').filter((band) => band.startsWith('N>ground')),
      fires: ['TT', ['N>ground: 0 to 15']],
      spares: ['TN', ['N>ground: 0 to 5']],
    },
    {
      shows: 'a turbine: line to line up to its highest voltage; of direct current pole to pole',
      plan: (cell) =>
        planOf(
          '',
          `W wind-turbine; output=${cell}; open_circuit_voltage=120; connects_to=X; place=Tower\n${WIND}`,
        ),
      sees: (plan) => bandsAt(plan, 'W:output')[0],
      fires: ['three-phase', 'L1>L2: - to 120'],
      spares: ['dc', 'positive>negative +: - to 120'],
    },
    {
      shows: 'pole to pole with its sign is read of DC always; of lines of a solid system to ground alone',
      plan: (cell) => planOf('', `B ${cell}; protect=yes`, cell.startsWith('battery') ? {} : one1),
      sees: (plan) =>
        bandsAt(plan, `B:${plan.protectors[0]?.ports[0]?.port ?? ''}`).some((band) =>
          />(negative|L)/.test(band),
        ),
      fires: ['battery; battery_voltage=48; battery_chemistry=lfp', true],
      spares: ['generator; ac_out=120', false],
    },
    {
      shows: 'the ground fault of a floating pair',
      plan: (cell) => planOf('lowest_temp=25 C', array(`; dc_grounding=${cell}`)),
      sees: faultsAt('X:dc-in-1'),
      fires: ['floating', true],
      spares: ['positive', false],
    },
    {
      shows: 'the ground fault of lines that aren’t solidly grounded',
      plan: (cell) => planOf('', `S service; ac_in=480 delta; system_grounding=${cell}`),
      sees: faultsAt('S:service'),
      fires: ['none', true],
      spares: ['corner', false],
    },
    {
      shows: 'the meter: CAT IV at a service, CAT III elsewhere; the highest voltage',
      plan: (cell) => planOf('', `X ${cell}; ac_in=480Y/277; protect=yes`),
      sees: (plan) => plan.protectors[0]?.wiring.measuring.meter?.says,
      fires: ['service', 'Meter and leads: CAT IV, rated for at least 528 V AC'],
      spares: ['panel', 'Meter and leads: CAT III, rated for at least 528 V AC'],
    },
    {
      shows: 'clothing first of all over 10 kA, a setting',
      plan: (cell) => planOf('', `S service; ac_in=120/240; fault_current=${cell}`),
      sees: housing('S:service', ({ wiring }) => wiring.measuring.clothing?.first),
      fires: ['10.1 kA', true],
      spares: ['10 kA', false],
    },
  ],
  'isolation in order, the way back, sources not all known, stays live': [
    {
      shows:
        'turbine, inverter, turbine’s disconnect, battery, in this order; without a turbine neither of its steps',
      plan: (cell) =>
        planOf(
          'lowest_temp=25 C',
          `W ${cell}; open_circuit_voltage=120; connects_to=X; place=Tower\n${WIND}`,
        ),
      sees: acts('steps'),
      fires: ['wind-turbine; output=dc', ['1 I', '2 W', '3 I', '3 X', '6 W', '7 B', '8 X I', '9', '10']],
      spares: ['array', ['1 I', '3 I', '3 X', '5 W', '7 B', '8 X I', '9', '10']],
    },
    {
      shows: 'the way back lets the turbine go after all that loads it, automatic starts last',
      plan: (cell) =>
        planOf(
          'lowest_temp=25 C',
          `W ${cell}; open_circuit_voltage=120; connects_to=X; place=Tower\n${WIND}`,
        ),
      sees: acts('back'),
      fires: ['wind-turbine; output=dc', ['9', '7 B', '6 W', '3 X', '3 I', '2 W', '1 I']],
      spares: ['array', ['9', '7 B', '5 W', '3 X', '3 I', '1 I']],
    },
    {
      shows: 'an AC in that nothing feeds and that isn’t stated unused',
      plan: (cell) => planOf('', `I inverter-charger; ac_out=120; ac_in=${cell}; place=Hut`),
      sees: (plan) => [
        plan.isolation.parts.flatMap(({ unknown }) => unknown),
        one(plan, 'I:ac-out').wiring.isolation.unknown,
        plan.openItems.filter(({ severity }) => severity === 'confirm')[0]?.code === 'place/feed-unknown',
      ],
      fires: ['', [['I'], true, true]],
      spares: ['unused', [[], false, false]],
    },
    {
      shows: 'the line side of a service stays live, nothing of a panel behind it',
      plan: (cell) =>
        planOf(
          '',
          `S service; ac_in=120/240; place=House${cell}\nP panel; connects_to=S; run_length=9 m; ac_in=120/240; place=House; protect=yes`,
        ),
      sees: (plan) =>
        plan.protectors.map((p) =>
          p.wiring.isolation.live.map(({ who, here }) => `${who}${here ? ' (here)' : ''}`),
        ),
      fires: [
        '; ahead_of_disconnect=yes',
        [
          [],
          [
            'the utility makes the service dead first and the crew proves it; until then do not connect (here)',
          ],
        ],
      ],
      spares: ['', [[], ['only the utility can make it dead']]],
    },
  ],
  'no ground bar': [
    {
      shows:
        'out of doors a motor has a terminal fitted, on which the cable’s conductor lands; indoors there is a bar',
      plan: (cell) => planOf('', `L load; ac_in=240; protect=yes; outdoors=${cell}`),
      sees: housing('L:feeder', ({ wiring }) => wiring.groundTerminal?.lands.length ?? null),
      fires: ['yes', 3],
      spares: ['no', null],
    },
    {
      shows: 'a resistance-grounded service has no bonded bar: where the grounding electrode conductor lands',
      plan: (cell) => planOf('', `S service; ac_in=480Y/277; system_grounding=${cell}`),
      sees: housing('S:service', ({ wiring }) => /grounding electrode conductor lands/.test(wiring.groundTo)),
      fires: ['impedance', true],
      spares: ['solid', false],
    },
  ],
  'colours by voltage, positive-ground plants': [
    {
      shows: 'brown, orange, yellow of 480Y/277 (common practice, no source)',
      plan: (cell) => planOf('', `S service; ac_in=${cell}`),
      sees: housing('S:service', ({ channels }) => channels.slice(0, 3).map(({ colour }) => colour)),
      fires: ['480Y/277', ['brown', 'orange', 'yellow']],
      spares: ['208Y/120', ['black', 'red', 'blue']],
    },
    {
      shows: 'poles of a plant whose positive is grounded go by voltage and use, without a colour',
      plan: (cell) => planOf('', battery(`; battery_chemistry=lfp; dc_grounding=${cell}`)),
      sees: housing('B:battery', ({ channels }) =>
        channels.map(
          ({ colour, pole }) => `${colour}|${pole === null ? '' : `${pole.use} ${String(pole.volts)}`}`,
        ),
      ),
      fires: ['positive', ['|return 48', '|line 48']],
      spares: ['floating', ['red|', 'black|']],
    },
  ],
};

/** rules.md section 4. */
export const SECTION_4: Section = {
  'flags `good`': [
    {
      shows: 'a flag: always good; a light follows its voltage',
      plan: (cell) =>
        planOf('', 'S service; ac_in=120/240', {
          catalogue: catalogueOf(
            partLine(
              'F',
              `channels=2; mcov_ac=150; up=600; indicator=${cell}; good_flag=green; used_flag=red`,
            ),
          ),
        }),
      sees: (plan) => lightsOf(plan, 'S:service', 'L1'),
      fires: ['flag', ['always: good']],
      spares: ['light', ['utility on: lit', 'source off: dark']],
    },
  ],
  'floating battery': [
    {
      shows: 'either, always: recorded at commissioning',
      plan: (cell) => planOf('', battery(`; battery_chemistry=lfp; dc_grounding=${cell}`)),
      sees: (plan) => conductorsAt(plan, 'B:battery').map((pole) => lightsOf(plan, 'B:battery', pole).join()),
      fires: ['floating', ['always: either', 'always: either']],
      spares: ['negative', ['always: lit', 'always: dark']],
    },
  ],
  '`sun, inverter on`': [
    {
      shows: 'behind a rapid-shutdown box; behind a plain disconnect the sun alone decides',
      plan: (cell) =>
        planOf(
          'lowest_temp=25 C',
          `A array; connects_to=D; run_length=9 m; voc_stc=40; modules_in_series=3; dc_grounding=negative
           D disconnect; connects_to=X; run_length=2 m${cell}
           X charge-controller; dc_inputs=1; max_dc_voltage=250`,
        ),
      sees: (plan) => lightsOf(plan, 'X:dc-in-1', 'positive')[0],
      fires: ['; rapid_shutdown=yes', 'sun, inverter on: lit'],
      spares: ['', 'sun: lit'],
    },
  ],
};
