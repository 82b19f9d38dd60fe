import type { Plan } from '../../src/model/plan.js';
import { SHOWS, STATES } from '../../src/model/words.js';
import { channelText } from '../../src/words/conductors.js';

interface ReadLight {
  readonly channel: number;
  readonly conductor: string;
  readonly state: string;
  readonly shows: string;
}

/** A protector as the commissioning record has it. */
export interface ReadProtector {
  readonly tag: string;
  readonly part: string;
  readonly lights: readonly ReadLight[];
}

/** A text without what only its setting decides. */
export const plain = (text: string): string => text.normalize('NFKC').replace(/\s+/g, ' ').trim();

const LIGHT = new RegExp(`(\\d+) (\\S.*?) (${STATES.join('|')}) (${SHOWS.join('|')})(?= |$)`, 'g');

/** Takes the commissioning record apart: its text knows nothing of the plan. */
export function recordsIn(text: string): ReadProtector[] {
  return [
    ...text.matchAll(
      /([^\n]+): ([^\n]+(?:\n[^\n:]+)*)\nSerial[^]*?(?=\n[^\n]+: [^\n]+(?:\n[^\n:]+)*\nSerial|$)/g,
    ),
  ].map(([whole, tag = '', what = '']) => {
    const table = plain(whole.slice(whole.indexOf('Seen') + 4));
    const lights = [...table.matchAll(LIGHT)].map(([, channel, conductor = '', state = '', shows = '']) => {
      return { channel: Number(channel), conductor, state, shows };
    });
    return { tag: plain(tag), part: plain(what).split(', ')[0] ?? '', lights };
  });
}

/** The protectors of a plan as the record must have them. */
export function recordsOf(plan: Plan): ReadProtector[] {
  return plan.protectors.map((p) => ({
    tag: p.tag,
    part: p.existing === null ? (p.part ?? 'no part chosen') : `existing: ${p.existing}`,
    lights: p.channels.flatMap((c) =>
      c.indicator.map(({ state, shows }) => ({
        channel: c.channel,
        // A page is read back with plain spaces; `-48 V` is printed with one that doesn't break.
        conductor: channelText(c).replace(/\s+/g, ' '),
        state,
        shows,
      })),
    ),
  }));
}
