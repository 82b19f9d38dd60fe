import type { Steps } from '../../../model/steps/steps.js';
import type { StepTexts } from '../step-words.js';
import { AC } from './ac.js';
import { DC } from './dc.js';
import { EXPOSURE } from './exposure.js';
import { OVERCURRENT } from './overcurrent.js';
import { REACH } from './reach.js';

/** The words of all steps of calculations in English. */
export const ENGLISH_STEPS: StepTexts<Steps> = {
  ...AC,
  ...DC,
  ...EXPOSURE,
  ...REACH,
  ...OVERCURRENT,
  'earlier/as-written': {
    says: (v) => v.says,
    formula: (v) => v.formula,
    substituted: (v) => v.substituted,
  },
};
