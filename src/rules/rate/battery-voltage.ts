import { batteryChargeVoltage } from '../../electrical/battery.js';
import { statedAt, taken, workingOf } from '../../electrical/working.js';
import type { Working } from '../../model/fact.js';
import type { PlacedNote } from '../../model/message.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import { figure, list } from '../../words/figures.js';
import { about } from '../../model/message.js';
import { FACT_MESSAGES, RATE_MESSAGES } from '../../model/messages/rate.js';
import { cited } from '../../words/origin.js';
import type { AnyRatingRule, BatteryFacts, RatingFacts } from '../rating-facts.js';
import { ALL, practice, sources } from '../sources.js';

const FACTS = ['port', 'tag', 'batteries', 'lowestTemp'] as const;
type Facts = Given<RatingFacts, typeof FACTS>;

export const batteryVoltage = {
  id: 'rate/battery-voltage',
  title: 'Highest charge voltage of a battery bus',
  why: 'A battery that is being charged stands well above the voltage on its label.',
  sources: sources({
    of: ALL,
    cite: ['maker-instructions'],
    also: practice('Highest charge voltage of the chemistry; figures from memory.'),
  }),
  answers: 'rate/mcov',
  facts: FACTS,
  decide(f: Facts): RatingDecision {
    if (f.port !== 'battery') return { outcome: 'outside', because: 'this port is no battery bus' };
    const notes: PlacedNote[] = [];
    if (f.batteries.length === 0) {
      notes.push(about(RATE_MESSAGES.batteryNotListed, { tag: f.tag }, f.tag, ''));
      return { outcome: 'unknown', because: 'no battery on the list is on this bus', notes };
    }
    let best: Working | undefined;
    const unknown: string[] = [];
    for (const battery of f.batteries) {
      const found = voltageOf(f, battery, notes);
      if (!found) unknown.push(battery.tag);
      else if (!best || found.value > best.value) best = found;
    }
    if (!best || unknown.length > 0)
      return { outcome: 'unknown', because: `the highest voltage of ${list(unknown)} isn’t known`, notes };
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
    return statedAt(found.working, {
      n: cells ? cited(cells.origin) : '',
      T: f.lowestTemp ? cited(f.lowestTemp.origin) : '',
    });
  }
  // A maker's figure above that of the chemistry counts; one below it doesn't: chargers are set wrong.
  if (highest) {
    const says = `Highest voltage of ${tag} by its maker`;
    return workingOf([], taken('Umax', says, highest.value, 'V', 'stated', cited(highest.origin)));
  }
  const why = 'the highest charge voltage of the bus depends on it';
  if (!chemistry && !unreadable.has('battery_chemistry')) {
    notes.push(about(FACT_MESSAGES.battery_chemistry, { tag, why }, tag, 'battery_chemistry'));
  }
  if (!voltage && !cells && !unreadable.has('battery_voltage')) {
    notes.push(about(FACT_MESSAGES.battery_voltage, { tag, why }, tag, 'battery_voltage'));
  }
  if (found && (voltage || cells)) {
    const p = {
      tag,
      chemistry: chemistry?.value.slice(0, 40) ?? '',
      volts: voltage ? figure(voltage.value, 'V') : 'no nominal voltage',
    };
    const isKnown = found.ok || found.reason === 'cells-unknown';
    notes.push(about(RATE_MESSAGES.batteryUnknown, p, tag, isKnown ? 'cells' : 'battery_chemistry'));
  }
  return undefined;
}
