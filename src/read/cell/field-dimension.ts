import { FIELDS } from '../../model/fields.js';
import type { Field } from '../../model/list.js';
import type { Dimension } from './units.js';

/** Of bare numbers; days where nothing stands here. */
const NUMBERS: { readonly [F in Field]?: Dimension } = {
  rpm: 'speed',
  flash_density: 'flash-density',
  kva: 'apparent-power',
  impedance_percent: 'share',
};

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
    case 'lengths':
    case 'kilometres':
      return 'length';
    case 'count':
      return 'pieces';
    case 'number':
      return NUMBERS[field] ?? 'days';
    case 'text':
    case 'yesno':
    case 'connection':
    case 'chemistry':
    case 'mounting':
      return null;
  }
}
