import type { Plan, PlannedChannel, PlannedProtector } from '../../model/plan.js';
import { coloursIn } from '../../words/colours.js';
import { crewSay } from '../../words/crew-notes.js';
import type { CrewNoteWords, NoteLook } from '../../words/languages/crew-note-words.js';
import { ownerStrings } from '../../words/languages.js';
import { longestLead, type LengthUnit } from '../../words/lengths.js';
import { unparted } from '../../words/unparted.js';
import { wiringPicture, type DrawnHousing, type WiredChannel } from '../drawing/housing.js';
import { sureColour } from '../parts/sure-colours.js';
import { noteDevice } from './note-device.js';
import type { NoteKind } from './note-kinds.js';
import { drawnState, lookText, looksOf } from './note-lights.js';
import { channelName, circuitName, tagsName } from './note-names.js';

/** What the picture of a kind is drawn with beside the plan. */
export interface PictureOf {
  readonly plan: Plan;
  /** Of the settings. */
  readonly groundColour: string;
  readonly unit: LengthUnit;
  readonly words: CrewNoteWords;
}

/** As the symbols of lights have it: what may be dark too is drawn as either. */
const DRAWN: { readonly [L in NoteLook]: WiredChannel['look'] } = {
  lit: 'lit',
  dark: 'dark',
  flickers: 'flickers',
  flickersOrDark: 'either',
  either: 'either',
  good: 'good',
  none: 'none',
  unknown: 'unknown',
};

/** Which of the devices of a housing stands in a conductor; where the plan names no conductor, in each but N. */
function deviceOf({ overcurrent }: PlannedProtector, { wire }: PlannedChannel): number {
  const at = overcurrent.findIndex(({ port }) => wire.port === null || wire.port === port);
  const conductors = overcurrent[at]?.conductors ?? [];
  const isIn = conductors.length === 0 ? wire.name !== 'N' : conductors.includes(wire.name);
  return isIn ? at : -1;
}

function channelOf(
  one: PlannedProtector,
  channel: PlannedChannel,
  hasState: boolean,
  { plan, words }: PictureOf,
): WiredChannel {
  const [seen] = looksOf(one, channel);
  const { state, look } = seen ?? { state: 'always', look: 'unknown' };
  const text = lookText(one, look, words);
  const colour = sureColour(one, channel, plan.basis);
  return {
    number: channel.channel,
    name: channelName(channel, words),
    colour,
    colourWord: coloursIn(colour, ownerStrings(words.language).colours.wire),
    look: DRAWN[look],
    caption: hasState || state === 'always' ? text : `${words.states[state]}: ${text}`,
    device: deviceOf(one, channel),
  };
}

function housingOf(one: PlannedProtector, hasState: boolean, isOne: boolean, of: PictureOf): DrawnHousing {
  const { words } = of;
  return {
    title: isOne
      ? (one.existing ?? one.part ?? words.header.noPart)
      : `${one.tag}: ${one.existing ?? one.part ?? words.header.noPart}`,
    channels: one.channels.map((channel) => channelOf(one, channel, hasState, of)),
    devices: one.overcurrent.map((device) => noteDevice(device, one, words)),
    same: words.device.same,
    isFlag: one.partDetails?.indicator === 'flag',
  };
}

/** True where the enclosure has conductors of a system with N. */
function hasNeutral({ channels, wiring }: PlannedProtector): boolean {
  const wires = [
    ...channels.map(({ wire }) => wire),
    ...wiring.unprotected.map(({ wire }) => wire),
    ...wiring.measuring.bands.flatMap(({ between }) => between.map(({ wire }) => wire)),
  ];
  return wires.some(({ name }) => name === 'N');
}

/** How thick the leads are: as planned, and no thinner than the smallest. */
function leadLines(one: PlannedProtector, { picture }: CrewNoteWords): string[] {
  const { leadGauge, wireRange } = one.wiring;
  const gauge = leadGauge === '' ? (one.figures?.smallestLead ?? '') : leadGauge;
  return [
    `${gauge === '' ? picture.byInstructions : unparted(gauge)}, ${picture.manner}`,
    ...(wireRange === null ? [] : [picture.range(unparted(wireRange))]),
    ...(one.channels.some(({ to }) => to === 'N') ? [picture.toNeutral] : []),
  ];
}

/** The picture of a kind of places. */
export function notePicture(kind: NoteKind, of: PictureOf): string {
  const { words, unit, groundColour } = of;
  const [picture] = kind;
  const [first] = picture;
  const state = drawnState(picture);
  const isTold = state !== null && state !== 'always';
  const ground = crewSay(first.wiring.groundTo, words.language);
  const housings = picture.map((one) => housingOf(one, isTold, picture.length === 1, of));
  const tags = tagsName(
    kind.flatMap((places) => places.map(({ tag }) => tag)),
    words,
  );
  const channels = housings.flatMap(({ channels: each }) =>
    each.map(({ number, name, caption }) => words.picture.channelAlt(number, name, caption)),
  );
  return wiringPicture(
    {
      circuit: circuitName(of.plan, kind, words),
      state: isTold ? words.states[state] : '',
      housings,
      lead: {
        of: words.picture.leads,
        limit: words.picture.atMost(unparted(longestLead(first.wiring, unit))),
        more: leadLines(first, words),
      },
      ground: { colour: groundColour, words: ground },
      neutralBar: hasNeutral(first) ? words.picture.neutralBar : '',
      isBonded: first.wiring.groundTo.code === 'ground-lead/bonded-bar',
      alt: words.picture.alt(tags, channels.join('; '), ground),
    },
    first.partDetails?.indicatorColor ?? '',
  );
}
