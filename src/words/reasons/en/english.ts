import type { Reasons } from '../../../model/reasons/reasons.js';
import type { Sayings } from '../sayings.js';
import { CHOOSE } from './choose.js';
import { DEFAULTS } from './defaults.js';
import { ISOLATE } from './isolate.js';
import { MAKE } from './make.js';
import { MEASURE } from './measure.js';
import { OVERCURRENT } from './overcurrent.js';
import { PLACE } from './place.js';
import { PLACE_SUPPLY } from './place-supply.js';
import { RATE } from './rate.js';
import { STANDING } from './standing.js';
import { WIRE } from './wire.js';

/** The sentences of all reasons in English. */
export const ENGLISH: Sayings<Reasons> = {
  ...PLACE,
  ...PLACE_SUPPLY,
  ...RATE,
  ...CHOOSE,
  ...WIRE,
  ...OVERCURRENT,
  ...MAKE,
  ...MEASURE,
  ...ISOLATE,
  ...DEFAULTS,
  ...STANDING,
  'earlier/as-written': ({ text }) => text,
};
