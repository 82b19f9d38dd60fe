import type { PlacedNote } from '../model/open-item.js';
import type { SiteEquipment, SitePort } from '../model/site.js';
import { about } from '../model/message.js';
import { SITE_MESSAGES } from '../model/messages/site.js';
import { byNaturalOrder } from '../model/natural-order.js';
import type { Link } from './links.js';

/**
 * Gives each link onto an inverter's AC input its port: `ac-in`, but a generator takes `ac-in-2` where that is stated and
 * `ac-in` is taken, and nothing takes an input that the list says is unused while the other is free.
 * @param equipments in natural order, with their ports
 * @param links the directed connections
 */
export function giveAcInputs(
  equipments: readonly SiteEquipment[],
  links: readonly Link[],
): { acInputs: ReadonlyMap<Link, SitePort>; notes: readonly PlacedNote[] } {
  const acInputs = new Map<Link, SitePort>();
  const notes: PlacedNote[] = [];
  const onto = new Map<SiteEquipment, Link[]>();
  for (const link of links) {
    if (link.downEnd !== 'ac-in') continue;
    const mine = onto.get(link.down);
    if (mine) mine.push(link);
    else onto.set(link.down, [link]);
  }
  for (const equipment of equipments) {
    const mine = onto.get(equipment);
    const first = equipment.ports.find((p) => p.cls === 'ac-in');
    if (!mine || !first) continue;
    const second = equipment.ports.find((p) => p.cls === 'ac-in-2' && p.unused === '');
    mine.sort((a, b) => Number(isStandby(a)) - Number(isStandby(b)) || byNaturalOrder(a.up.tag, b.up.tag));
    const onFirst: string[] = [];
    for (const link of mine) {
      const isTaken = first.unused === 'stated' || (isStandby(link) && onFirst.length > 0);
      if (second && isTaken) acInputs.set(link, second);
      else {
        acInputs.set(link, first);
        onFirst.push(link.up.tag);
      }
    }
    if (onFirst.length > 1) {
      const p = { tag: equipment.tag, feeds: onFirst };
      notes.push(about(SITE_MESSAGES.twoOnAcIn, p, equipment.tag, 'ac_in_2'));
    }
  }
  return { acInputs, notes };
}

function isStandby(link: Link): boolean {
  return link.up.kind === 'generator';
}
