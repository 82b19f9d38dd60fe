import type { PlannedChannel, PlannedIndicator, PlannedProtector } from '../../model/plan.js';
import { coloursIn } from '../../words/colours.js';
import type { CrewNoteWords, NoteLook, NoteState } from '../../words/languages/crew-note-words.js';
import { ownerStrings } from '../../words/languages.js';
import type { Picture } from './note-kinds.js';

/** States in which nothing lights a light: they tell nothing. */
const SILENT: ReadonlySet<NoteState> = new Set<NoteState>(['source off', 'night', 'still']);

/** How a channel's light looks in one state. */
export interface LookIn {
  readonly state: NoteState;
  readonly look: NoteLook;
}

/** Dark is allowed where the load, or too little speed, holds it below what its light needs. */
function lookOf({ shows, cause, because }: PlannedIndicator): NoteLook {
  if (cause === 'no-indicator') return 'none';
  if (cause === 'output-unknown') return 'unknown';
  if (because.code === 'light/flickers' && because.values.least !== null) return 'flickersOrDark';
  return shows;
}

/** A battery lights it only while the disconnect between them is closed. */
function stateOf({ state, cause }: PlannedIndicator): NoteState | null {
  if (state === 'ground-fault device open') return null;
  return state === 'always' && cause === 'battery-connected' ? 'closed' : state;
}

/** The states that a channel is looked at in, the one that tells first. */
export function looksOf({ partDetails }: PlannedProtector, { indicator }: PlannedChannel): LookIn[] {
  if (partDetails === null) return [{ state: 'always', look: 'unknown' }];
  const all = indicator.flatMap((one) => {
    const state = stateOf(one);
    return state === null ? [] : [{ state, look: lookOf(one) }];
  });
  return [...all.filter(({ state }) => !SILENT.has(state)), ...all.filter(({ state }) => SILENT.has(state))];
}

/** The colour of a light that shines, or how a good flag looks, in the crew's language; `` not stated. */
function colourOf({ partDetails }: PlannedProtector, look: NoteLook, { language }: CrewNoteWords): string {
  const shines = look === 'lit' || look === 'flickers' || look === 'flickersOrDark' || look === 'either';
  const text = look === 'good' ? partDetails?.goodFlag : shines ? partDetails?.indicatorColor : '';
  return coloursIn(text ?? '', ownerStrings(language).colours.light);
}

/** `ON, blue`; `GOOD, green`. */
export function lookText(protector: PlannedProtector, look: NoteLook, words: CrewNoteWords): string {
  const colour = colourOf(protector, look, words);
  return colour === '' ? words.looks[look] : `${words.looks[look]}, ${colour}`;
}

/** The one state that the lights of a picture are drawn in; null: they are looked at in several. */
export function drawnState(picture: Picture): NoteState | null {
  const states = new Set(
    picture.flatMap((one) => one.channels.map((channel) => looksOf(one, channel)[0]?.state ?? 'always')),
  );
  if (states.size > 1) states.delete('always');
  const [first = 'always', ...others] = states;
  return others.length === 0 ? first : null;
}

interface Seen {
  readonly tag: string;
  readonly channel: number;
  readonly look: NoteLook;
}

/** Lights that look alike, told together: `all ON`, `1, 3 ON; 2 OFF`; with the tag before them where two housings differ. */
function told(seen: readonly Seen[], isAll: boolean, words: CrewNoteWords): string {
  const [first] = seen;
  if (first === undefined) return '';
  const { say, looks } = words;
  if (isAll && seen.every(({ look }) => look === first.look)) return say.light(say.all, looks[first.look]);
  const byLook = new Map<string, number[]>();
  const isSeveral = new Set(seen.map(({ tag }) => tag)).size > 1;
  for (const { tag, channel, look } of seen) {
    const key = `${isSeveral ? `${tag} ` : ''}|${looks[look]}`;
    byLook.set(key, [...(byLook.get(key) ?? []), channel]);
  }
  return [...byLook]
    .map(([key, channels]) => {
      const [tag = '', look = ''] = key.split('|');
      return say.light(`${tag}${channels.join(', ')}`, look);
    })
    .join('; ');
}

/** How the lights of a place look in each state, the one that is drawn first: `In sun: 1 ON, 2 OFF.` */
export function lookSentences(picture: Picture, words: CrewNoteWords): string[] {
  const channels = picture.flatMap((one) =>
    one.channels.map((channel) => ({ tag: one.tag, channel: channel.channel, looks: looksOf(one, channel) })),
  );
  const states = [...new Set(channels.flatMap(({ looks }) => looks.map(({ state }) => state)))];
  const telling = states.filter((state) => state !== 'always');
  const named = telling.length === 0 ? states : telling;
  return named.map((state) => {
    const seen = channels.flatMap(({ tag, channel, looks }) => {
      const own = looks.find((one) => one.state === state) ?? looks.find((one) => one.state === 'always');
      return own ? [{ tag, channel, look: own.look }] : [];
    });
    return words.say.state(words.states[state], told(seen, seen.length === channels.length, words));
  });
}

/** True where a light may look either way, so that how it is found is written down. */
export function isWrittenDown(picture: Picture): boolean {
  return picture.some((one) =>
    one.channels.some((channel) =>
      looksOf(one, channel).some(({ look }) => look === 'either' || look === 'flickersOrDark'),
    ),
  );
}
