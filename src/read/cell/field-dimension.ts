import { FIELDS } from '../../model/fields.js';
import type { Field } from '../../model/list.js';
import type { Dimension } from './units.js';

/** The dimension that a field's cells and heading may state; null: no unit. */
export function dimensionOf(field: Field): Dimension | null {
  const type = FIELDS[field].type;
  if (typeof type !== 'string') return null;
  switch (type) {
    case 'voltage':
    case 'control-voltage':
      return 'voltage';
    case 'current':
    case 'length':
    case 'temperature':
    case 'coefficient':
      return type;
    case 'kilometres':
      return 'length';
    case 'count':
      return 'pieces';
    case 'number':
      return field === 'rpm' ? 'speed' : field === 'flash_density' ? 'flash-density' : 'days';
    case 'text':
    case 'yesno':
    case 'connection':
    case 'chemistry':
    case 'mounting':
      return null;
  }
}
