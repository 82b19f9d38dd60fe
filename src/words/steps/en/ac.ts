import type { AcSteps } from '../../../model/steps/ac.js';
import { list } from '../../figures.js';
import { figured, number, type StepTexts } from '../step-words.js';

const RANGE = ({ range }: AcSteps['ac-voltage/highest']): string =>
  `${number(range.highest)} / ${number(range.nominal)}`;

/** Steps about AC systems, control circuits, fault currents, discharge currents and withstand, in English. */
export const AC: StepTexts<AcSteps> = {
  'ac-voltage/to-ground': {
    says: (v) => `Nominal voltage of ${v.conductor} to ground, system ${v.system}`,
  },
  'ac-voltage/between-lines': {
    says: (v) => `Voltage between lines, system ${v.system}: a fault to ground lifts a line so far`,
  },
  'ac-voltage/highest': {
    says: 'Highest continuous voltage to ground, range B',
    formula: (v) => `${RANGE(v)} × U`,
    substituted: (v) => `${RANGE(v)} × ${figured(v.nominal)}`,
  },
  'ac-voltage/share': {
    says: 'Share of the nominal voltage that the trade asks for',
    formula: (v) => `${figured(v.share)} × U`,
    substituted: (v) => `${figured(v.share)} × ${figured(v.nominal)}`,
  },
  'ac-voltage/larger': {
    says: 'Least maximum continuous operating voltage: the larger of the two',
    formula: 'max(Umax, Us)',
    substituted: (v) => `max(${figured(v.highest)}, ${figured(v.share)})`,
  },
  'ac-voltage/least': {
    says: 'Least maximum continuous operating voltage',
    formula: (v) => `${figured(v.factor)} × U`,
    substituted: (v) => `${figured(v.factor)} × ${figured(v.nominal)}`,
  },
  'inverter-link/nominal': {
    says: (v) => `Nominal voltage between the output conductors, system ${v.system}`,
  },
  'inverter-link/highest-of-range': {
    says: 'Highest continuous voltage between the output conductors',
    formula: (v) => `${RANGE(v)} × UAC`,
    substituted: (v) => `${RANGE(v)} × ${figured(v.nominal)}`,
  },
  'inverter-link/highest': {
    says: 'Highest continuous voltage between the output conductors',
    formula: (v) => `${figured(v.factor)} × UAC`,
    substituted: (v) => `${figured(v.factor)} × ${figured(v.nominal)}`,
  },
  'inverter-link/peak': {
    says: 'Peak of that voltage: the inverter’s DC link lifts the poles so far; ask the maker',
    formula: (v) => `${figured(v.factor)} × UAC,max`,
    substituted: (v) => `${figured(v.factor)} × ${figured(v.highest)}`,
  },
  'control-voltage/nominal': { says: 'Nominal voltage of the control circuit' },
  'control-voltage/share': {
    says: (v) => `Share of the nominal voltage, ${v.current === 'ac' ? 'AC' : 'DC'} control circuit`,
    formula: (v) => `${figured(v.share)} × U`,
    substituted: (v) => `${figured(v.share)} × ${figured(v.nominal)}`,
  },
  'control-voltage/battery': {
    says: (v) =>
      `Charge voltage of a lead-acid battery of that nominal voltage, ${figured(v.nominalCell)} nominal for each cell`,
    formula: (v) => `Ucell × U / ${figured(v.nominalCell)}`,
    substituted: (v) => `${figured(v.cell)} × ${figured(v.nominal)} / ${figured(v.nominalCell)}`,
  },
  'control-voltage/larger': {
    says: 'Least maximum continuous operating voltage: the larger of the two',
    formula: 'max(Us, Ucharge)',
    substituted: (v) => `max(${figured(v.share)}, ${figured(v.battery)})`,
  },
  'fault-current/own': { says: 'Available fault current' },
  'fault-current/transformer': {
    says: ({ at, system }) => `Most that ${at} can drive into a fault of its ${system} side: an upper bound`,
    formula: 'S × 1000 / (phase factor × U × Z)',
  },
  'fault-current/transformer-power': { says: ({ at }) => `Rated power of ${at}` },
  'fault-current/transformer-impedance': { says: ({ at }) => `Impedance of ${at}` },
  'fault-current/upstream': {
    says: (v) => `Available fault current upstream, at ${list(v.at)}: the upper bound`,
  },
  'fault-current/from': { says: ({ at }) => `Fault current from ${at}` },
  'fault-current/together': {
    says: ({ of, apart, without }) =>
      [
        `Most that feeds a fault here at one time: ${list(of)}`,
        ...(apart.length > 0 ? [`${list(apart)} only in place of that`] : []),
        ...(without.length > 0 ? [`without what comes from ${list(without)}, which isn’t known`] : []),
      ].join('; '),
    formula: ({ apart }) => (apart.length > 0 ? 'highest sum of Isc at one time' : 'sum of Isc'),
    substituted: (v) => v.each.map(figured).join(' + '),
  },
  'fault-current/of-battery': { says: (v) => `Available fault current of ${v.battery}` },
  'fault-current/sum': {
    says: 'Sum of the batteries on this bus',
    formula: 'sum of Isc',
    substituted: (v) => v.each.map(figured).join(' + '),
  },
  'nominal-current/least': { says: 'Nominal discharge current, at least' },
  'nominal-current/service': { says: 'Nominal discharge current at a service' },
  'nominal-current/service-with-lightning-protection': {
    says: 'Nominal discharge current at a service with a lightning protection system',
  },
  'nominal-current/fed-panel': {
    says: 'Nominal discharge current at a panel that a feeder supplies',
  },
  'withstand/stated': { says: (v) => `Rated impulse withstand voltage of ${v.equipment}` },
  'withstand/entry': { says: 'Voltage that the table is entered with' },
  'withstand/row': { says: 'Row of the table that covers it' },
  'withstand/assumed': {
    says: (v) => `Impulse withstand assumed by overvoltage category ${v.category}: confirm with the maker`,
  },
};
