import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import { filled } from '../../words/languages.js';
import type { OwnerStrings } from '../../words/languages/owner-strings.js';
import { SvgSchema } from '../drawing/svg.js';
import { shortened } from '../parts/css.js';
import type { AsBuilt } from '../parts/as-built.js';
import { roomsOf, whereOnSite } from '../parts/owner-sides.js';
import type { Look, Needs } from './looks.js';
import { lookOf, needsOf } from './looks.js';
import { seenElse } from './first-day.js';

/** Protectors that look alike, room by room. */
const OwnerBoxSchema = z.object({
  begins: z.boolean().describe('False where the box above is in the same room'),
  rooms: z.array(
    z.object({
      room: z.string().describe('Printed small where the box above is in the same room'),
      tags: z
        .array(z.object({ tags: z.array(z.string()), side: z.string(), at: z.string() }))
        .describe('Tags of one side, and what they are at'),
    }),
  ),
  pictures: z.array(SvgSchema).describe('One for all; one for each where the first day is ticked'),
  texts: z.array(z.string()).describe('What the pictures do not say'),
  brief: z.boolean().describe('True where those texts stand in a narrow column too'),
});
type OwnerBox = z.infer<typeof OwnerBoxSchema>;

export { OwnerBoxSchema };

/** A protector on its way into a box. */
interface Seen {
  readonly tag: string;
  readonly room: string;
  readonly side: string;
  readonly at: string;
  readonly look: Look;
  readonly roof: boolean;
}

/** A place on a roof, in the words of a list. */
const ROOF = /\b(?:roof|rooftop|tejado|techo|azotea)s?\b/iu;

/** Characters of a room's name: a box is never higher than a page. */
const ROOM_NAME = 60;
/** Characters that a narrow column holds in the height of a picture. */
const BRIEF = 48;

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

/** What must be alike for a box to be shared: how to look at it, too. */
const keyOf = ({ look, roof }: Seen): string => `${roof ? 'roof ' : ''}${look.key}`;

const tagsOf = (seen: readonly Seen[]): string[] => seen.map(({ tag }) => tag);

/** The tags of one room by their side. */
function sidesOf(seen: readonly Seen[]): OwnerBox['rooms'][number]['tags'] {
  return grouped(seen, ({ side, at }) => JSON.stringify([side, at])).flatMap((of) => {
    const [one] = of;
    return one === undefined ? [] : [{ tags: tagsOf(of), side: one.side, at: one.at }];
  });
}

/**
 * @param begins false where the box above is in the same room
 * @param alike protectors that look alike
 */
function boxOf(begins: boolean, alike: readonly Seen[], strings: OwnerStrings): OwnerBox[] {
  const [first] = alike;
  if (first === undefined) return [];
  const { look } = first;
  const pictures = look.own
    ? alike.map(({ tag }) => look.picture(tag, alike.length === 1 ? '' : tag))
    : [look.picture(tagsOf(alike).join(', '), '')];
  const rooms = grouped(alike, ({ room }) => room).map((inRoom) => {
    // Below its own room, the thing that it is at tells where; a row that names no thing has the room again.
    const named = begins || inRoom.some(({ at }) => at === '');
    return { room: named ? shortened(inRoom[0]?.room ?? '', ROOM_NAME) : '', tags: sidesOf(inRoom) };
  });
  const each = alike.length > 1 && !look.own && look.has !== '';
  const texts = [
    ...(first.roof ? [strings.boxes.roof] : []),
    ...(each ? [filled(strings.each, { lights: look.has })] : []),
    ...look.texts,
  ];
  return [
    {
      begins,
      rooms,
      pictures: pictures.filter((picture) => picture !== ''),
      texts,
      brief: texts.join(' ').length <= BRIEF,
    },
  ];
}

/**
 * The protectors as the owner walks to them: room by room, those that look alike together. Rooms in which all look alike, and as in
 * another such room, share a box.
 * @param built what came back from the work; undefined: nothing yet
 * @returns the boxes, and what the notes and the table of what to do have to say for them
 */
export function ownerBoxes(
  plan: Plan,
  strings: OwnerStrings,
  built?: AsBuilt,
): { boxes: OwnerBox[]; needs: Needs } {
  const rooms = roomsOf(plan, strings);
  const seen = plan.protectors.map((protector) => ({
    tag: protector.tag,
    room: rooms.get(protector.tag) ?? '',
    ...whereOnSite(plan, protector, strings),
    look: lookOf(plan, protector, strings, seenElse(protector.tag, built, strings)),
    roof: ROOF.test(protector.place),
  }));
  const looksOf = grouped(seen, ({ room }) => room).map((inRoom) => ({
    inRoom,
    looks: grouped(inRoom, keyOf),
  }));
  const stops = grouped(looksOf, ({ inRoom, looks }) => {
    const [one] = inRoom;
    return looks.length === 1 ? `look ${one === undefined ? '' : keyOf(one)}` : `room ${one?.room ?? ''}`;
  });
  const boxes = stops.flatMap((stop) => {
    const together = stop.flatMap(({ inRoom }) => inRoom);
    // What is ticked has a row each: a page may end between two of them.
    const rows = grouped(together, (one) => `${one.look.own ? one.tag : ''} ${keyOf(one)}`);
    return rows.flatMap((alike, index) =>
      boxOf(rows[index - 1]?.[0]?.room !== alike[0]?.room, alike, strings),
    );
  });
  return { boxes, needs: needsOf(seen.map(({ look }) => look)) };
}
