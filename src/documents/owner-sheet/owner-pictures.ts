import { z } from 'zod';
import type { Plan, PlannedProtector } from '../../model/plan.js';
import type { IndicatorCause } from '../../model/words.js';
import { filled } from '../../words/languages.js';
import type { OwnerStrings } from '../../words/languages/owner-strings.js';
import { lightsPicture, PICTURE_ROOM } from '../drawing/lights.js';
import { SvgSchema } from '../drawing/svg.js';
import type { LightGroup } from '../parts/owner-lights.js';
import { causesOfLights, lightGroups, lightsAlt } from '../parts/owner-lights.js';
import { equipmentOf } from '../parts/site-index.js';

export const OwnerProtectorSchema = z.object({
  tag: z.string(),
  place: z.string(),
  guards: z.array(z.string()),
  /** `Picture 3`; `` where each protector has its picture beside it. */
  look: z.string(),
  /** `` where the plan knows no lights, and where the pictures stand together. */
  picture: SvgSchema.or(z.literal('')),
  /** `Light 2: note a`. */
  notes: z.array(z.string()),
});
export type OwnerProtector = z.infer<typeof OwnerProtectorSchema>;

/** A picture that several protectors share. */
export const OwnerLookSchema = z.object({
  /** `Picture 3`. */
  name: z.string(),
  /** `P-1, P-4`. */
  tags: z.string(),
  picture: SvgSchema.or(z.literal('')),
  notes: z.array(z.string()),
});
export type OwnerLook = z.infer<typeof OwnerLookSchema>;

/** Up to here each protector has its picture beside it: that is easiest to follow, and two pages hold it. */
const PICTURE_EACH = 8;
/** A shared picture saves room where there are no more pictures than this share of the protectors. */
const WORTH_SHARING = 0.6;

/** `a`, `b`... `z`, `aa`... */
function letter(index: number): string {
  const last = String.fromCharCode(97 + (index % 26));
  return index < 26 ? last : `${letter(Math.floor(index / 26) - 1)}${last}`;
}

function guardsText(plan: Plan, protector: PlannedProtector, strings: OwnerStrings): string[] {
  const tags = [...new Set(protector.ports.map((p) => p.equipment))];
  const lines = tags.map((tag) =>
    filled(strings.guards, { thing: strings.things[equipmentOf(plan, tag)?.kind ?? 'other'], tag }),
  );
  if (lines.length === 0) lines.push(strings.guardsFirst);
  return protector.wiring.fedFromTwoSupplies ? [...lines, strings.twoSupplies] : lines;
}

/** Where a protector is, in the owner's words. */
export function ownerPlace(protector: PlannedProtector, strings: OwnerStrings): string {
  const place = protector.place === '' ? strings.notStated : protector.place;
  return protector.outdoors ? `${place} (${strings.outdoors})` : place;
}

/** What an owner sees of a protector. */
interface Look {
  /** What tells it from another look. */
  readonly key: string;
  readonly groups: readonly LightGroup[];
  readonly notes: readonly string[];
}

/**
 * How the lights of a protector look, and the notes about them.
 * @param causes letters of the notes so far; a cause that is new gets the next
 */
function lookOf(
  plan: Plan,
  protector: PlannedProtector,
  strings: OwnerStrings,
  causes: Map<IndicatorCause, string>,
): Look {
  const lettersOf = new Map<string, string[]>();
  const about = causesOfLights(protector);
  for (const { cause, numbers } of about) {
    const mark = causes.get(cause) ?? letter(causes.size);
    causes.set(cause, mark);
    const lights = numbers.join(', ');
    lettersOf.set(lights, [...(lettersOf.get(lights) ?? []), mark]);
  }
  const notes = [...lettersOf].map(([number, marks]) => {
    return `${filled(strings.light, { number })}: ${filled(strings.noteInLine, { letters: marks.join(', ') })}`;
  });
  const flag = flagNote(protector, strings);
  if (flag !== '') notes.push(flag);
  const groups = lightGroups(plan, protector, strings.states);
  const states = groups.map((g) => g.states.map(({ name, lights }) => ({ name, lights })));
  return { key: JSON.stringify([states, about, flag]), groups, notes };
}

/** How a good flag and a used-up one look, in the words of the catalogue; `` where it has none. */
function flagNote({ partDetails }: PlannedProtector, strings: OwnerStrings): string {
  if (partDetails?.indicator !== 'flag') return '';
  const { goodFlag: good, usedFlag: used, indicatorColor } = partDetails;
  const told = [
    ...(good === '' ? [] : [filled(strings.goodFlag, { good })]),
    ...(used === '' ? [] : [filled(strings.usedFlag, { used })]),
  ];
  return told.length > 0 ? told.join(' ') : indicatorColor;
}

function pictureOf({ groups }: Look, tags: string, strings: OwnerStrings, room: number): string {
  return groups.length === 0 ? '' : lightsPicture(groups, strings, lightsAlt(tags, groups, strings), room);
}

/**
 * The protectors as the owner's sheet shows them: each with its own picture, or, where there are many and their lights
 * look alike, with the name of a picture that they share.
 * @param causes takes the notes that the pictures need, with the letter of each
 */
export function ownerPictures(
  plan: Plan,
  strings: OwnerStrings,
  causes: Map<IndicatorCause, string>,
): { protectors: OwnerProtector[]; looks: OwnerLook[] } {
  const pictured = plan.protectors.map((protector) => {
    const look = lookOf(plan, protector, strings, causes);
    const { tag } = protector;
    const place = ownerPlace(protector, strings);
    return { look, key: look.key, tag, place, guards: guardsText(plan, protector, strings) };
  });
  const keys = [...new Set(pictured.map((s) => s.key))];
  if (pictured.length <= PICTURE_EACH || keys.length > WORTH_SHARING * pictured.length) {
    const protectors = pictured.map(({ look, tag, place, guards }) => {
      const picture = pictureOf(look, tag, strings, PICTURE_ROOM.beside);
      return { tag, place, guards, look: '', picture, notes: [...look.notes] };
    });
    return { protectors, looks: [] };
  }
  const nameOf = (key: string): string => filled(strings.look, { number: keys.indexOf(key) + 1 });
  const looks = keys.flatMap((key) => {
    const sharing = pictured.filter((s) => s.key === key);
    const look = sharing[0]?.look;
    if (look === undefined) return [];
    const tags = sharing.map((s) => s.tag).join(', ');
    const picture = pictureOf(look, tags, strings, PICTURE_ROOM.alone);
    return [{ name: nameOf(key), tags, picture, notes: [...look.notes] }];
  });
  const protectors = pictured.map(({ key, tag, place, guards }) => {
    return { tag, place, guards, look: nameOf(key), picture: '', notes: [] };
  });
  return { protectors, looks };
}
