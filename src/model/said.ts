import { z } from 'zod';
import { reason, type Reason } from './reason.js';

/** Figures: V, A, m, C, rounded to 0.01 where nothing else is said; null is "unknown". */
export const figure = z.number().nullable();

const isSet = (value: unknown): value is object => typeof value === 'object' && value !== null;

/** A reason as data; its sentence is made where it is printed. Of a plan of before a sentence is all there is. */
export const saidSchema: z.ZodType<Reason, Reason | string> = z.union([
  z.custom<Reason>((value) => isSet(value) && 'code' in value && 'values' in value && isSet(value.values)),
  z.string().transform((text) => reason('earlier/as-written', { text })),
]);
