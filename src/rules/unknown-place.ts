import { about } from '../model/message.js';
import { PLACE_MESSAGES } from '../model/messages/place.js';
import type { PlacedNote } from '../model/open-item.js';
import type { RunFacts } from '../model/rule.js';

/** True for a run of which it isn't known whether it leads to another building. */
export function mayLeaveBuilding({ betweenBuildings, unplaced }: RunFacts): boolean {
  return !betweenBuildings && unplaced.length > 0;
}

/** Asks for places that aren't known, where a decision turns on them. */
export function placesAsked(tags: readonly string[]): PlacedNote[] {
  return tags.map((tag) => about(PLACE_MESSAGES.placeUnknown, { tag }, tag, 'place'));
}
