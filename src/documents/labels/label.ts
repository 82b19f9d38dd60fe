import { z } from 'zod';
import type { Plan, PlannedChannel, PlannedProtector } from '../../model/plan.js';
import { coloursIn, colourNamed } from '../../words/colours.js';
import { filled } from '../../words/languages.js';
import type { LiveCode, OwnerStrings } from '../../words/languages/owner-strings.js';
import { LIVE_CODES } from '../../words/languages/owner-strings.js';
import type { AsBuilt, BuiltHousing } from '../parts/as-built.js';
import type { Light, LightsInState } from '../parts/owner-lights.js';
import { besidePicture, lightGroups } from '../parts/owner-lights.js';
import { sureColour } from '../parts/sure-colours.js';
import { portSide, roomsOf, whereOnSite } from '../parts/owner-sides.js';

/** A fact of a label, or the blank in which the crew writes it. */
const LabelFactSchema = z.object({
  what: z.string(),
  value: z.string().describe('Empty: a blank'),
  whole: z.boolean().describe('True for a date, which no line’s end parts'),
});

export const LabelSchema = z.object({
  tag: z.string(),
  side: z.string().describe('On which side of the system it is'),
  where: z.string().describe('What it is at, and the room'),
  lights: z
    .array(z.string())
    .describe('Conductor and light of each channel, a line each, and how they should look'),
  live: z.string().describe('What stays live; empty where nothing does'),
  facts: z.array(LabelFactSchema),
  call: z.string(),
  /** Signal word after ANSI Z535.4, and the style of its panel. */
  word: z.string(),
  style: z.enum(['danger', 'warning']),
  hazard: z.string(),
  avoid: z.string(),
  /** Font size in points at which all of it goes into its cell. */
  size: z.number(),
});
export type Label = z.infer<typeof LabelSchema>;
/** A label whose size isn't chosen yet. */
export type Unsized = Omit<Label, 'size'>;

/** What the labels of one job share. */
export interface LabelSource {
  readonly plan: Plan;
  readonly strings: OwnerStrings;
  readonly phone: string;
  /** What came back from the work; undefined: nothing yet. */
  readonly built?: AsBuilt | undefined;
}

/** The signal word of a box and what it says: by the highest voltage of the plan there. */
function hazardOf(
  { wiring }: PlannedProtector,
  { label, warningWord }: OwnerStrings,
): Pick<Label, 'word' | 'style' | 'hazard' | 'avoid'> {
  const isDanger = wiring.hazard === 'shock';
  const { is, do: avoid } =
    label.hazards[isDanger && wiring.fedFromTwoSupplies ? 'two-supplies' : wiring.hazard];
  return {
    word: isDanger ? label.dangerWord : warningWord,
    style: isDanger ? 'danger' : 'warning',
    hazard: is,
    avoid,
  };
}

function isLiveCode(code: string): code is LiveCode {
  return LIVE_CODES.some((known) => known === code);
}

/** What stays live in the box after the steps, in one line; also that not all that feeds it is known. */
function liveLine({ wiring }: PlannedProtector, { label }: OwnerStrings): string {
  const { live, unknown } = wiring.isolation;
  const said = new Set(
    live.map(({ what }) => (isLiveCode(what.code) ? label.live[what.code] : label.liveElse)),
  );
  const line = said.size === 0 ? '' : `${label.liveWord}: ${[...said].join('; ')}.`;
  return [line, unknown ? label.sourcesUnknown : ''].filter((text) => text !== '').join(' ');
}

/** A conductor in plain words with its colour, which isn't that of its light; of a housing that two ports share, its side before it. */
function wireText(
  { plan, strings }: LabelSource,
  protector: PlannedProtector,
  channel: PlannedChannel,
): string {
  const { wires, second, wire } = strings.label;
  const { port, name, doubled } = channel.wire;
  const side = port === null ? '' : `${portSide(plan, protector, port, strings)} `;
  const called = channel.called === '' ? '' : ` (${channel.called})`;
  const sure = sureColour(protector, channel, plan.basis);
  const colour = sure === '' ? '' : `, ${filled(wire, { colour: coloursIn(sure, strings.colours.wire) })}`;
  return `${side}${wires[name]}${called}${doubled ? ` ${second}` : ''}${colour}`;
}

/** How a light should look, with its colour; `either` as on the first day, to be ticked. */
function lookText({ look, cause }: Light, colour: string, { looks, colours, label }: OwnerStrings): string {
  if (cause === 'floating' && look === 'either') return label.firstDay;
  const shines = look === 'lit' || look === 'flickers';
  const named = shines && colourNamed(colour) !== undefined ? `, ${coloursIn(colour, colours.light)}` : '';
  return `${looks[look]}${named}`;
}

/** The lines of one state: its name, then each channel with conductor and look. */
function stateLines(
  source: LabelSource,
  protector: PlannedProtector,
  { state, lights }: LightsInState,
): string[] {
  const { strings } = source;
  const colour = protector.partDetails?.indicatorColor ?? '';
  const rows = lights.flatMap((light) => {
    const channel = protector.channels.find((c) => c.channel === light.number);
    if (channel === undefined) return [];
    return [`${light.number}  ${wireText(source, protector, channel)}: ${lookText(light, colour, strings)}`];
  });
  return [filled(strings.label.stateDrawn, { state }), ...rows];
}

/** How the flag of a part is read, in the catalogue's words. */
function flagLine({ partDetails }: PlannedProtector, { looks, colours }: OwnerStrings): string[] {
  const { goodFlag = '', usedFlag = '' } = partDetails ?? {};
  const told = [
    ...(goodFlag === '' ? [] : [`${looks.good}: ${coloursIn(goodFlag, colours.light)}`]),
    ...(usedFlag === '' ? [] : [`${looks.used}: ${coloursIn(usedFlag, colours.light)}`]),
  ];
  return told.length === 0 ? [] : [`${told.join('. ')}.`];
}

/** What the owner's sheet says of the first day, and a label shows. */
const FIRST_DAY = ['firstDay', 'seenFirstDay'] as const;

function lightLines(source: LabelSource, protector: PlannedProtector): string[] {
  const { plan, strings } = source;
  const groups = lightGroups(plan, protector, strings.states);
  const drawn = groups.flatMap(({ states: [state] }) => (state === undefined ? [] : [state]));
  const causes = new Set(drawn.flatMap(({ lights }) => lights.map((light) => light.cause)));
  const rows = drawn.flatMap((state) => stateLines(source, protector, state));
  if (causes.has('flag')) return [...rows, ...flagLine(protector, strings)];
  if (causes.has('no-indicator')) return [...rows, strings.boxes.noIndicator];
  const beside = besidePicture(groups, strings).filter(
    (text) => !FIRST_DAY.some((one) => text === strings.boxes[one]),
  );
  return beside.length === 0 ? rows : [...rows, beside.join(' ')];
}

const DATE = /^\d{4}-\d{2}-\d{2}$/;

/** Serials as a label has them, or the date codes of parts without one. */
function serials(housing: BuiltHousing | undefined): string {
  const each = (housing?.serials ?? []).map(({ serial, dateCode }) => serial || dateCode);
  return each.filter((text) => text !== '').join('; ');
}

/** What the label of each protector says, in the order of the plan. */
export function labelsOf(source: LabelSource): Unsized[] {
  const { plan, strings, phone, built } = source;
  const { label } = strings;
  const rooms = roomsOf(plan, strings);
  return plan.protectors.map((protector) => {
    const { side, at } = whereOnSite(plan, protector, strings);
    const housing = built?.housings.get(protector.tag);
    // Where every device of its own is told not to be needed, there is no breaker to find.
    const hasDevice =
      protector.overcurrent.length === 0 || protector.overcurrent.some(({ device }) => device !== 'none');
    return {
      tag: protector.tag,
      side,
      where: [at, rooms.get(protector.tag) ?? ''].filter((text) => text !== '').join('. '),
      lights: lightLines(source, protector),
      live: liveLine(protector, strings),
      facts: [
        { what: strings.job, value: plan.job },
        { what: label.part, value: protector.part ?? protector.existing ?? '' },
        { what: label.serial, value: serials(housing) || protector.serial },
        { what: label.fitted, value: housing?.fittedOn ?? '' },
        ...(hasDevice ? [{ what: label.breaker, value: housing?.position ?? '' }] : []),
        { what: label.nextCheck, value: housing?.nextCheck ?? '' },
      ].map((fact) => ({ ...fact, whole: DATE.test(fact.value) })),
      call: phone === '' ? `${label.call}: ${'_'.repeat(24)}` : `${label.call} ${phone}`,
      ...hazardOf(protector, strings),
    };
  });
}
