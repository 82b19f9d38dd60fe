import { createHash } from 'node:crypto';
import { planJson, type Plan } from '../../src/index.js';

/** What a plan decides, few lines long, and a hash of each of its parts. */
export interface Digest {
  /** A line a protector: tag, part, ports, strength, MCOV with what was asked for, in V. */
  readonly protectors: readonly string[];
  readonly notPlaced: number;
  /** How many open items by severity and code. */
  readonly openItems: Readonly<Record<string, number>>;
  /** Each part of `plan.json`: a word or figure itself, of all else the SHA-256 as it is written, shortened to 64 bits. */
  readonly parts: Readonly<Record<string, unknown>>;
}

/** Counts how often each of some words comes, in the order of the alphabet. */
function counts(words: readonly string[]): Record<string, number> {
  const found: Record<string, number> = {};
  for (const word of words.toSorted()) found[word] = (found[word] ?? 0) + 1;
  return found;
}

function hash(text: string): string {
  return `sha256 ${createHash('sha256').update(text).digest('hex').slice(0, 16)}`;
}

/**
 * The digest of a plan: another decision shows as itself, another sentence as another hash of the part where it stands.
 * @param plan of one job
 */
export function digest(plan: Plan): Digest {
  const whole = JSON.parse(planJson(plan)) as Readonly<Record<string, unknown>>;
  return {
    protectors: plan.protectors.map((p) => {
      const ports = p.ports.map(({ equipment, port }) => `${equipment}:${port}`).join(' + ');
      const mcov = `${p.figures?.mcov ?? 'not known'} of ${p.required.mcov ?? 'not known'} V`;
      return `${p.tag}: ${p.part ?? 'no part'} at ${ports}, ${p.strength}, MCOV ${mcov}`;
    }),
    notPlaced: plan.notPlaced.length,
    openItems: counts(plan.openItems.map((item) => `${item.severity} ${item.code}`)),
    parts: Object.fromEntries(
      Object.entries(whole).map(([part, value]) => [
        part,
        typeof value === 'object' ? hash(JSON.stringify(value)) : value,
      ]),
    ),
  };
}
