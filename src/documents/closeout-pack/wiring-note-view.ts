import { z } from 'zod';
import { RunsSchema } from '../parts/contents/runs.js';
import { SvgSchema } from '../drawing/svg.js';
import { NoteDangerSchema } from './note-danger.js';
import { NoteReadingSchema } from './note-readings.js';
import { NoteStepSchema } from './note-steps.js';

const NoteRowSchema = z.object({
  tag: z.string(),
  place: z.string(),
  protects: RunsSchema,
  /** What it is measured on; nothing where a step says it for all rows. */
  source: RunsSchema,
  /** As recorded, else as the list has it; `` is written in, and so the others. */
  serial: z.string(),
  torque: z.string(),
  lead: z.string(),
  /** A box in the row for each column of volts found, with what was. */
  boxes: z.array(z.string()),
  /** The points that volts are found at, each with a box in a line of its own below; none where they have columns, or none here. */
  probes: z.array(z.object({ label: z.string(), found: z.string() })),
});

/** A page of a wiring note: a picture with its steps and up to four tags, or further tags of the same kind. */
export const WiringNoteSchema = z.object({
  id: z.string(),
  /** The heading of the section, on the first page; else ``. */
  heading: z.string(),
  /** All tags of the page: `P-3 to P-6`. */
  tags: z.string(),
  part: z.string(),
  /** `120/240 V, solidly grounded`. */
  system: z.string(),
  danger: NoteDangerSchema,
  /** `` on a page of further tags. */
  picture: z.union([SvgSchema, z.literal('')]),
  /** On a page of further tags: whose picture it is, and the figures once more. */
  continued: z.array(z.string()),
  /** With what, in what clothing and on what it is measured. */
  conditions: z.array(z.string()),
  /** Heads of the tables' columns. */
  heads: z.object({
    tag: z.string(),
    measure: z.string(),
    expect: z.string(),
    stop: z.string(),
    /** `` where each row of the tags has boxes of its own. */
    found: z.string(),
    place: z.string(),
    protects: z.string(),
    source: z.string(),
    torque: z.string(),
    lead: z.string(),
    serial: z.string(),
    /** Columns of volts found, by the points of their probes. */
    points: z.array(z.string()),
    columns: z.number().int(),
    foundInRow: z.string(),
    hasTags: z.boolean(),
  }),
  readings: z.array(NoteReadingSchema),
  readingColumns: z.number().int(),
  /** How a ground fault shows, and when a reading is due again. */
  watch: z.array(z.string()),
  rows: z.array(NoteRowSchema),
  /** By their order, from 1; none on a page of further tags. */
  steps: z.array(NoteStepSchema),
});
export type WiringNote = z.infer<typeof WiringNoteSchema>;
