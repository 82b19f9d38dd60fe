import { z } from 'zod';
import type { Plan, PlannedProtector } from '../../model/plan.js';
import { filled } from '../../words/languages.js';
import type { OwnerStrings, PlainLook } from '../../words/languages/owner-strings.js';
import type { DocumentContext } from '../parts/context.js';
import type { Sheet } from '../parts/css.js';
import { wrapped } from '../parts/wrapped.js';
import { HEADER_ROOM, labelSize } from './label-grid.js';
import { lightGroups } from '../parts/owner-lights.js';

export const LabelSchema = z.object({
  title: z.string(),
  draft: z.string(),
  guards: z.string(),
  lights: z.array(z.string()),
  /** Signal word after ANSI Z535.4, and the style of its panel. */
  word: z.string(),
  style: z.enum(['danger', 'warning']),
  hazard: z.string(),
  avoid: z.string(),
  date: z.string(),
  /** Font size in points at which all of it goes into its cell. */
  size: z.number(),
});
export type Label = z.infer<typeof LabelSchema>;

export const LabelsSchema = z.object({
  language: z.string().describe('BCP 47 tag'),
  style: z.string().describe('All CSS: fonts, accent colour, styles and the grid'),
  title: z.string(),
  /** False where the grid leaves no room for a heading above it: then each label's title is a heading. */
  header: z.boolean(),
  headerText: z.string(),
  sheets: z
    .array(z.object({ number: z.number().int(), labels: z.array(LabelSchema) }))
    .describe('One sheet of labels a page'),
  empty: z.string().describe('What the sheet says where there is no protector'),
});
export type LabelsView = z.infer<typeof LabelsSchema>;

/** Sizes that are tried, largest first; a label is read at arm's length, so the last is a last resort. */
const SIZES = [10, 9, 8, 7.5, 7, 6.5, 6, 5.5, 5];
const PADDING = 5;
const LINE = 1.3;
/** As the style of labels sets them. */
const LABEL_TEXT = { family: 'Atkinson' } as const;

/** Height of a label's text at a size: the title, the facts, and the warning with its signal word above it. */
function heightAt(label: Omit<Label, 'size'>, width: number, size: number): number {
  const room = width - 2 * PADDING - 2;
  const count = (text: string, bold = false, share = 1): number =>
    wrapped(text, room / share - 1, { ...LABEL_TEXT, size, weight: bold ? 700 : 400 }).length;
  const title = count(label.title, true, 1.25) * 1.25;
  const facts = [label.draft, label.guards, ...label.lights, label.date].reduce(
    (sum, text) => sum + count(text),
    0,
  );
  const inner = room - 12;
  const warning =
    wrapped(`${label.hazard} ${label.avoid}`, inner, { ...LABEL_TEXT, size }).length +
    wrapped(`⚠ ${label.word}`, inner, { ...LABEL_TEXT, size, weight: 700 }).length;
  return (title + facts + warning) * LINE * size + 2 * PADDING + 14;
}

/** The largest size at which a label goes into its cell. */
function fitted(label: Omit<Label, 'size'>, cell: { width: number; height: number }): Label | undefined {
  const size = SIZES.find((s) => heightAt(label, cell.width, s) <= cell.height);
  return size === undefined ? undefined : { ...label, size };
}

/**
 * Full label, else one that leaves the lights to the owner's sheet, else the bare warning with the tag: what must not be
 * cut is the tag and the warning.
 */
function bestFit(
  full: Omit<Label, 'size'>,
  seeSheet: string,
  cell: { width: number; height: number },
): Label {
  const short = { ...full, lights: [seeSheet] };
  const bare = { ...short, guards: '', avoid: '', lights: [] };
  const least = SIZES.at(-1) ?? 5;
  return (
    fitted(full, cell) ?? fitted(short, cell) ?? fitted(bare, cell) ?? { ...bare, hazard: '', size: least }
  );
}

/** `light 1 on`. */
function lightText(light: { number: number; look: PlainLook }, strings: OwnerStrings): string {
  if (light.look === 'good') return `${strings.looks.good} ${light.number}`;
  return filled(strings.lightAlt, { number: light.number, look: strings.looks[light.look] });
}

/** The signal word of a box and what it says: by the highest voltage of the plan there. */
function hazardOf(
  { wiring }: PlannedProtector,
  { label, warningWord }: OwnerStrings,
): Pick<Label, 'word' | 'style' | 'hazard' | 'avoid'> {
  const warning = { word: warningWord, style: 'warning' } as const;
  if (wiring.hazard === 'arc') return { ...warning, hazard: label.arcHazard, avoid: label.arcAvoid };
  if (wiring.hazard === 'low-voltage')
    return { ...warning, hazard: label.lowVoltageHazard, avoid: label.shockAvoid };
  const danger = { word: label.dangerWord, style: 'danger' } as const;
  return wiring.fedFromTwoSupplies
    ? { ...danger, hazard: label.twoSuppliesHazard, avoid: label.twoSuppliesAvoid }
    : { ...danger, hazard: label.shockHazard, avoid: label.shockAvoid };
}

/** The view of the sheets of labels, on the grid of the settings. */
export function labelsView(
  plan: Plan,
  context: DocumentContext,
  paper: Sheet,
  strings: OwnerStrings,
  style: string,
): LabelsView {
  const grid = context.settings.labels;
  const { label } = strings;
  const cell = labelSize(grid, paper);
  const labels = plan.protectors.map((protector) => {
    const full = {
      title: filled(label.title, { tag: protector.tag }),
      draft: plan.submittable ? '' : strings.draftMark,
      guards: `${label.guards}: ${protector.ports.map((p) => `${p.equipment} ${p.port}`).join(', ')}`,
      lights: lightGroups(plan, protector, strings.states)
        .flatMap((g) => g.states)
        .map((s) => `${s.state}: ${s.lights.map((l) => lightText(l, strings)).join(', ')}`),
      ...hazardOf(protector, strings),
      date: `${label.date}: ${context.date}`,
    };
    return bestFit(full, label.seeSheet, cell);
  });
  const perSheet = grid.columns * grid.rows;
  const title = `${label.sheetTitle}, ${plan.job}`;
  return {
    language: strings.language,
    style,
    title,
    header: grid.marginTop >= HEADER_ROOM,
    headerText: plan.submittable
      ? `${title}, ${context.date}`
      : `${title}, ${context.date}, ${strings.draftMark}`,
    sheets: Array.from({ length: Math.ceil(labels.length / perSheet) }, (_, index) => ({
      number: index + 1,
      labels: labels.slice(index * perSheet, (index + 1) * perSheet),
    })),
    empty: strings.introNone.join(' '),
  };
}
