import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import type { OwnerStrings } from '../../words/languages/owner-strings.js';
import { SvgSchema } from '../drawing/svg.js';
import { roomsOf, whereOnSite } from '../parts/owner-sides.js';
import type { Look, Needs } from './looks.js';
import { lookOf, needsOf } from './looks.js';

/** Protectors of one room that look alike. */
const OwnerBoxSchema = z.object({
  room: z.string().describe('Empty where the box above is in the same room'),
  tags: z
    .array(z.object({ tags: z.array(z.string()), side: z.string(), at: z.string() }))
    .describe('Tags of one side, and what they are at'),
  pictures: z.array(SvgSchema).describe('One for all; one for each where the first day is ticked'),
  texts: z.array(z.string()).describe('What the pictures do not say'),
});
type OwnerBox = z.infer<typeof OwnerBoxSchema>;

export { OwnerBoxSchema };

/** A protector on its way into a box. */
interface Seen {
  readonly tag: string;
  readonly side: string;
  readonly at: string;
  readonly look: Look;
}

function grouped<T>(items: readonly T[], keyOf: (item: T) => string): T[][] {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    const known = groups.get(key);
    if (known === undefined) groups.set(key, [item]);
    else known.push(item);
  }
  return [...groups.values()];
}

const tagsOf = (seen: readonly Seen[]): string => seen.map(({ tag }) => tag).join(', ');

function boxOf(room: string, alike: readonly Seen[]): OwnerBox[] {
  const [first] = alike;
  if (first === undefined) return [];
  const { look } = first;
  const pictures = look.own
    ? alike.map(({ tag }) => look.picture(tag, alike.length === 1 ? '' : tag))
    : [look.picture(tagsOf(alike), '')];
  const sides = grouped(alike, ({ side, at }) => JSON.stringify([side, at]));
  return [
    {
      room,
      tags: sides.flatMap((of) => {
        const [one] = of;
        return one === undefined ? [] : [{ tags: of.map(({ tag }) => tag), side: one.side, at: one.at }];
      }),
      pictures: pictures.filter((picture) => picture !== ''),
      texts: [...look.texts],
    },
  ];
}

/**
 * The protectors as the owner walks to them: room by room, those that look alike together.
 * @returns the boxes, and what the notes and the table of what to do have to say for them
 */
export function ownerBoxes(plan: Plan, strings: OwnerStrings): { boxes: OwnerBox[]; needs: Needs } {
  const rooms = roomsOf(plan, strings);
  const seen = plan.protectors.map((protector) => ({
    tag: protector.tag,
    room: rooms.get(protector.tag) ?? '',
    ...whereOnSite(plan, protector, strings),
    look: lookOf(plan, protector, strings),
  }));
  const boxes = grouped(seen, ({ room }) => room).flatMap((inRoom) =>
    grouped(inRoom, ({ look }) => look.key).flatMap((alike, index) =>
      boxOf(index === 0 ? (alike[0]?.room ?? '') : '', alike),
    ),
  );
  return { boxes, needs: needsOf(seen.map(({ look }) => look)) };
}
