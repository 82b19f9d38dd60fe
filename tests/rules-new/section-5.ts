import { at, catalogueOf, one, partLine, planOf, rulesAt } from '../plan/plan-of.js';
import { count, housing, type Section } from './contrast.js';

const withstand = (where: string) => housing(where, ({ figures }) => figures?.impulseWithstand);
const T1 = 'iec_class=T1; iimp_ka=25';
const shop = (classes: string): { readonly catalogue: string } => ({
  catalogue: catalogueOf(
    partLine('DC', `channels=2; mcov_dc=600; up=2000; ${classes}`),
    partLine('LOW', `channels=2; mcov_dc=75; up=400; ${classes}`),
    partLine('LINE', `channels=4; mcov_ac=440; up=1500; ${classes}`),
  ),
});
const DC_SITE = `A array; connects_to=X; run_length=40 m; open_circuit_voltage=120; place=Roof; protect=yes
  X charge-controller; dc_inputs=1; max_dc_voltage=250; connects_to=B; run_length=2 m; place=Hut
  B battery; battery_voltage=48; battery_chemistry=lfp; place=Hut; protect=yes
  K control-circuit; control_voltage=24 V dc; connects_to=B; run_length=40 m; place=Gate; outdoors=yes`;

/** What section 5 of rules.md says of ratings, reach and choice; its other bullets have tests of their own beside this file. */
export const SECTION_5: Section = {
  'Table F.1 is entered with the nominal voltage of a battery, DC load or control circuit, 51.2 V with its class':
    [
      {
        shows: '51.2 V enters as 48 V (row of 50 V), though it is charged at 58.4 V; 60 V doesn’t',
        plan: (cell) =>
          planOf('', `B battery; battery_voltage=${cell}; cells=16; battery_chemistry=lfp; protect=yes`),
        sees: withstand('B:battery'),
        fires: ['51.2', 500],
        spares: ['60', 800],
      },
      {
        shows: 'a control circuit of 48 V enters at 48 V, though it is rated for more; of 51 V it doesn’t',
        plan: (cell) => planOf('', `K control-circuit; control_voltage=${cell} V dc; protect=yes`),
        sees: withstand('K:terminals'),
        fires: ['48', 500],
        spares: ['51', 800],
      },
    ],
  '230 V in IT enters at 230 V': [
    {
      shows: 'its row is that of 300 V, category II; 400Y/230 in IT that of 600 V by its lines',
      plan: (cell) => planOf('basis=iec; earthing=IT', `L load; ac_in=${cell}; protect=yes`),
      sees: withstand('L:feeder'),
      fires: ['230', 2500],
      spares: ['400Y/230', 4000],
    },
  ],
  'an array whose temperature isn’t known enters with the lower of draft and maximum': [
    {
      shows:
        '1.25 x 240 V = 300 V under a converter of 600 V: row of 300 V; known as 240 x 1.25 at -40 °C and colder: row of 600 V',
      plan: (cell) =>
        planOf(
          cell,
          'X charge-controller; dc_inputs=1; max_dc_voltage=600\nA array; connects_to=X; run_length=5 m; voc_stc=50; voc_coefficient=-0.4 %/C; modules_in_series=4',
        ),
      sees: withstand('X:dc-in-1'),
      // 1.25 x 200 V = 250 V; at 25 °C - 160 K it would be 200 V x 1.64 = 328 V.
      fires: ['', 2500],
      spares: ['lowest_temp=-135 C', 4000],
    },
  ],
  'iec asks In 5 kA everywhere': [
    {
      shows: 'at a load too (534.4.4.4, value from memory); nec 3 kA there (common practice)',
      plan: (cell) => planOf(cell, 'L load; ac_in=230; protect=yes'),
      sees: housing('L:feeder', ({ required }) => required.in),
      fires: ['basis=iec; earthing=TN', 5000],
      spares: ['basis=nec-2023', 3000],
    },
  ],
  'attached asks T1 on DC at arrays, batteries and converters, not at control circuits': [
    {
      shows: 'a T2 part fits at none of them but at the control circuit; isolated asks it of no DC',
      plan: (cell) =>
        planOf(
          `basis=iec; earthing=TN; occupancy=other; lightning_protection=${cell}`,
          DC_SITE,
          shop('iec_class=T2'),
        ),
      sees: (plan) =>
        ['A:output', 'X:dc-in-1', 'B:battery', 'K:terminals'].map(
          (where) => at(plan, where)[0]?.part !== null,
        ),
      fires: ['attached', [false, false, false, true]],
      spares: ['isolated', [true, true, true, true]],
    },
    {
      shows: 'a T1 part fits everywhere',
      plan: (cell) =>
        planOf('basis=iec; earthing=TN; occupancy=other; lightning_protection=attached', DC_SITE, shop(cell)),
      sees: (plan) =>
        ['A:output', 'X:dc-in-1', 'B:battery'].map((where) => at(plan, where)[0]?.part !== null),
      fires: [T1, [true, true, true]],
      spares: ['iec_class=T2', [false, false, false]],
    },
  ],
  'an existing protector kept beside a new one at one place: confirm that both are of one MCOV class': [
    {
      shows: 'at one place, not at two',
      plan: (cell) =>
        planOf(
          '',
          `S service; ac_in=120/240; place=House; existing=an old one
           P panel; connects_to=S; ac_in=120/240; run_length=10 m; protect=yes; place=${cell}`,
        ),
      sees: count('choose/beside-existing'),
      fires: ['House', 1],
      spares: ['Shed', 0],
    },
  ],
  'for reach: category II behind a delta: its line to line; behind an impedance-grounded wye: line to neutral':
    [
      {
        shows: '480 V line to line: 4000 V; 277 V to neutral: 2500 V (IEC 60664-1 Table F.1)',
        plan: (cell) => planOf('', `P panel; ac_in=${cell}; protect=yes`),
        sees: housing('P:feeder', ({ figures }) => figures?.reachWithstand),
        fires: ['480 delta', 4000],
        spares: ['480Y/277; system_grounding=impedance', 2500],
      },
    ],
  '“nothing indoors”: disconnects and meters don’t count': [
    {
      shows:
        'a service on a pole with a meter indoors of its shed is no building of its own; with a load there it is',
      plan: (cell) =>
        planOf(
          'occupancy=dwelling',
          `S service; ac_in=120/240; outdoors=yes; place=Pole
           M ${cell}; connects_to=S; place=Pole / shed; outdoors=no; run_length=2 m
           P panel; connects_to=S; ac_in=120/240; place=House / hall; run_length=40 m`,
        ),
      sees: (plan) => rulesAt(plan, 'P:feeder').includes('place/feeder'),
      fires: ['disconnect', true],
      spares: ['load; ac_in=120/240', false],
    },
  ],
  'a place asked for only because the choice of 10 kA would turn on it isn’t asked; the plan takes the stronger':
    [
      {
        shows: 'where nobody says whether the run leaves the building the part of 10 kA goes first',
        plan: (cell) =>
          planOf(
            'occupancy=other',
            `L load; ac_in=120; protect=yes; impulse_withstand=6 kV; fault_current=1 kA; connects_to=P; run_length=50 m; place=Shed; outdoors=no
           P panel; ac_in=120; ${cell}`,
            {
              catalogue: catalogueOf(
                partLine('X', 'channels=2; mcov_ac=150; up=600; in_ka=5'),
                partLine('Y', 'channels=2; mcov_ac=175; up=600; in_ka=10'),
              ),
            },
          ),
        sees: (plan) => one(plan, 'L:feeder').part,
        fires: ['', 'Y'],
        spares: ['place=Shed', 'X'],
      },
    ],
};
