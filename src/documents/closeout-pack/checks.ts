import { z } from 'zod';
import { isNec } from '../../model/editions.js';
import { byNaturalOrder } from '../../model/natural-order.js';
import type { Plan, PlannedProtector } from '../../model/plan.js';
import { CHECK_NAMES, type CheckName, type CrewPackWords } from '../../words/languages/crew-pack-words.js';

export const ChecksSchema = z.object({
  heading: z.string(),
  check: z.string().describe('Head of the column of checks'),
  /** A job of many protectors has several, since a page has room for so many columns. */
  tables: z.array(
    z.object({
      tags: z.array(z.string()),
      rows: z.array(
        z.object({
          text: z.string(),
          /** One a tag: `` is a box to tick, else what says that it isn't asked for. */
          cells: z.array(z.string()),
        }),
      ),
    }),
  ),
  onceHeading: z.string(),
  once: z.array(z.string()).describe('Checks of the job as a whole'),
});
export type ChecksView = z.infer<typeof ChecksSchema>;

/** Protectors beside each other in one table; common practice, no source. */
const COLUMNS = 14;

const always = (): boolean => true;

/** At which protectors a check is asked for. */
const ASKED: { readonly [C in CheckName]: (protector: PlannedProtector) => boolean } = {
  part: always,
  faultCurrent: ({ ports }) => ports.some(({ port }) => port !== 'terminals'),
  meter: always,
  readings: ({ wiring }) => wiring.measuring.state?.code !== 'measure-state/do-not-open',
  locked: always,
  bothSupplies: ({ wiring }) => wiring.fedFromTwoSupplies,
  dead: always,
  channels: always,
  groundBar: ({ wiring }) => wiring.groundTerminal === null,
  groundTerminal: ({ wiring }) => wiring.groundTerminal !== null,
  leads: always,
  torque: always,
  wired: always,
  outdoors: ({ outdoors }) => outdoors,
  lights: ({ channels }) => channels.some(({ indicator }) => indicator.length > 0),
  flag: ({ partDetails }) => partDetails?.indicator === 'flag',
  label: always,
  reconnected: always,
};

function textOf(name: CheckName, plan: Plan, { checks }: CrewPackWords): string {
  const basis = isNec(plan.basis) ? 'nec' : 'iec';
  if (name === 'groundBar' || name === 'groundTerminal') return checks[name][basis];
  return checks.texts[name];
}

/** The installer's checks, in the order of the work: a column a protector, a row a check that one of them is asked for. */
export function checksView(plan: Plan, words: CrewPackWords): ChecksView {
  const { checks } = words;
  const protectors = [...plan.protectors].sort((a, b) => byNaturalOrder(a.tag, b.tag));
  const groups: PlannedProtector[][] = [];
  for (const [index, protector] of protectors.entries()) {
    if (index % COLUMNS === 0) groups.push([]);
    groups.at(-1)?.push(protector);
  }
  const isUnknown = plan.isolation.parts.some(({ unknown }) => unknown.length > 0);
  const { latest, equipment, code, sources, back, owner } = checks.once;
  return {
    heading: checks.heading,
    check: checks.check,
    tables: groups.map((group) => ({
      tags: group.map(({ tag }) => tag),
      rows: CHECK_NAMES.filter((name) => group.some(ASKED[name])).map((name) => ({
        text: textOf(name, plan, words),
        cells: group.map((protector) => (ASKED[name](protector) ? '' : checks.notHere)),
      })),
    })),
    onceHeading: checks.onceHeading,
    once: [latest, equipment, code, ...(isUnknown ? [sources] : []), back, owner],
  };
}
