import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import type { OwnerStrings } from '../../words/languages/owner-strings.js';
import type { AsBuilt } from '../parts/as-built.js';
import type { DocumentContext } from '../parts/context.js';
import type { Sheet } from '../parts/css.js';
import { lineWidth } from '../parts/text-width.js';
import { wrapped } from '../parts/wrapped.js';
import type { Label, Unsized } from './label.js';
import { LabelSchema, labelsOf } from './label.js';
import { HEADER_ROOM, labelSize } from './label-grid.js';
import type { Plate } from './plates.js';
import { PlateSchema, platesOf } from './plates.js';

export const LabelsSchema = z.object({
  language: z.string().describe('BCP 47 tag'),
  style: z.string().describe('All CSS: fonts, accent colour, styles and the grid'),
  title: z.string(),
  /** False where the grid leaves no room for a heading above it: then each label's tag is a heading. */
  header: z.boolean(),
  headerText: z.string(),
  sheets: z
    .array(
      z.object({
        number: z.number().int(),
        labels: z.array(LabelSchema),
        plates: z.array(PlateSchema).describe('In the cells behind the labels'),
      }),
    )
    .describe('One sheet of labels a page'),
  empty: z.string().describe('What the sheet says where there is no label'),
});
export type LabelsView = z.infer<typeof LabelsSchema>;

/** Sizes that are tried, largest first; a label is read at arm's length, so the last is a last resort. */
const SIZES = [11, 10.5, 10, 9.5, 9, 8.5, 8, 7.5, 7, 6.5, 6, 5.5, 5];
const PADDING = 6;
const LINE = 1.25;
/** Of the tag and of what stands beside it, as the style has them. */
const TAG = 2.2;
/** In the share of a line that the blanks and the figures of a fact take of half a label. */
const FACTS_A_LINE = 2;

interface Cell {
  readonly width: number;
  readonly height: number;
}

/** Height of a label's text at a size. */
function heightAt(label: Unsized, { width }: Cell, size: number): number {
  const room = width - 2 * PADDING - 4;
  const count = (text: string, bold = false, share = 1, within = room): number =>
    text === ''
      ? 0
      : wrapped(text, within / share - 2, { size, weight: bold ? 700 : 400, family: 'Atkinson' }).length;
  const tag = count(label.tag, true, TAG) * TAG;
  const beside = room - lineWidth(label.tag, size * TAG, 700, 'Atkinson') - 10;
  const head = Math.max(
    tag,
    beside > 60
      ? count(label.side, true, 1, beside) + count(label.where, false, 1, beside)
      : tag + count(label.side, true) + count(label.where),
  );
  const texts = [...label.lights, label.call];
  const lines = texts.reduce((sum, text) => sum + count(text), count(label.live, true));
  const column = room / FACTS_A_LINE - 8;
  const facts = label.facts.map(({ what, value }) =>
    count(`${what}: ${value === '' ? '______' : value}`, false, 1, column),
  );
  let grid = 0;
  for (let index = 0; index < facts.length; index += FACTS_A_LINE)
    grid += Math.max(...facts.slice(index, index + FACTS_A_LINE)) * 1.15;
  const warning =
    count(`⚠⚠ ${label.word}`, true, 1.2) * 1.2 + count(`${label.hazard} ${label.avoid}`, false, 1, room - 12);
  return (head + lines + grid + warning) * LINE * size + 2 * PADDING + 22;
}

/** The largest size at which a label goes into its cell. */
function fitted(label: Unsized, cell: Cell): Label | undefined {
  const size = SIZES.find((s) => heightAt(label, cell, s) <= cell.height);
  return size === undefined ? undefined : { ...label, size };
}

/**
 * Full label, else one that leaves the lights to the owner's sheet, else the bare warning with the tag: what must not be
 * cut is the tag, what stays live and the warning.
 */
function bestFit(full: Unsized, seeSheet: string, cell: Cell): Label {
  const short = { ...full, lights: [seeSheet], facts: [] };
  const bare = { ...short, where: '', side: '', call: '', avoid: '', lights: [] };
  const least = SIZES.at(-1) ?? 5;
  return (
    fitted(full, cell) ??
    fitted(short, cell) ??
    fitted(bare, cell) ?? { ...bare, live: '', hazard: '', size: least }
  );
}

/** Labels, then plates, on sheets of so many cells. */
function onSheets(labels: readonly Label[], plates: readonly Plate[], cells: number): LabelsView['sheets'] {
  const all = [...labels.map((label) => ({ label })), ...plates.map((plate) => ({ plate }))];
  return Array.from({ length: Math.ceil(all.length / cells) }, (_, index) => {
    const here = all.slice(index * cells, (index + 1) * cells);
    return {
      number: index + 1,
      labels: here.flatMap((one) => ('label' in one ? [one.label] : [])),
      plates: here.flatMap((one) => ('plate' in one ? [one.plate] : [])),
    };
  });
}

/** The view of the sheets of labels, on the grid of the settings; a draft has none. */
export function labelsView(
  plan: Plan,
  context: DocumentContext,
  paper: Sheet,
  strings: OwnerStrings,
  style: string,
  built?: AsBuilt,
): LabelsView {
  const { labels: grid, plates, company } = context.settings;
  const { label } = strings;
  const cell = labelSize(grid, paper);
  const full = plan.submittable ? labelsOf({ plan, strings, phone: company.phone, built }) : [];
  const labels = full.map((one) => bestFit(one, label.seeSheet, cell));
  const made = built === undefined ? 'planned' : built.made === 'deviating' ? 'built' : built.made;
  const title = `${label.sheetTitle}, ${plan.job}, ${label.made[made]}`;
  return {
    language: strings.language,
    style,
    title,
    header: grid.marginTop >= HEADER_ROOM,
    headerText: plan.submittable
      ? `${title}, ${context.date}`
      : `${title}, ${context.date}, ${strings.draftMark}`,
    sheets: onSheets(labels, plates && plan.submittable ? platesOf(plan) : [], grid.columns * grid.rows),
    empty: plan.submittable ? strings.none : label.noneOfDraft,
  };
}
