import type { EnglishPlan } from '../in-english.js';
import { at, catalogueOf, faults, items, one, partLine, planOf } from '../plan/plan-of.js';
import { count, devicesAt, housing, type Section } from './contrast.js';

const part = (says: string): { readonly catalogue: string } => ({
  catalogue: catalogueOf(partLine('OAK', says)),
});
const AC = 'channels=2; mcov_ac=150; up=600';
const IEC_PART = 'channels=4; mcov_ac=275; up=900; connection=3+1; iec_class=T1; iimp_ka=25';
const array = (more: string): string =>
  `A array; connects_to=X; run_length=4 m; voc_stc=40; isc_stc=10; modules_in_series=10; protect=yes${more}
   X grid-tie-inverter; dc_inputs=1; max_dc_voltage=600; ac_out=240; isolated=yes; connects_to=S; run_length=4 m
   S service; ac_in=240`;
const bus = (battery: string, more = ''): string =>
  `B battery; battery_voltage=48; battery_chemistry=lfp; protect=yes; place=Hut${battery}${more}`;
const service = (more: string): string => `S service; ac_in=120/240; place=House${more}`;
const room = (load: string): string =>
  `P panel; ac_in=120; place=House\nL load; connects_to=P; run_length=2 m; ac_in=120; protect=yes; place=House${load}`;
const device = (where: string): ((plan: EnglishPlan) => unknown) =>
  housing(where, ({ overcurrent }) => overcurrent[0]?.device);

/** rules.md section 2: 2.1 to 2.6, 2.10, 2.11 and the choice. Figures without a word are of the lists themselves. */
export const SECTION_2: Section = {
  'unknown Voc': [
    {
      shows: 'missing, and the draft rates at what the converter bears',
      plan: (cell) =>
        planOf(
          'lowest_temp=25 C',
          `A array; connects_to=X; run_length=4 m; modules_in_series=3${cell}\nX charge-controller; dc_inputs=1; max_dc_voltage=250`,
        ),
      sees: (plan) => [one(plan, 'X:dc-in-1').required.mcov, faults(plan)],
      fires: ['', [250, ['fact/voc-stc']]],
      // Table 690.7(A), 25 C and above: 1.00 (computed).
      spares: ['; voc_stc=40', [120, []]],
    },
  ],
  'above even the assumed withstand': [
    {
      shows: 'the confirm says that the part may not protect',
      plan: (cell) =>
        planOf('', `L load; ac_in=120; protect=yes${cell}`, part('channels=2; mcov_ac=150; up=1800')),
      sees: count('choose/may-not-protect'),
      // IEC 60664-1 Table F.1, 150 V, category II: 1500 V.
      fires: ['', 1],
      spares: ['; impulse_withstand=6 kV', 0],
    },
  ],
  'between two conductors': [
    {
      shows: 'up to the sum of both levels with their leads',
      plan: (cell) =>
        planOf('', `L load; ac_in=${cell}; protect=yes`, part('channels=1; mcov_ac=150; up=600')),
      sees: housing('L:feeder', ({ figures }) => {
        if (figures?.levelBetween === null || figures?.levelBetween === undefined) return null;
        return Math.abs(figures.levelBetween - 2 * ((figures.up ?? 0) + (figures.leadVoltage ?? 0))) < 0.02;
      }),
      fires: ['120/240', true],
      spares: ['120', null],
    },
  ],
  'N-PE path (In, Iimp)': [
    {
      shows: 'In 20 kA of three phases (Table 534.4, value from memory)',
      plan: (cell) =>
        planOf('basis=iec; earthing=TT', 'S service; ac_in=400Y/230', part(`${IEC_PART}; in_npe_ka=${cell}`)),
      sees: housing('S:service', ({ part: chosen }) => chosen),
      fires: ['19.9', null],
      spares: ['20', 'OAK'],
    },
    {
      shows: 'Iimp 50 kA of three phases where T1 is asked (Table 534.4, value from memory)',
      plan: (cell) =>
        planOf(
          'basis=iec; earthing=TT; lightning_protection=isolated',
          'S service; ac_in=400Y/230',
          part(`${IEC_PART}; in_npe_ka=20; iimp_npe_ka=${cell}`),
        ),
      sees: housing('S:service', ({ part: chosen }) => chosen),
      fires: ['49.9', null],
      spares: ['50', 'OAK'],
    },
  ],
  'fault current of sources, of ports, of sources together and apart, backfeed': [
    {
      shows: 'a source gives what it states; alone and without, it isn’t known',
      plan: (cell) => planOf('', `G generator; ac_out=120/240; protect=yes${cell}`),
      sees: housing('G:output', ({ required }) => required.sccr),
      fires: ['; fault_current=2 kA', 2000],
      spares: ['', null],
    },
    {
      shows: 'its port sees that and what it is joined to',
      plan: (cell) =>
        planOf(
          '',
          `${service('; fault_current=10 kA')}\nI inverter-charger; connects_to=S; run_length=2 m; ac_in=120/240; ac_out=120/240; place=House${cell}`,
        ),
      sees: housing('I:ac-out', ({ required }) => required.sccr),
      fires: ['; fault_current=500 A', 10_500],
      spares: ['', 10_000],
    },
    {
      shows: 'batteries of one bus add, of two they don’t',
      plan: (cell) =>
        planOf(
          '',
          `${bus('; connects_to=I; fault_current=5 kA')}
           C battery; battery_voltage=48; battery_chemistry=lfp; connects_to=${cell}; fault_current=3 kA
           I inverter-charger; ac_in=unused; ac_out=120\nJ inverter-charger; ac_in=unused; ac_out=120`,
        ),
      sees: housing('B:battery', ({ required }) => required.sccr),
      fires: ['I', 8000],
      spares: ['J', 5000],
    },
    {
      shows: 'behind a transfer switch the highest; one not known: not known',
      plan: (cell) =>
        planOf(
          '',
          `${service('; fault_current=8 kA')}\nT transfer-switch; connects_to=S; run_length=2 m; place=House
           P panel; connects_to=T; run_length=2 m; ac_in=120/240; place=House; protect=yes
           G generator; connects_to=T; run_length=2 m; ac_out=120/240; place=House${cell}`,
        ),
      sees: housing('P:feeder', ({ required }) => required.sccr),
      fires: ['; fault_current=2 kA', 8000],
      spares: ['', null],
    },
    {
      shows: 'what the converter sends back adds to 2 x 1.25 x 10 A (690.8(A), from memory)',
      plan: (cell) =>
        planOf('lowest_temp=0 C', array(`; strings_in_parallel=2`).replace('isolated=yes', cell)),
      sees: housing('A:output', ({ required }) => required.sccr),
      fires: ['isolated=yes; backfeed_a=5 A', 30],
      spares: ['isolated=yes; backfeed_a=0 A', 25],
    },
  ],
  'reach on level plus leads, category II at services and panels': [
    {
      shows: '600 V and 192 V of leads are at most half of 1600 V, with leads of 0.6 m they aren’t',
      plan: (cell) => planOf('', room(`; impulse_withstand=1600; lead_length=${cell}`), part(AC)),
      sees: housing('L:feeder', ({ figures }) => figures?.reach === null),
      fires: ['0.5 m', true],
      spares: ['0.6 m', false],
    },
    {
      shows: 'a panel is held against category II too, a load against its own alone (IEC 60664-1 Table F.1)',
      plan: (cell) => planOf('', `X ${cell}; ac_in=120/240; protect=yes; fault_current=1 kA`),
      sees: housing('X:feeder', ({ figures }) => [figures?.impulseWithstand, figures?.reachWithstand]),
      fires: ['panel', [2500, 1500]],
      spares: ['load', [1500, 1500]],
    },
  ],
  '2.10 device of each kind of circuit, corner, high leg, shared housing, ahead of the disconnect, the circuit’s own device, no device, smallest lead by metal':
    [
      {
        shows: 'AC: a pole for each line, for the fault current there; not known: to fill in',
        plan: (cell) => planOf('', `S service; ac_in=480Y/277${cell}`),
        sees: devicesAt('S:service'),
        fires: ['; fault_current=22 kA', ['either: 3 poles, 480 V, breaks 22000 A']],
        spares: ['', ['either: 3 poles, 480 V, breaks - A']],
      },
      {
        shows: 'a generator as AC; without a part not known',
        plan: (cell) =>
          planOf('', 'G generator; ac_out=120/240; protect=yes; fault_current=600 A', {
            catalogue: cell === '' ? null : catalogueOf(partLine(cell, AC)),
          }),
        sees: devicesAt('G:output'),
        fires: ['OAK', ['either: 2 poles, 240 V, breaks 600 A']],
        spares: ['', ['unknown: 2 poles, 240 V, breaks 600 A']],
      },
      {
        shows: 'an array: for DC, two poles and the cold voltage (1.10) where more than 30 A can flow',
        plan: (cell) => planOf('lowest_temp=0 C', array(`; strings_in_parallel=${cell}`)),
        sees: devicesAt('A:output'),
        fires: ['3', ['either: 2 poles, 440 V dc, breaks 37.5 A']],
        spares: ['2', ['none: - poles, - V dc, breaks - A']],
      },
      {
        shows: 'a battery bus: a pole for each pole that isn’t grounded (3.65 V x 16, value from memory)',
        plan: (cell) => planOf('', bus(`; fault_current=5 kA; dc_grounding=${cell}`)),
        sees: devicesAt('B:battery'),
        fires: ['floating', ['either: 2 poles, 58.4 V dc, breaks 5000 A']],
        spares: ['negative', ['either: 1 poles, 58.4 V dc, breaks 5000 A']],
      },
      {
        shows: 'a DC load its own, for the fault current of its bus',
        plan: (cell) =>
          planOf('', `${bus(cell)}\nR dc-load; connects_to=B; run_length=2 m; place=Hut; protect=yes`),
        sees: devicesAt('R:dc-in'),
        fires: ['; fault_current=5 kA', ['either: 1 poles, 58.4 V dc, breaks 5000 A']],
        spares: ['', ['either: 1 poles, 58.4 V dc, breaks - A']],
      },
      {
        shows: 'a turbine: as its maker says, and an item asks; a source of another kind isn’t asked',
        plan: (cell) =>
          planOf(
            'lowest_temp=25 C',
            `W ${cell}; connects_to=X; run_length=4 m; open_circuit_voltage=100; protect=yes\nX charge-controller; dc_inputs=1; max_dc_voltage=250`,
          ),
        sees: (plan) => [
          one(plan, 'W:output').overcurrent[0]?.device,
          count('choose/overcurrent-turbine')(plan) > 0,
        ],
        fires: ['wind-turbine; output=three-phase', ['unknown', true]],
        spares: ['array', ['either', false]],
      },
      {
        shows:
          'a control circuit: its supply’s limit, which an item asks for; one that nobody protects isn’t asked',
        plan: (cell) =>
          planOf(
            '',
            `K control-circuit; control_voltage=24 V dc; outdoors=yes; run_length=40 m; protect=${cell}`,
          ),
        sees: (plan) => [
          at(plan, 'K:terminals').map(({ overcurrent }) => overcurrent[0]?.device),
          count('choose/overcurrent-control')(plan),
        ],
        fires: ['yes', [['unknown'], 1]],
        spares: ['no', [[], 0]],
      },
      {
        shows: 'a corner: L2 straight through (240.22)',
        plan: (cell) => planOf('', `S service; ac_in=480 delta; system_grounding=${cell}`),
        sees: housing('S:service', ({ overcurrent: [o] }) => [
          o?.conductors.join(),
          o?.noneIn.join(),
          o?.straight,
        ]),
        fires: ['corner', ['L1,L3', 'L2', true]],
        spares: ['none', ['L1,L2,L3', '', true]],
      },
      {
        shows: 'a high leg: straight, not slash (240.85)',
        plan: (cell) => planOf('', `S service; ac_in=${cell}`),
        sees: housing('S:service', ({ overcurrent: [o] }) => o?.straight),
        fires: ['240/120 high-leg', true],
        spares: ['208Y/120', false],
      },
      {
        shows: 'a shared housing: one for each port that it serves (110.14(A))',
        plan: (cell) =>
          planOf(
            '',
            'I inverter-charger; ac_in=120; ac_out=120',
            part(`channels=${cell}; mcov_ac=150; up=600`),
          ),
        sees: housing('I:ac-in', ({ overcurrent }) => overcurrent.map(({ port }) => port)),
        fires: ['2', ['ac-in', 'ac-out']],
        spares: ['1', ['ac-in']],
      },
      {
        shows: 'ahead of the first disconnect none but what the part is listed with (230.82(4), from memory)',
        plan: (cell) => planOf('', service(`; ahead_of_disconnect=${cell}`)),
        sees: device('S:service'),
        fires: ['yes', 'none'],
        spares: ['no', 'either'],
      },
      {
        shows: 'the circuit’s own device will do where it is at most the 30 A of the part',
        plan: (cell) => planOf('', service(`; rating_a=${cell}`)),
        sees: device('S:service'),
        fires: ['30 A', 'none'],
        spares: ['31 A', 'either'],
      },
      {
        shows: 'a part that needs none has none',
        plan: (cell) => planOf('', service(''), part(`${AC}; overcurrent_device=${cell}`)),
        sees: devicesAt('S:service'),
        fires: ['none', ['none: - poles, - V, breaks - A']],
        spares: ['fuse', ['fuse: 2 poles, 240 V, breaks - A']],
      },
      {
        shows:
          'the smallest lead behind 30 A in each metal that the terminals take (240.4(D); Al: Table 310.16, from memory)',
        plan: (cell) => planOf('', service(''), part(`${AC}; wire_range=14 to 2 AWG Cu${cell}`)),
        sees: housing('S:service', ({ figures }) => figures?.smallestLead),
        fires: ['| 12 to 2 AWG Al', '10 AWG Cu; 8 AWG Al'],
        spares: ['', '10 AWG Cu'],
      },
    ],
  '2.11 long leads': [
    {
      shows: 'over 0.5 m: confirm (534.4.8)',
      plan: (cell) => planOf('', room(`; lead_length=${cell}`)),
      sees: (plan) => items(plan, 'choose/lead-long').map(({ severity }) => severity),
      fires: ['0.51 m', ['confirm']],
      spares: ['0.5 m', []],
    },
    {
      shows: 'iec above 1 m: conflict (534.4.8, value from memory)',
      plan: (cell) => planOf('basis=iec; earthing=TN', `L load; ac_in=230; protect=yes; lead_length=${cell}`),
      sees: (plan) => items(plan, 'choose/lead-too-long').map(({ severity }) => severity),
      fires: ['1.01 m', ['conflict']],
      spares: ['1 m', []],
    },
  ],
  'choice: 10 kA at AC ends outdoors': [
    {
      shows: 'In of 10 kA goes before a lower MCOV (common practice, no source)',
      plan: (cell) =>
        planOf('', room(`; outdoors=${cell}`), {
          catalogue: catalogueOf(
            partLine('X', 'channels=2; mcov_ac=150; up=600; in_ka=5'),
            partLine('Y', 'channels=2; mcov_ac=175; up=600; in_ka=10'),
          ),
        }),
      sees: (plan) => at(plan, 'L:feeder').map(({ part: chosen }) => chosen),
      fires: ['yes', ['Y']],
      spares: ['no', ['X']],
    },
  ],
};
