import type { Plan, PlannedProtector } from '../../model/plan.js';
import { filled } from '../../words/languages.js';
import { coloursIn } from '../../words/colours.js';
import type { OwnerStrings } from '../../words/languages/owner-strings.js';
import { flagsPicture, lightsPicture } from '../drawing/lights.js';
import type { LightGroup } from '../parts/owner-lights.js';
import { besidePicture, isFirstDay, lightGroups, lightsTold } from '../parts/owner-lights.js';

/** Which rows the table of what to do needs for some protectors, and which notes. */
export interface Needs {
  readonly light: boolean;
  readonly flag: boolean;
  /** A light that should stay off. */
  readonly cameOn: boolean;
  readonly ungrounded: boolean;
}

/** How a protector looks to its owner. */
export interface Look {
  /** What tells it from another look. */
  readonly key: string;
  /** True where each protector needs a picture of its own, to be ticked on the first day. */
  readonly own: boolean;
  /** Sentences beside the picture. */
  readonly texts: readonly string[];
  readonly needs: Needs;
  /** What each has, where several share the picture: `flags 1 and 2`; `` where nothing is drawn. */
  readonly has: string;
  /**
   * The picture; `` where there is nothing to look at.
   * @param tags for who can't see it
   * @param tag printed in the picture; `` for none
   */
  picture(tags: string, tag: string): string;
}

const NOTHING: Needs = { light: false, flag: false, cameOn: false, ungrounded: false };

function lightsOf(groups: readonly LightGroup[]): number {
  return groups.reduce((sum, { states: [drawn] }) => sum + (drawn?.lights.length ?? 0), 0);
}

function numbersOf(groups: readonly LightGroup[], strings: OwnerStrings): string {
  const numbers = groups.flatMap(({ states: [drawn] }) => drawn?.lights.map((l) => String(l.number)) ?? []);
  const last = numbers.pop() ?? '';
  return numbers.length === 0 ? last : `${numbers.join(', ')} ${strings.tagsAlt} ${last}`;
}

function flagsLook(
  protector: PlannedProtector,
  groups: readonly LightGroup[],
  strings: OwnerStrings,
  more: readonly string[],
): Look {
  const { goodFlag: good = '', usedFlag: used = '' } = protector.partDetails ?? {};
  const count = lightsOf(groups);
  const title = filled(count === 1 ? strings.flag : strings.flags, { numbers: numbersOf(groups, strings) });
  const { flagOne, flagBoth, flagAll } = strings.boxes;
  const must = count === 1 ? flagOne : count === 2 ? flagBoth : flagAll;
  const words = (look: 'good' | 'used', of: string): string =>
    `${strings.looks[look]}${of === '' ? '' : `: ${coloursIn(of, strings.colours.light)}`}.`;
  return {
    key: JSON.stringify(['flag', title, good, used, more]),
    own: false,
    texts: [
      ...(good === ''
        ? [strings.boxes.flag, strings.boxes.flagUnknown]
        : [filled(must, { colour: coloursIn(good, strings.colours.light) })]),
      ...more,
    ],
    has: title.toLocaleLowerCase(strings.language),
    needs: { ...NOTHING, flag: true },
    picture: (tags) => {
      const states = `${title}. ${words('good', good)} ${words('used', used)}`;
      const alt = filled(strings.pictureAlt, { tag: tags, states });
      return flagsPicture({ title, good, used, alt }, strings);
    },
  };
}

/**
 * How the lights or flags of a protector look, and what stands beside their picture.
 * @param more sentences of what was seen otherwise than it is drawn
 */
export function lookOf(
  plan: Plan,
  protector: PlannedProtector,
  strings: OwnerStrings,
  more: readonly string[] = [],
): Look {
  const groups = lightGroups(plan, protector, strings.states);
  const drawn = groups.flatMap(({ states: [state] }) => state?.lights ?? []);
  const causes = new Set(drawn.map((light) => light.cause));
  const without = (key: string, text: string): Look => ({
    key,
    own: false,
    texts: [text],
    needs: NOTHING,
    has: '',
    picture: () => '',
  });
  if (drawn.length === 0) return without('unknown', strings.boxes.lightsUnknown);
  if (causes.has('no-indicator')) return without('none', strings.boxes.noIndicator);
  if (causes.has('flag')) return flagsLook(protector, groups, strings, more);
  const texts = [...besidePicture(groups, strings), ...more];
  const colour = protector.partDetails?.indicatorColor ?? '';
  const own = isFirstDay(groups);
  const states = groups.map((g) => g.states.map(({ name, lights }) => ({ name, lights })));
  return {
    key: JSON.stringify([states, texts, colour.toLowerCase()]),
    own,
    texts,
    has: filled(lightsOf(groups) === 1 ? strings.light : strings.lights, {
      numbers: numbersOf(groups, strings),
    }),
    needs: {
      ...NOTHING,
      // Where each may be on or off, none is as shown or not.
      light: drawn.some((light) => light.cause !== 'ungrounded-system'),
      cameOn: drawn.some((light) => light.look === 'dark'),
      ungrounded: causes.has('ungrounded-system'),
    },
    picture: (tags, tag) => {
      const told = groups.flatMap(({ states: [state] }) =>
        state === undefined ? [] : [`${state.state}: ${lightsTold(state.lights, strings)}.`],
      );
      const alt = filled(strings.pictureAlt, { tag: tags, states: told.join(' ') });
      return lightsPicture({ groups, colour, tag, alt }, strings);
    },
  };
}

/** What any of some looks needs. */
export function needsOf(looks: readonly Look[]): Needs {
  const any = (name: keyof Needs): boolean => looks.some((look) => look.needs[name]);
  return { light: any('light'), flag: any('flag'), cameOn: any('cameOn'), ungrounded: any('ungrounded') };
}
