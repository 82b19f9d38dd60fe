import { CHOOSE_MESSAGES, type LeadAt } from '../../model/messages/choose.js';
import { RATE_MESSAGES } from '../../model/messages/rate.js';
import type { ChooseReasons } from '../../model/reasons/choose.js';
import type { Reason } from '../../model/reason.js';
import type { PortsAt } from '../../model/ports-at.js';
import type { Quantity } from '../../model/quantity.js';
import { isNec } from '../../model/editions.js';
import { levelVolts, plain, quantity } from '../figures.js';
import { paperLead } from '../lengths.js';
import { say } from '../reasons/say.js';
import { assumed, NOT_KNOWN, ofOffice } from './assumption-kit.js';

const tagOf = ({ tag }: { readonly tag: string }): readonly string[] => [tag];
const atOne = ({ at }: { readonly at: PortsAt }): readonly PortsAt[] => [at];

const upTo = (most: Quantity | null): string => (most === null ? '' : `, at most ${quantity(most)}`);

type NearWithstand = ChooseReasons['level/near-withstand'];

/** The lead voltage to the volt, as the calculations have it; finer where the sentence would else not be so. */
function leadsAbove({ up, leads, withstand, share }: NearWithstand): string {
  const most = ((share ?? 100) / 100) * withstand.value;
  const volts = Math.round(leads.value);
  return plain(up.value + volts > most ? volts : leads.value);
}

/** `VPR 400 V + leads 77 V above the 500 V assumed`; another shortfall in its own words. */
function shortfallText(of: Reason): string {
  if (of.code !== 'level/near-withstand') return say(of);
  const v: NearWithstand = of.values;
  const limit = v.share === null ? quantity(v.withstand) : `${String(v.share)} % of ${quantity(v.withstand)}`;
  return `${v.basis} ${quantity(v.up)} + leads ${leadsAbove(v)} V above ${limit}${v.assumed ? ' assumed' : ''}`;
}

/** `holds up to 25 kA`, or that the part states no rating. */
const holdsText = (of: Reason): string =>
  of.code === 'holds/up-to' ? `holds up to ${quantity(of.values.rating)}` : say(of);

const reachText = (reach: LeadAt['reach']): string => {
  if (typeof reach === 'string') return reach === 'unlimited' ? 'its whole run' : 'not known';
  return quantity(reach);
};

/** What is taken for granted of voltages, currents and parts. */
export const PART_ASSUMPTIONS = [
  assumed(CHOOSE_MESSAGES.mayNotProtect, {
    decides: 'that it may not protect',
    says: ({ shortfall }) =>
      `MAY NOT PROTECT: ${shortfallText(shortfall)}. Ask the maker of the equipment for its impulse withstand`,
    at: atOne,
  }),
  assumed(CHOOSE_MESSAGES.shortfall, {
    decides: 'whether it protects',
    says: ({ shortfall }) => `Little margin: ${shortfallText(shortfall)}`,
    at: atOne,
  }),
  assumed(CHOOSE_MESSAGES.enclosureScale, {
    decides: 'whether it protects',
    says: 'Enclosure not stated as a NEMA type: fit for outdoors by the maker',
    at: atOne,
  }),
  assumed(CHOOSE_MESSAGES.neutralPath, {
    decides: 'whether it protects',
    says: 'Current that the path from neutral to ground bears not stated: by the maker',
    underIec: () => 'Current that the path from neutral to earth bears not stated: by the maker',
    at: atOne,
  }),
  assumed(CHOOSE_MESSAGES.listedToUlOnly, {
    decides: 'whether it protects',
    says: ({ leads }) =>
      `Part listed to UL 1449, no IEC 61643 class stated: fit by the maker, leads as of class ${leads}`,
    at: atOne,
  }),
  assumed(RATE_MESSAGES.turbineFloats, {
    decides: 'whether it protects',
    says: ({ clause }) =>
      `Turbine phases float: ${clause} asks for parts fit for ungrounded systems; what their listing says of that is to be filled in below the schedule, where the catalogue states nothing`,
    tags: tagOf,
  }),
  assumed(RATE_MESSAGES.turbineUnearthed, {
    decides: 'whether it protects',
    says: 'Turbine phases not earthed: fit for that by the maker of the part',
    tags: tagOf,
  }),
  assumed(RATE_MESSAGES.coldFactorAssumed, {
    decides: 'a voltage',
    says: ({ factor }) =>
      `Lowest temperature not known: ${quantity(factor)} × Voc at standard test conditions`,
    fact: () => ({ field: 'lowest_temp', value: NOT_KNOWN }),
  }),
  assumed(RATE_MESSAGES.liftedByInverter, {
    decides: 'a voltage',
    says: ({ inverter, least }) =>
      `DC conductors lifted to at most ${quantity(least)} to ground by ${inverter}, which is not isolated`,
    underIec: ({ inverter, least }) =>
      `DC conductors lifted to at most ${quantity(least)} to earth by ${inverter}, which is not isolated`,
    tags: tagOf,
  }),
  assumed(RATE_MESSAGES.foreignSystem, {
    decides: 'a voltage',
    says: ({ system, basis }) =>
      `System ${system} rated by the formula of ${isNec(basis) ? 'the NEC' : 'IEC 60364'}, to which it is foreign`,
    tags: tagOf,
  }),
  assumed(CHOOSE_MESSAGES.faultCurrentUnknown, {
    decides: 'a current that is not known',
    says: ({ holds }) => `Fault current not known: the part ${holdsText(holds)}`,
    at: atOne,
    fact: () => ({ field: 'fault_current', value: NOT_KNOWN }),
  }),
  assumed(CHOOSE_MESSAGES.backfeedUnknown, {
    decides: 'a current that is not known',
    says: 'Current that converters send back into their DC inputs not known, not counted',
    tags: ({ converter }) => [converter],
    at: ({ at }) => at,
    fact: () => ({ field: 'backfeed_a', value: NOT_KNOWN }),
  }),
  assumed(CHOOSE_MESSAGES.existingUnknown, {
    decides: 'whether it protects',
    says: ({ existing, asks }) => `Existing protector "${existing}" has ${say(asks)}`,
    at: atOne,
  }),
  assumed(CHOOSE_MESSAGES.existingSeveral, {
    decides: 'whether it protects',
    says: ({ existing }) => `Existing protector "${existing}" at each of these places`,
    at: ({ places }) => places,
  }),
  assumed(CHOOSE_MESSAGES.besideExisting, {
    decides: 'whether it protects',
    says: ({ existing }) => `MCOV of the same class as of the existing protector at ${existing.equipment}`,
    at: atOne,
  }),
  assumed(CHOOSE_MESSAGES.leadLong, {
    decides: 'whether it protects',
    says: ({ planned, basis }) =>
      `Long leads, ${paperLead(planned.total.value, isNec(basis) ? 'ft' : 'm')}: level ${String(levelVolts(planned.level.value))} V, reach ${reachText(planned.reach)}`,
    at: atOne,
  }),
  assumed(CHOOSE_MESSAGES.leadThin, {
    decides: 'a device',
    says: ({ least }) => `Earth lead of at least ${least}, thicker than the part comes with`,
    at: atOne,
  }),
  assumed(CHOOSE_MESSAGES.overcurrentSize, {
    decides: 'a device',
    says: 'Size of the overcurrent device by the instructions of the part',
    at: ({ at }) => at,
  }),
  assumed(CHOOSE_MESSAGES.leadsByClass, {
    decides: 'a device',
    says: ({ amps }) =>
      `Smallest leads by the class of the part alone: that they bear ${quantity(amps)} ahead of them is for whoever sizes them`,
    at: ({ at }) => at,
  }),
  assumed(CHOOSE_MESSAGES.overcurrentTurbine, {
    decides: 'a device',
    says: ({ most }) => `Overcurrent device as the maker of the turbine says${upTo(most)}`,
    at: atOne,
  }),
  assumed(CHOOSE_MESSAGES.overcurrentControl, {
    decides: 'a device',
    says: 'Current of the control circuit limited by its own supply (class 2), else by a device of at most the size in the schedule',
    at: atOne,
  }),
  assumed(CHOOSE_MESSAGES.overcurrentBelowLeast, {
    decides: 'a device',
    says: ({ rating, least }) =>
      `Device of the circuit, ${quantity(rating)}, below the ${quantity(least)} that the part asks for: a surge may open it`,
    at: atOne,
  }),
  ofOffice(CHOOSE_MESSAGES.flagNotTold),
];
