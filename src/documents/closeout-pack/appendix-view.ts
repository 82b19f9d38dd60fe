import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import { portInWords } from '../../words/port-words.js';
import { say } from '../../words/reasons/say.js';
import { tagList } from '../../words/tag-list.js';
import { leftOutParts } from '../parts/calculations.js';
import type { DocumentContext } from '../parts/context.js';
import { EquipmentViewSchema, factsByOrigin, notPlacedViews, siteView } from '../parts/site.js';

/** What stands at the end of the pack when it is asked for; each is null where it isn't. Only the office reads it, in English. */
export const PackAppendixSchema = z.object({
  /** Parts of the catalogue that were left out, with why, and the protectors that each reason holds for. */
  rejected: z
    .object({
      parts: z.array(
        z.object({ part: z.string(), reasons: z.array(z.object({ because: z.string(), tags: z.string() })) }),
      ),
    })
    .nullable(),
  /** Why each protector is there, and where each fact was read. */
  trace: z
    .object({
      protectors: z.array(
        z.object({
          tag: z.string(),
          reasons: z.array(z.object({ strength: z.string(), because: z.string() })),
        }),
      ),
      facts: z.array(z.object({ from: z.string(), values: z.string() })),
      equipments: z.array(EquipmentViewSchema),
    })
    .nullable(),
  /** Ports without a protector, with why. */
  bare: z
    .object({
      ports: z.array(
        z.object({ equipment: z.string(), port: z.string(), because: z.string(), open: z.boolean() }),
      ),
    })
    .nullable(),
});
export type PackAppendixView = z.infer<typeof PackAppendixSchema>;

const splitTags = (tags: string): string => tagList(tags.split(', '));

function rejectedView(plan: Plan): PackAppendixView['rejected'] {
  const parts = leftOutParts(plan).map(({ part, reasons }) => ({
    part,
    reasons: reasons.map(({ because, tags }) => ({ because, tags: splitTags(tags) })),
  }));
  return { parts };
}

function traceView(plan: Plan): PackAppendixView['trace'] {
  return {
    protectors: plan.protectors.map(({ tag, reasons }) => ({
      tag,
      reasons: reasons.map(({ strength, because }) => ({ strength, because: say(because) })),
    })),
    facts: factsByOrigin(plan.facts),
    equipments: siteView(plan).equipments,
  };
}

function bareView(plan: Plan): PackAppendixView['bare'] {
  const ports = notPlacedViews(plan).map(({ equipment, port, because, open }) => ({
    equipment,
    port: portInWords(port),
    because,
    open,
  }));
  return { ports };
}

/** What was asked for beside the pack. */
export function packAppendixView(plan: Plan, { appendices = [] }: DocumentContext): PackAppendixView {
  const asked = new Set(appendices);
  return {
    rejected: asked.has('rejected') ? rejectedView(plan) : null,
    trace: asked.has('trace') ? traceView(plan) : null,
    bare: asked.has('bare') ? bareView(plan) : null,
  };
}
