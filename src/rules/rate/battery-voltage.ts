import { batteryChargeVoltage } from '../../electrical/battery.js';
import { statedAt, taken, workingOf } from '../../electrical/working.js';
import type { PlacedNote } from '../../model/open-item.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import { volts } from '../../model/quantity.js';
import { reason } from '../../model/reason.js';
import { subject, type Working } from '../../model/step.js';
import { about } from '../../model/message.js';
import { FACT_MESSAGES, RATE_MESSAGES } from '../../model/messages/rate.js';
import type { AnyRatingRule, BatteryFacts, RatingFacts } from '../rating-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['port', 'tag', 'batteries', 'lowestTemp'] as const;
type Facts = Given<RatingFacts, typeof FACTS>;

const NO_BUS = reason('battery-voltage/no-bus');
const NO_BATTERY = reason('battery-voltage/no-battery');
const NEEDED = reason('needed/battery-voltage');

const CHARGE_VOLTAGE_OF_CHEMISTRY = practice('Highest charge voltage of the chemistry; figures from memory.');
const CITED_UNDER_NEC: readonly Cited[] = ['maker-instructions', CHARGE_VOLTAGE_OF_CHEMISTRY];

export const batteryVoltage = {
  id: 'rate/battery-voltage',
  title: 'Highest charge voltage of a battery bus',
  why: 'A battery that is being charged stands well above the voltage on its label.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: [CHARGE_VOLTAGE_OF_CHEMISTRY],
  }),
  answers: 'rate/mcov',
  facts: FACTS,
  decide(f: Facts): RatingDecision {
    if (f.port !== 'battery' && f.port !== 'dc-bus') return { outcome: 'outside', because: NO_BUS };
    const notes: PlacedNote[] = [];
    if (f.batteries.length === 0) {
      notes.push(about(RATE_MESSAGES.batteryNotListed, { tag: f.tag }, f.tag, ''));
      return { outcome: 'unknown', because: NO_BATTERY, notes };
    }
    let best: Working | undefined;
    const unknown: string[] = [];
    for (const battery of f.batteries) {
      const found = voltageOf(f, battery, notes);
      if (!found) unknown.push(battery.tag);
      else if (!best || found.value > best.value) best = found;
    }
    if (!best || unknown.length > 0) {
      const because = reason('battery-voltage/not-known', { batteries: unknown });
      return { outcome: 'unknown', because, notes };
    }
    return { outcome: 'asks', value: best.value, working: best, notes };
  },
} satisfies AnyRatingRule;

function voltageOf(f: Facts, battery: BatteryFacts, notes: PlacedNote[]): Working | undefined {
  const { tag, voltage, chemistry, cells, highest, unreadable } = battery;
  const found = chemistry
    ? batteryChargeVoltage({
        chemistry: chemistry.value,
        nominal: voltage?.value,
        cells: cells?.value,
        lowestTemp: f.lowestTemp?.value,
      })
    : undefined;
  if (found?.ok && !(highest && highest.value > found.working.value)) {
    return statedAt(found.working, { n: cells?.origin, T: f.lowestTemp?.origin });
  }
  // A maker's figure above that of the chemistry counts; one below it doesn't: chargers are set wrong.
  if (highest) {
    const stated = subject('battery-voltage/stated', { battery: tag });
    return workingOf([], taken('Umax', stated, highest.value, 'V', 'stated', highest.origin));
  }
  if (!chemistry && !unreadable.has('battery_chemistry')) {
    notes.push(about(FACT_MESSAGES.battery_chemistry, { tag, why: NEEDED }, tag, 'battery_chemistry'));
  }
  if (!voltage && !cells && !unreadable.has('battery_voltage')) {
    notes.push(about(FACT_MESSAGES.battery_voltage, { tag, why: NEEDED }, tag, 'battery_voltage'));
  }
  if (found && (voltage || cells)) {
    const p = {
      tag,
      chemistry: chemistry?.value.slice(0, 40) ?? '',
      nominal: voltage ? volts(voltage.value) : null,
    };
    const isKnown = found.ok || found.reason === 'cells-unknown';
    notes.push(about(RATE_MESSAGES.batteryUnknown, p, tag, isKnown ? 'cells' : 'battery_chemistry'));
  }
  return undefined;
}
