import type { Settings } from '../../model/settings.js';
import { isNec, type Basis } from '../../model/editions.js';

/**
 * Whether a bare length is in feet: as the settings say, by default with any `nec` basis.
 * @param settings of the company
 * @param basis of the job; of a file that belongs to no job, the settings' basis
 */
export function bareLengthIsFeet(settings: Settings, basis: Basis): boolean {
  const { length } = settings.units;
  return length === 'by-basis' ? isNec(basis) : length === 'ft';
}
