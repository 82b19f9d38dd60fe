import type { Plan, PlannedChannel, PlannedIndicator, PlannedProtector } from '../../model/plan.js';
import type { IndicatorCause, SystemState } from '../../model/words.js';
import { filled } from '../../words/languages.js';
import type { OwnerStrings, PlainLook, StateWords } from '../../words/languages/owner-strings.js';
import { equipmentOf, runsTo } from './site-index.js';

/** A state by the name of its word. */
type StateName = keyof StateWords;

/** A light as it looks in one state, and why. */
export interface Light {
  readonly number: number;
  readonly look: PlainLook;
  readonly cause: IndicatorCause | null;
}

/** The lights of a protector as they look in one state. */
export interface LightsInState {
  readonly name: StateName;
  /** How the state is called. */
  readonly state: string;
  readonly lights: readonly Light[];
}

/** Lights that are looked at in the same states: on a shared housing each side is a group of its own. */
export interface LightGroup {
  /** The first is the one that tells; in the others a light shows less. */
  readonly states: readonly LightsInState[];
}

/** Stands for every state that has no picture of its own. */
const NO_PICTURE: ReadonlySet<SystemState> = new Set(['always', 'ground-fault device open']);

/** States in which nothing lights the light: they tell nothing. */
const SILENT: ReadonlySet<SystemState> = new Set(['source off', 'night', 'still']);

function pictured(channel: PlannedChannel): PlannedIndicator[] {
  const shown = channel.indicator.filter((i) => !NO_PICTURE.has(i.state));
  return [...shown.filter((i) => !SILENT.has(i.state)), ...shown.filter((i) => SILENT.has(i.state))];
}

/** What stands at the port of a channel, and the kinds that feed that port; a generator's own output feeds itself. */
interface Around {
  /** True for the terminals of a control circuit. */
  readonly control: boolean;
  readonly own: string;
  readonly feeders: readonly string[];
}

function aroundOf(plan: Plan, protector: PlannedProtector, channel: PlannedChannel): Around {
  const { ports } = protector;
  const port = ports.find((p) => p.port === channel.wire.port) ?? ports[0];
  const kindOf = (tag: string): string => equipmentOf(plan, tag)?.kind ?? '';
  const feeders = runsTo(plan, port?.equipment ?? '')
    .filter((run) => run.to.port === port?.port)
    .map((run) => kindOf(run.from.equipment));
  const own = kindOf(port?.equipment ?? '');
  return { control: port?.port === 'terminals', own, feeders: own === 'generator' ? [own] : feeders };
}

/**
 * By what name a state goes, by what feeds the port: off is the generator's word only where nothing else feeds it.
 * @param byUtility true where the light is looked at while the utility is on: without it, it is off
 */
function stateName(state: SystemState, byUtility: boolean, { control, own, feeders }: Around): StateName {
  if (control && state === 'source on') return 'controlOn';
  if (control && state === 'source off') return 'controlOff';
  const sources = feeders.filter((kind) => kind !== 'service');
  const generator = sources.length > 0 && sources.every((kind) => kind === 'generator');
  const generatorAlone = generator && sources.length === feeders.length;
  // With batteries the house may have power while the grid has none.
  const utilityAlone = byUtility || own === 'service' || (feeders.length > 0 && sources.length === 0);
  const water = own === 'hydro-turbine' || feeders.includes('hydro-turbine');
  const names: { readonly [S in SystemState]: StateName } = {
    always: 'always',
    'utility on': 'utilityOn',
    'source on': generator ? 'generatorOn' : utilityAlone ? 'utilityOn' : 'powerOn',
    'source off': generatorAlone ? 'generatorOff' : utilityAlone ? 'utilityOff' : 'powerOff',
    sun: 'sun',
    'sun, inverter on': 'sunInverterOn',
    night: 'night',
    turning: water ? 'waterTurning' : 'windTurning',
    still: water ? 'waterStill' : 'windStill',
    'ground-fault device open': 'always',
  };
  return names[state];
}

function lightIn(channel: PlannedChannel, state: SystemState): Light {
  const entry =
    channel.indicator.find((i) => i.state === state) ?? channel.indicator.find((i) => i.state === 'always');
  const number = channel.channel;
  if (entry === undefined) return { number, look: 'unknown', cause: null };
  const { cause, shows } = entry;
  if (cause === 'no-indicator') return { number, look: 'none', cause };
  // What nobody knows yet isn't the same as what may be either.
  return { number, look: cause === 'output-unknown' ? 'unknown' : shows, cause };
}

/**
 * The pictures of a protector's lights. Channels that are looked at in the same states stand together; a light that
 * looks the same at all times joins the first group.
 */
export function lightGroups(plan: Plan, protector: PlannedProtector, words: StateWords): LightGroup[] {
  const told = protector.channels.map((channel) => {
    const around = aroundOf(plan, protector, channel);
    const states = [...new Set(pictured(channel).map((i) => i.state))];
    const byUtility = states.includes('utility on') && !states.includes('source on');
    const called = states.map((state) => ({ state, name: stateName(state, byUtility, around) }));
    return { channel, called, key: called.length === 0 ? '' : JSON.stringify(called) };
  });
  const keys = [...new Set(told.map((t) => t.key))].filter((k) => k !== '');
  if (keys.length === 0) {
    const lights = protector.channels.map((c) => lightIn(c, 'always'));
    return lights.length === 0 ? [] : [{ states: [{ name: 'always', state: words.always, lights }] }];
  }
  return keys.map((key, index) => {
    const members = told.filter((t) => t.key === key || (t.key === '' && index === 0));
    const called = told.find((t) => t.key === key)?.called ?? [];
    return {
      states: called.map(({ state, name }) => ({
        name,
        state: words[name],
        lights: members.map(({ channel }) => lightIn(channel, state)),
      })),
    };
  });
}

/** `light 1 on, light 2 off`. */
export function lightsTold(lights: readonly Light[], strings: OwnerStrings): string {
  return lights
    .map(({ number, look }) =>
      filled(strings.lightAlt, { number, look: strings.looks[look].toLocaleLowerCase(strings.language) }),
    )
    .join(', ');
}

/** A state that isn't drawn, in one sentence. */
function otherState(
  drawn: LightsInState,
  other: LightsInState,
  alone: boolean,
  strings: OwnerStrings,
): string {
  const { state, lights } = other;
  if (alone && lights.every((light) => light.look === 'dark'))
    return filled(other.name === 'controlOff' ? strings.boxes.controlOff : strings.allOff, { state });
  if (JSON.stringify(drawn.lights.map((l) => l.look)) === JSON.stringify(lights.map((l) => l.look)))
    return filled(strings.sameState, { state });
  return filled(strings.otherState, { state, lights: lightsTold(lights, strings) });
}

/** Of lights whose look of the first day counts: it is still to be ticked, or was seen and is drawn. */
function firstDayTexts({ lights }: LightsInState, { boxes }: OwnerStrings): string[] {
  const counting = lights.filter((light) => light.cause === 'floating');
  if (counting.length === 0) return [];
  return [counting.some(isToTick) ? boxes.firstDay : boxes.seenFirstDay];
}

/**
 * What the drawn state of each group doesn't say: the states beside it, and what is particular to its lights; a sentence each.
 * @param groups of one protector
 */
export function besidePicture(groups: readonly LightGroup[], strings: OwnerStrings): string[] {
  const { boxes } = strings;
  const alone = groups.length === 1;
  const said = groups.flatMap(({ states }) => {
    const [drawn, ...others] = states;
    if (drawn === undefined) return [];
    const causes = new Set(drawn.lights.map((light) => light.cause));
    // A turbine's one sentence says all of it, standing still too.
    if (causes.has('turning-alternator')) {
      const all = causes.size === 1 && drawn.lights.length > 1;
      return [boxes.alternator, ...(all ? [boxes.oneOff] : [])];
    }
    if (causes.has('output-unknown')) return [boxes.outputUnknown];
    return [
      ...firstDayTexts(drawn, strings),
      ...(causes.has('ungrounded-system') ? [boxes.ungrounded] : []),
      ...others.map((other) => otherState(drawn, other, alone, strings)),
      ...(causes.has('sunlight-inverter-on') ? [boxes.inverterOff] : []),
    ];
  });
  return [...new Set(said)];
}

/** True for a light whose look of the first day counts, and nobody has seen it yet. */
export const isToTick = ({ cause, look }: Light): boolean => cause === 'floating' && look === 'either';

/** True where how the lights look on the first day is how they should look later, and isn't known yet. */
export function isFirstDay(groups: readonly LightGroup[]): boolean {
  return groups.some(({ states: [drawn] }) => drawn?.lights.some(isToTick));
}
