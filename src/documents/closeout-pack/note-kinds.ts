import type { Plan, PlannedProtector } from '../../model/plan.js';
import type { PlannedBand } from '../../model/planned-measuring.js';
import { equipmentOf } from '../parts/site-index.js';
import { mayGas } from '../parts/cautions.js';
import { neverSure } from '../parts/sure-colours.js';

/** The housings of one place: they are drawn in one picture. */
export type Picture = readonly [PlannedProtector, ...PlannedProtector[]];

/** Places whose pictures are alike: they share a wiring note, with a row for each tag. */
export type NoteKind = readonly [Picture, ...Picture[]];

/** Rows of tags that stand beside a picture. */
export const BESIDE = 4;
/** Rows of tags on a page without a picture. */
const ALONE = 8;
/** Rows of channels that a picture holds. */
const CHANNELS = 6;

/** Housings of one placement follow each other; more channels than one picture holds stand in several. */
function pictures({ protectors }: Plan): Picture[] {
  const found: PlannedProtector[][] = [];
  for (const one of protectors) {
    const last = found.at(-1);
    const channels = [...(last ?? []), one].reduce((sum, { channels: each }) => sum + each.length, 0);
    if (last && one.housing.number > 1 && channels <= CHANNELS) last.push(one);
    else found.push([one]);
  }
  return found.map(([first, ...rest]) => {
    if (first === undefined) throw new Error('a picture without a housing');
    return [first, ...rest];
  });
}

/** Together, of any type: the union of the types of reasons is too large to be named. */
const all = (...values: readonly unknown[]): unknown => values;

/** It names the converter of each place. */
const STAY_CHARGED = 'wiring-note/stay-charged';

function bandKind({ between, reads, fault, due, low, high }: PlannedBand): readonly unknown[] {
  const points = between.map(({ wire, to, sign }) => [wire.name, to?.name, sign]);
  const told: unknown[] = [reads, fault, due];
  return [points, told, low === null, high === null];
}

/** What the picture and the steps of a housing are made of, but for tags of what stands there. */
function likeness(plan: Plan, one: PlannedProtector): unknown {
  const { wiring, channels, overcurrent, partDetails, ports } = one;
  const { measuring, isolation } = wiring;
  const state = measuring.state?.values as { [name: string]: unknown } | undefined;
  const off = state?.['off'];
  const alike: unknown[] = [
    all(one.part, one.existing, one.system, one.grounding, one.housing.of, one.position.code, wiring.hazard),
    all(partDetails?.indicator, partDetails?.indicatorColor, partDetails?.goodFlag, one.required.current),
    ports.map(({ port }) => port.replace(/\d+$/, '')),
    channels.map(({ indicator, wire, ...rest }) => ({
      ...rest,
      wire: { ...wire, port: wire.port?.replace(/\d+$/, '') ?? null },
      lights: indicator.map(({ state: when, shows, cause }): unknown => [when, shows, cause]),
    })),
    neverSure(one),
    overcurrent.map(({ port, because, ...rest }): unknown => [port.replace(/\d+$/, ''), because.code, rest]),
    all(one.figures?.smallestLead, one.figures?.smallestGroundLead, one.figures?.leadsRestOn),
    all(wiring.groundTo, wiring.groundTerminal, wiring.fedFromTwoSupplies, wiring.unprotected),
    all(wiring.leadGauge, wiring.leadLengthLimit, wiring.leadLengthPlanned, wiring.torque, wiring.wireRange),
    (wiring.notes as readonly { readonly code: string }[]).filter(({ code }) => code !== STAY_CHARGED),
    all(isolation.part, isolation.steps, isolation.live, isolation.unknown),
    all(measuring.state?.code, {
      ...state,
      sources: null,
      off: Array.isArray(off) ? [...(off as readonly string[])].sort() : off,
    }),
    measuring.bands.map(bandKind),
    all(measuring.meter?.says, measuring.clothing?.says.code),
    ports.some(({ equipment }) => mayGas(equipmentOf(plan, equipment))),
  ];
  return alike;
}

/**
 * The wiring notes of a job: places that are alike in part, system, conductors, ground, overcurrent device and lights are one kind.
 * @returns in the order of their first tags
 */
export function noteKinds(plan: Plan): NoteKind[] {
  const kinds = new Map<string, Picture[]>();
  for (const picture of pictures(plan)) {
    const key = JSON.stringify(picture.map((one) => likeness(plan, one)));
    const alike = kinds.get(key);
    if (alike) alike.push(picture);
    else kinds.set(key, [picture]);
  }
  return [...kinds.values()].map(([first, ...rest]) => {
    if (first === undefined) throw new Error('a kind without a picture');
    return [first, ...rest];
  });
}

/**
 * The pages of one kind: tags beside the picture first, then those that stand on pages of their own.
 * @returns the pictures whose tags stand on each page, in order
 */
export function pagesOfKind(kind: NoteKind): NoteKind[] {
  const pages: Picture[][] = [];
  let room = BESIDE;
  for (const picture of kind) {
    const last = pages.at(-1);
    const rows = (last ?? []).reduce((sum, { length }) => sum + length, 0) + picture.length;
    if (last && rows <= room) last.push(picture);
    else {
      if (last) room = ALONE;
      pages.push([picture]);
    }
  }
  return pages.map(([first, ...rest]) => {
    if (first === undefined) throw new Error('a page without a picture');
    return [first, ...rest];
  });
}
