import { z } from 'zod';
import { SvgSchema } from '../drawing/svg.js';
import { RunsSchema } from '../parts/contents/runs.js';
import { TitleStripSchema } from './title-strip.js';

const PartSchema = z.object({
  name: z.string().describe('The block that it is of, a class of the styles'),
  html: z.string().describe('What stands of the block here, as its own template made it'),
});

/** A sheet as its template shows it; lengths in mm. */
const SheetSchema = z.object({
  number: z.string().describe('Number of the sheet, E-601'),
  index: z.number().int(),
  of: z.number().int(),
  first: z.boolean(),
  title: z.string(),
  titlePieces: RunsSchema.describe('The title in pieces: no word is broken at its hyphen'),
  panels: z.array(
    z.object({
      bands: z.array(
        z.object({
          columns: z.array(
            z.object({
              width: z.number(),
              drawing: z
                .union([SvgSchema, z.literal('')])
                .describe('A sheet of the one-line drawing, or nothing'),
              parts: z.array(PartSchema),
            }),
          ),
        }),
      ),
    }),
  ),
});

/** What the permit sheets show. */
export const PermitSheetSchema = z.object({
  language: z.literal('en'),
  title: z.string().describe('Title of the file, with the id of the job'),
  style: z.string().describe('All CSS: fonts, accent colour, styles and page rules'),
  strip: TitleStripSchema.describe('The title strip of every sheet'),
  watermark: z.string().describe('Path of the mark over the sheets of a draft'),
  sheets: z.array(SheetSchema),
});
export type PermitSheetView = z.infer<typeof PermitSheetSchema>;
export type SheetView = PermitSheetView['sheets'][number];
