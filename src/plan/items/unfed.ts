import type { RowField } from '../../model/list.js';
import { about } from '../../model/message.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import type { PlacedNote } from '../../model/open-item.js';
import type { Site } from '../../model/site.js';
import type { PortClass } from '../../model/words.js';
import { isFedByList } from '../make/isolation.js';

/** The cell that says what comes to a port; of all others the connection. */
const SAID_IN: { readonly [C in PortClass]?: RowField } = { 'ac-in': 'ac_in', 'ac-in-2': 'ac_in_2' };

/** Each AC input, panel and load that nothing on the list feeds and that isn't stated to be unused: a person confirms. */
export function unfedPorts(site: Site): readonly PlacedNote[] {
  const notes: PlacedNote[] = [];
  for (const { tag, ports } of site.equipments) {
    for (const port of ports) {
      if (isFedByList(port)) continue;
      const { cls } = port;
      notes.push(about(PLACE_MESSAGES.feedUnknown, { tag, port: cls }, tag, SAID_IN[cls] ?? 'connects_to'));
    }
  }
  return notes;
}
