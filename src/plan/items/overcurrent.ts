import { CHOOSE_MESSAGES } from '../../model/messages/choose.js';
import { about } from '../../model/message.js';
import type { PlacedNote } from '../../model/open-item.js';
import type { PortsAt } from '../../model/ports-at.js';
import { amperes } from '../../model/quantity.js';
import { ampsOf } from '../../rules/overcurrent-facts.js';
import { overcurrentWay } from '../../rules/lead-duty.js';
import { whereIs } from '../choose/where.js';
import type { Made } from '../make/made.js';

/** What has to be confirmed about overcurrent devices, and one item a converter of which nobody says what it sends back. */
export function overcurrentItems(made: readonly Made[]): readonly PlacedNote[] {
  return [...deviceItems(made), ...classItems(made), ...backfeedItems(made)];
}

function backfeedItems(made: readonly Made[]): readonly PlacedNote[] {
  const places = new Map<string, Made[]>();
  for (const one of made) {
    if (one.protector.housing.number > 1) continue;
    for (const tag of one.protector.required.backfeedUnknown) {
      const before = places.get(tag);
      if (before) before.push(one);
      else places.set(tag, [one]);
    }
  }
  return [...places].map(([converter, all]) => {
    const at = all.map(({ from }) => whereIs(from.placement));
    return about(CHOOSE_MESSAGES.backfeedUnknown, { converter, at }, converter, 'backfeed_a');
  });
}

/** Leads under `iec` that nothing holds against what is ahead of them: one item for each part and size. */
function classItems(made: readonly Made[]): readonly PlacedNote[] {
  const alike = new Map<
    string,
    { part: string; leads: string; amps: number; first: string; at: PortsAt[] }
  >();
  for (const { protector, from } of made) {
    const { figures, part, housing } = protector;
    const rest = figures?.leadsRestOn ?? null;
    if (part === null || housing.number > 1 || rest?.on !== 'device' || rest.amps === null) continue;
    const { smallestLead: line, smallestGroundLead: ground } = figures ?? {};
    const leads = line === ground ? (line ?? '') : `line ${line ?? ''}, ground ${ground ?? ''}`;
    const key = `${part}|${leads}`;
    const first = from.placement.subject.tag;
    const known = alike.get(key) ?? { part, leads, amps: 0, first, at: [] };
    known.amps = Math.max(known.amps, rest.amps);
    known.at.push(whereIs(from.placement));
    alike.set(key, known);
  }
  return [...alike.values()].map(({ part, leads, amps, first, at }) =>
    about(CHOOSE_MESSAGES.leadsByClass, { part, amps: amperes(amps), leads, at }, first, ''),
  );
}

/** What has to be confirmed about the overcurrent devices of a plan: one item a place, and one a part whose size isn't stated. */
function deviceItems(made: readonly Made[]): readonly PlacedNote[] {
  const notes: PlacedNote[] = [];
  const unsized = new Map<string, Made[]>();
  for (const one of made) {
    const { part, placement } = one.from;
    // Several housings of a place have one item; without a part an item says already why there is none.
    if (!part || one.protector.housing.number > 1) continue;
    const at = whereIs(placement);
    const { tag } = placement.subject;
    const most = ampsOf(part.overcurrentMost);
    for (const { at: port } of one.devices) {
      const way = overcurrentWay(port.place, part);
      const p = { at, part: part.part, most };
      if (way === 'turbine') notes.push(about(CHOOSE_MESSAGES.overcurrentTurbine, p, tag, ''));
      if (way === 'control') notes.push(about(CHOOSE_MESSAGES.overcurrentControl, p, tag, ''));
      const rating = port.place.ownDevice;
      const least = part.overcurrentLeast;
      if (way === 'circuit' && rating !== undefined && least !== null && rating < least) {
        const found = { at, part: part.part, rating: amperes(rating), least: amperes(least) };
        notes.push(about(CHOOSE_MESSAGES.overcurrentBelowLeast, found, tag, 'rating_a'));
      }
    }
    const isSized = one.devices.every(({ planned }) => planned.device === 'none' || planned.amps !== null);
    if (isSized) continue;
    const before = unsized.get(part.part);
    if (before) before.push(one);
    else unsized.set(part.part, [one]);
  }
  for (const [part, places] of unsized) {
    const [first] = places;
    if (!first) continue;
    const words = (first.from.part?.overcurrent ?? '').slice(0, 120);
    const at = places.map(({ from }) => whereIs(from.placement));
    const p = { part, words, at };
    notes.push(about(CHOOSE_MESSAGES.overcurrentSize, p, first.from.placement.subject.tag, ''));
  }
  return notes;
}
