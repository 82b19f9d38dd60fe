import type { Plan, PlannedChannel, PlannedIndicator, PlannedProtector } from '../../model/plan.js';
import type { IndicatorCause, SystemState } from '../../model/words.js';
import { filled } from '../../words/languages.js';
import type { OwnerStrings, PlainLook, StateWords } from '../../words/languages/owner-strings.js';
import { equipmentOf, runsTo } from './site-index.js';

/** A state by the name of its word. */
type StateName = keyof StateWords;

/** The lights of a protector as they look in one state. */
export interface LightsInState {
  readonly name: StateName;
  /** How the state is called. */
  readonly state: string;
  readonly lights: readonly { readonly number: number; readonly look: PlainLook }[];
}

/** Lights that are looked at in the same states: on a shared housing each side is a group of its own. */
export interface LightGroup {
  readonly states: readonly LightsInState[];
}

/** A note of the sheet and the lights that it is about. */
export interface CauseOfLights {
  readonly cause: IndicatorCause;
  readonly numbers: readonly number[];
}

/** Stands for every state that has no picture of its own. */
const NO_PICTURE: ReadonlySet<SystemState> = new Set(['always', 'ground-fault device open']);

/** Causes that the pictures tell by themselves. */
const PLAIN_CAUSES: ReadonlySet<IndicatorCause> = new Set([
  'energised',
  'sunlight',
  'sunlight-inverter-on',
  'battery-connected',
  'turning-dc',
]);

function pictured(channel: PlannedChannel): PlannedIndicator[] {
  return channel.indicator.filter((i) => !NO_PICTURE.has(i.state));
}

/** What stands at the port of a channel, and the kinds that feed that port; a generator's own output feeds itself. */
interface Around {
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
  return { own, feeders: own === 'generator' ? [own] : feeders };
}

/** By what name a state goes, by what feeds the port: off is the generator's word only where nothing else feeds it. */
function stateName(state: SystemState, { own, feeders }: Around): StateName {
  const sources = feeders.filter((kind) => kind !== 'service');
  const generator = sources.length > 0 && sources.every((kind) => kind === 'generator');
  const generatorAlone = generator && sources.length === feeders.length;
  // With batteries the house may have power while the grid has none.
  const utilityAlone = own === 'service' || (feeders.length > 0 && sources.length === 0);
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

function lookIn(channel: PlannedChannel, state: SystemState): PlainLook {
  const entry =
    channel.indicator.find((i) => i.state === state) ?? channel.indicator.find((i) => i.state === 'always');
  if (entry?.cause === 'no-indicator') return 'none';
  return entry?.shows ?? 'unknown';
}

/**
 * The pictures of a protector's lights. Channels that are looked at in the same states stand together; a light that
 * looks the same at all times joins the first group.
 */
export function lightGroups(plan: Plan, protector: PlannedProtector, words: StateWords): LightGroup[] {
  const told = protector.channels.map((channel) => {
    const around = aroundOf(plan, protector, channel);
    const states = [...new Set(pictured(channel).map((i) => i.state))];
    const called = states.map((state) => ({ state, name: stateName(state, around) }));
    return { channel, called, key: called.length === 0 ? '' : JSON.stringify(called) };
  });
  const keys = [...new Set(told.map((t) => t.key))].filter((k) => k !== '');
  if (keys.length === 0) {
    const lights = protector.channels.map((c) => ({ number: c.channel, look: lookIn(c, 'always') }));
    return lights.length === 0 ? [] : [{ states: [{ name: 'always', state: words.always, lights }] }];
  }
  return keys.map((key, index) => {
    const members = told.filter((t) => t.key === key || (t.key === '' && index === 0));
    const called = told.find((t) => t.key === key)?.called ?? [];
    return {
      states: called.map(({ state, name }) => ({
        name,
        state: words[name],
        lights: members.map(({ channel: c }) => ({ number: c.channel, look: lookIn(c, state) })),
      })),
    };
  });
}

/** Why lights are off, blink or can't be told: each cause that needs a word, with its lights. */
export function causesOfLights(protector: PlannedProtector): CauseOfLights[] {
  const causes = new Map<IndicatorCause, Set<number>>();
  for (const channel of protector.channels) {
    for (const indicator of channel.indicator) {
      if (PLAIN_CAUSES.has(indicator.cause)) continue;
      const numbers = causes.get(indicator.cause) ?? new Set<number>();
      causes.set(indicator.cause, numbers.add(channel.channel));
    }
  }
  return [...causes].map(([cause, numbers]) => ({ cause, numbers: [...numbers] }));
}

/** The alternative text of the pictures. */
export function lightsAlt(tag: string, groups: readonly LightGroup[], strings: OwnerStrings): string {
  const states = groups
    .flatMap((g) => g.states)
    .map((s) => {
      const lights = s.lights.map((l) =>
        filled(strings.lightAlt, { number: l.number, look: strings.looks[l.look] }),
      );
      return `${s.state}: ${lights.join(', ')}.`;
    })
    .join(' ');
  return filled(strings.pictureAlt, { tag, states });
}
