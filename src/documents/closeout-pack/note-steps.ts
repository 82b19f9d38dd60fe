import { z } from 'zod';
import { byNaturalOrder } from '../../model/natural-order.js';
import type { Plan, PlannedProtector } from '../../model/plan.js';
import type { Reason } from '../../model/reason.js';
import { crewSay } from '../../words/crew-notes.js';
import type { CrewNoteWords, StepName } from '../../words/languages/crew-note-words.js';
import { unparted } from '../../words/unparted.js';
import { boxSteps } from './isolation-steps.js';
import type { NoteKind } from './note-kinds.js';
import { isWrittenDown, lookSentences } from './note-lights.js';
import { noteDevice } from './note-device.js';

/** One numbered step: what is done, in bold, and how. */
export const NoteStepSchema = z.object({ does: z.string(), how: z.string() });
export type NoteStep = z.infer<typeof NoteStepSchema>;

/** In the order of the work. */
const ORDER: readonly StepName[] = [
  'measure',
  'lock',
  'prove',
  'mount',
  'connect',
  'lead',
  'torque',
  'photograph',
  'close',
  'energise',
  'look',
];

/**
 * With what, in what clothing and on what a place is measured; of several places each row of the table names its own source.
 * @returns sentences; what is off in natural order
 */
export function measuredOn(page: NoteKind, words: CrewNoteWords): string[] {
  const { measuring } = page[0][0].wiring;
  const { state, meter, clothing } = measuring;
  if (state?.code === 'measure-state/do-not-open') return [];
  const said = (one: { says: Reason } | null): string[] =>
    one === null ? [] : [crewSay(one.says, words.language)];
  const on = state === null ? [] : [crewSay(inOrder(state, isShared(page), words), words.language)];
  return [...said(clothing), ...said(meter), ...on];
}

/** True where all places of a page are measured on the same sources. */
export function isShared(page: NoteKind): boolean {
  return new Set(page.map(([one]) => JSON.stringify(sourcesOf(one)))).size === 1;
}

/** What gives a place its voltage. */
export function sourcesOf({ wiring }: PlannedProtector): readonly string[] {
  const { state } = wiring.measuring;
  return state?.code === 'measure-state/sources-on' ? state.values.sources : [];
}

/** What is off in natural order; of several places the source that each row names. */
function inOrder(state: Reason, isOfAll: boolean, words: CrewNoteWords): Reason {
  if (state.code !== 'measure-state/sources-on') return state;
  const { sources, off } = state.values;
  const named = isOfAll ? sources : [words.say.eachSource];
  return {
    code: state.code,
    values: { ...state.values, sources: named, off: [...off].sort(byNaturalOrder) },
  };
}

function notes(
  protectors: readonly PlannedProtector[],
  codes: readonly string[],
  words: CrewNoteWords,
): string[] {
  const all = protectors.flatMap(({ wiring }) => wiring.notes).filter(({ code }) => codes.includes(code));
  const each = new Map(all.map((one) => [JSON.stringify(one), one]));
  return [...each.values()].map((one) => crewSay(one, words.language));
}

const CHARGED = ['wiring-note/stay-charged'];
/** Said where conductors are connected; that leads are short is drawn. */
const CONNECTING = [
  'wiring-note/current-not-known',
  'wiring-note/grounded-conductor',
  'wiring-note/thin-lead',
  'overcurrent-note/straight-through',
  'overcurrent-note/single-and-three-phase',
  'overcurrent-note/poles-in-words',
  'overcurrent-note/one-for-each-port',
  'overcurrent-note/one-wire-a-terminal',
];

/** The tags of all places of a page whose DC terminals stay charged stand in one sentence. */
export function charged(page: NoteKind, words: CrewNoteWords): string[] {
  const tags = new Set<string>();
  for (const { wiring } of page.flat()) {
    for (const one of wiring.notes) {
      if (one.code === 'wiring-note/stay-charged') for (const tag of one.values.tags) tags.add(tag);
    }
  }
  const all = [...tags].sort(byNaturalOrder);
  return all.length === 0 ? [] : [crewSay({ code: CHARGED[0] ?? '', values: { tags: all } }, words.language)];
}

function terminal({ wiring: { groundTerminal } }: PlannedProtector, words: CrewNoteWords): string[] {
  if (groundTerminal === null) return [];
  const { language, say } = words;
  const { fit, lands, never, ask } = groundTerminal;
  const landed = lands.map((one) => crewSay(one, language)).join(', ');
  return [
    say.lands(crewSay(fit, language), landed),
    `${crewSay(never, language)}.`,
    `${crewSay(ask, language)}.`,
  ];
}

function connecting(page: NoteKind, words: CrewNoteWords): string[] {
  const [picture] = page;
  const [first] = picture;
  const { unprotected } = first.wiring;
  const open = unprotected.filter(({ because }) => because.code === 'neutral/no-channel-left');
  return [
    words.say.asDrawn,
    ...notes(picture, CONNECTING, words),
    ...terminal(first, words),
    ...open.slice(0, 1).map(({ because }) => crewSay(because, words.language)),
  ];
}

function hasDevice(page: NoteKind, words: CrewNoteWords): boolean {
  return page[0].some((one) => one.overcurrent.some((device) => noteDevice(device, one, words).isFitted));
}

/** `1 to 6`, `1, 2, 4`. */
function stepsText(numbers: readonly number[], { to }: CrewNoteWords): string {
  const [first = 0] = numbers;
  const last = numbers.at(-1) ?? 0;
  const isRun = numbers.length > 2 && last - first === numbers.length - 1;
  return isRun ? `${String(first)} ${to} ${String(last)}` : numbers.join(', ');
}

/** Conductors ahead of the disconnect of an array: nothing on the isolation page makes them dead. */
function isSunlit({ wiring }: PlannedProtector): boolean {
  return wiring.isolation.live.some(({ what }) => what.code === 'live/array-conductors');
}

/**
 * The steps of a wiring note, numbered by their order without a gap: measure with the sources on, make dead, connect, close, make live.
 */
export function noteSteps(plan: Plan, page: NoteKind, words: CrewNoteWords): NoteStep[] {
  const [picture] = page;
  const [first] = picture;
  const { say, language } = words;
  const { opening, proving } = boxSteps(plan, first.wiring.isolation);
  const part = plan.isolation.parts.length > 1 ? String(first.wiring.isolation.part ?? '') : '';
  const { torque, measuring } = first.wiring;
  const isClosed = measuring.state?.code === 'measure-state/do-not-open';
  const how: { readonly [S in StepName]: readonly string[] } = {
    measure: [isClosed ? say.notYet : say.outside],
    lock: [opening.length === 0 ? say.noSteps : say.isolationSteps(stepsText(opening, words), part)],
    prove: [
      ...(isSunlit(first) ? [say.coverModules] : []),
      ...proving.map((number) => say.proveStep(String(number))),
      ...charged(page, words),
    ],
    mount: [crewSay(first.position, language)],
    connect: connecting(page, words),
    lead: [say.writeLength],
    torque: [torque === null ? say.byInstructions : say.eachTerminal(unparted(torque))],
    photograph: [],
    close: [],
    energise: [say.wayBack, ...(hasDevice(page, words) ? [say.deviceLast] : [])],
    look: [...lookSentences(picture, words), ...(isWrittenDown(picture) ? [say.writeDown] : [])],
  };
  return ORDER.map((step) => ({
    does: words.steps[step],
    how: how[step].join(' '),
  }));
}
