import type { Plan, PlannedChannel, PlannedIndicator, PlannedProtector } from '../../model/plan.js';
import type { IndicatorCause, SystemState } from '../../model/words.js';
import type { OwnerStrings, PlainLook, StateWords } from '../../text/languages/owner-strings.js';

/** The lights of a protector as they look in one state. */
export interface LightsInState {
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
  'battery-connected',
  'turning-dc',
]);

function pictured(channel: PlannedChannel): PlannedIndicator[] {
  return channel.indicator.filter((i) => !NO_PICTURE.has(i.state));
}

function statesKey(channel: PlannedChannel): string {
  return [...new Set(pictured(channel).map((i) => i.state))].join('|');
}

/** How a state is called, by what feeds the protector. */
export function stateWord(state: SystemState, words: StateWords, kinds: ReadonlySet<string>): string {
  const generator = kinds.has('generator');
  const water = kinds.has('hydro-turbine');
  const names: { readonly [S in SystemState]: string } = {
    always: words.always,
    'utility on': words.utilityOn,
    'source on': generator ? words.generatorOn : words.powerOn,
    'source off': generator ? words.generatorOff : words.powerOff,
    sun: words.sun,
    night: words.night,
    turning: water ? words.waterTurning : words.windTurning,
    still: water ? words.waterStill : words.windStill,
    'ground-fault device open': words.always,
  };
  return names[state];
}

/** The kinds of the equipments at the protector's ports and of what feeds those ports. */
export function kindsAround(plan: Plan, protector: PlannedProtector): Set<string> {
  const kindOf = new Map(plan.site.equipments.map((e) => [e.tag, e.kind]));
  const kinds = new Set<string>();
  for (const port of protector.ports) {
    kinds.add(kindOf.get(port.equipment) ?? '');
    for (const run of plan.site.runs) {
      if (run.to.equipment === port.equipment && run.to.port === port.port)
        kinds.add(kindOf.get(run.from.equipment) ?? '');
    }
  }
  return kinds;
}

function lookIn(channel: PlannedChannel, state: SystemState): PlainLook {
  const entry =
    channel.indicator.find((i) => i.state === state) ?? channel.indicator.find((i) => i.state === 'always');
  if (entry?.cause === 'flag') return 'flag';
  if (entry?.cause === 'no-indicator') return 'none';
  return entry?.shows ?? 'unknown';
}

/**
 * The pictures of a protector's lights. Channels that are looked at in the same states stand together; a light that
 * looks the same at all times joins the first group.
 */
export function lightGroups(plan: Plan, protector: PlannedProtector, words: StateWords): LightGroup[] {
  const kinds = kindsAround(plan, protector);
  const keys = [...new Set(protector.channels.map(statesKey))].filter((k) => k !== '');
  if (keys.length === 0) {
    const lights = protector.channels.map((c) => ({ number: c.channel, look: lookIn(c, 'always') }));
    return lights.length === 0 ? [] : [{ states: [{ state: words.always, lights }] }];
  }
  return keys.map((key, index) => {
    const members = protector.channels.filter((c) => {
      const own = statesKey(c);
      return own === key || (own === '' && index === 0);
    });
    const states = key.split('|') as SystemState[];
    return {
      states: states.map((state) => ({
        state: stateWord(state, words, kinds),
        lights: members.map((c) => ({ number: c.channel, look: lookIn(c, state) })),
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
        strings.lightAlt.replace('{number}', String(l.number)).replace('{look}', strings.looks[l.look]),
      );
      return `${s.state}: ${lights.join(', ')}.`;
    })
    .join(' ');
  return strings.pictureAlt.replace('{tag}', () => tag).replace('{states}', () => states);
}
