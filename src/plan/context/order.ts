import type { SitePort } from '../../model/site.js';
import { PORT_CLASSES } from '../../model/words.js';

/** The place of a port in the order of the contract; inputs by their number. */
export function portOrder(port: SitePort): number {
  return PORT_CLASSES.indexOf(port.cls) * 100_000 + port.input;
}
