import type { SiteEquipment, SitePort } from '../model/site.js';

/** The ports of an equipment that something may stand at: all but those that are stated unused, and spare inputs. */
export function portsInUse({ ports }: SiteEquipment): readonly SitePort[] {
  return ports.filter((port) => port.unused !== 'stated' && port.use !== 'spare');
}
