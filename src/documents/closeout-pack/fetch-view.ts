import { z } from 'zod';
import { byNaturalOrder } from '../../model/natural-order.js';
import type { Plan, PlannedProtector } from '../../model/plan.js';
import { crewDevices } from '../../words/crew-devices.js';
import type { CrewPackWords } from '../../words/languages/crew-pack-words.js';
import { lengthUnitOf, longestLead, type LengthUnit } from '../../words/lengths.js';
import { runsOf, RunsSchema } from '../parts/contents/runs.js';
import { crewTags } from './crew-tags.js';

export const FetchSchema = z.object({
  heading: z.string(),
  columns: z.object({
    part: z.string(),
    quantity: z.string(),
    at: z.string(),
    device: z.string(),
    leads: z.string(),
  }),
  rows: z.array(
    z.object({
      part: z.string(),
      maker: z.string(),
      quantity: z.number().int(),
      tags: RunsSchema,
      devices: z.array(RunsSchema),
      leads: z.array(RunsSchema),
    }),
  ),
  /** What else is fetched; `` nothing. */
  more: z.string(),
  none: z.string().describe('What stands there where nothing is to be fetched'),
});
export type FetchView = z.infer<typeof FetchSchema>;

/** What housings have in common that are fetched for in one row. */
interface FetchRow {
  readonly part: string;
  readonly maker: string;
  readonly devices: readonly string[];
  readonly leads: readonly string[];
}

/** Gauge of line and ground leads, and how long they are together at most. */
function leadTexts(
  { wiring, figures }: PlannedProtector,
  unit: LengthUnit,
  { lead }: CrewPackWords,
): string[] {
  const line = wiring.leadGauge === '' ? (figures?.smallestLead ?? '') : wiring.leadGauge;
  const ground = wiring.leadGauge === '' ? (figures?.smallestGroundLead ?? '') : wiring.leadGauge;
  const gauges =
    line === ground
      ? [line === '' ? lead.byInstructions : lead.both(line)]
      : [
          lead.line(line === '' ? lead.byInstructions : line),
          lead.ground(ground === '' ? lead.byInstructions : ground),
        ];
  return [gauges.join(', '), lead.longest(longestLead(wiring, unit))];
}

/** Parts and material to fetch: those that are alike in part, device and leads in one row. What is there already isn't fetched. */
export function fetchView(plan: Plan, words: CrewPackWords): FetchView {
  const { cover } = words;
  const unit = lengthUnitOf(plan);
  const runs = runsOf(plan);
  const fresh = plan.protectors.filter(({ existing }) => existing === null);
  const found = new Map<string, { readonly row: FetchRow; tags: string[] }>();
  for (const protector of fresh) {
    const row = {
      part: protector.part ?? cover.noPart,
      maker: protector.partDetails?.maker ?? '',
      devices: crewDevices(protector, words),
      leads: leadTexts(protector, unit, words),
    };
    const key = JSON.stringify(row);
    const same = found.get(key) ?? { row, tags: [] };
    same.tags.push(protector.tag);
    found.set(key, same);
  }
  const rows = [...found.values()].sort((a, b) => byNaturalOrder(a.row.part, b.row.part));
  const terminals = fresh.filter(({ wiring }) => wiring.groundTerminal !== null).map(({ tag }) => tag);
  return {
    heading: cover.fetch,
    columns: { ...cover.columns },
    rows: rows.map(({ row: { part, maker, devices, leads }, tags }) => ({
      part,
      maker,
      quantity: tags.length,
      tags: runs(crewTags(tags, words)),
      devices: devices.map(runs),
      leads: leads.map(runs),
    })),
    more:
      terminals.length === 0
        ? ''
        : `${cover.more}: ${cover.groundTerminals(terminals.length, crewTags(terminals, words))}.`,
    none: cover.nothing,
  };
}
