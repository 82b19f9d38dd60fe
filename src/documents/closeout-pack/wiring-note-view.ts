import { z } from 'zod';
import { SvgSchema } from '../drawing/svg.js';
import { BoxIsolationViewSchema } from './isolation-view.js';
import { ReadingRowSchema } from './readings-view.js';
import { CautionSchema } from '../parts/cautions.js';

/** How closely a wiring note is set, so that it keeps to a page of its own: a class of its style. */
export const NoteDensitySchema = z.enum(['usual', 'dense', 'densest']);
export type NoteDensity = z.infer<typeof NoteDensitySchema>;

export const LightRowSchema = z.object({
  /** `1`, or `1, 2, 3` where several channels show the same for the same reason. */
  channel: z.string(),
  conductor: z.string(),
  state: z.string(),
  shows: z.string(),
  because: z.string(),
});

export const WiringNoteSchema = z.object({
  id: z.string(),
  /** True for the first note, which carries the heading of the section. */
  first: z.boolean(),
  density: NoteDensitySchema,
  tag: z.string(),
  housingDrawing: SvgSchema,
  part: z.string(),
  description: z.string(),
  housing: z.string(),
  place: z.string(),
  position: z.string(),
  protects: z.string(),
  ports: z.string(),
  system: z.string(),
  grounding: z.string(),
  strength: z.string(),
  reasons: z.array(z.string()),
  twoSupplies: z.boolean(),
  cautions: z.array(CautionSchema),
  isolation: BoxIsolationViewSchema,
  channels: z.array(
    z.object({
      channel: z.number().int(),
      conductor: z.string(),
      colour: z.string(),
      to: z.string(),
    }),
  ),
  /** Why nothing is opened or measured here; empty: it may be. */
  doNotOpen: z.string(),
  /** What is on and what is off while the readings are taken. */
  measuredState: z.string(),
  readings: z.array(ReadingRowSchema),
  /** How a ground fault shows, and when a reading is due again. */
  watch: z.array(z.string()),
  meter: z.string(),
  clothing: z.string(),
  groundTo: z.string(),
  /** Two facts a row; the second is null in an odd last row. */
  leads: z.array(
    z.object({
      what: z.string(),
      value: z.string(),
      second: z.object({ what: z.string(), value: z.string() }).nullable(),
    }),
  ),
  notes: z.array(z.string()),
  unprotected: z.array(z.object({ conductor: z.string(), because: z.string() })),
  lights: z.array(LightRowSchema),
  indicator: z.string(),
});
export type WiringNote = z.infer<typeof WiringNoteSchema>;
