import type { PlacedNote } from '../../model/open-item.js';
import type { SiteEquipment } from '../../model/site.js';
import { about } from '../../model/message.js';
import { CHOOSE_MESSAGES } from '../../model/messages/choose.js';
import type { Selected } from './select.js';
import { whereIs } from './where.js';

/** What has to be confirmed where one `existing` stands for several places: a protector that isn't there would be missed. */
export function existingElsewhere(selected: readonly Selected[]): readonly PlacedNote[] {
  const bySubject = new Map<SiteEquipment, Selected[]>();
  for (const one of selected) {
    if (one.existing === '') continue;
    const { subject } = one.placement;
    const before = bySubject.get(subject);
    if (before) before.push(one);
    else bySubject.set(subject, [one]);
  }
  const notes: PlacedNote[] = [];
  for (const [{ tag }, places] of bySubject) {
    const existing = places[0]?.existing.slice(0, 80) ?? '';
    if (places.length < 2) continue;
    const p = { tag, existing, places: places.map((one) => whereIs(one.placement)) };
    notes.push(about(CHOOSE_MESSAGES.existingSeveral, p, tag, 'existing'));
  }
  return notes;
}
