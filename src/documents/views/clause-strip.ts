import { z } from 'zod';
import type { Plan, PlannedProtector } from '../../model/plan.js';
import type { IndicatorCause } from '../../model/words.js';
import { clausesByRule, clauseSummary } from './sources.js';

/** One clause of the job's own code cycle, and how this job stands to it. */
export const ClauseRowSchema = z.object({
  rule: z.string(),
  title: z.string(),
  clauses: z.array(z.string()),
  /** `met at P-1, P-2`, `not met at P-3: because`, `to confirm at P-4: because`, `open at P-5`, `does not apply at X: because`. */
  standing: z.array(z.string()),
});
export type ClauseRow = z.infer<typeof ClauseRowSchema>;

const tagsOf = (protectors: readonly PlannedProtector[]): string => protectors.map((p) => p.tag).join(', ');
const isSettled = (p: PlannedProtector): boolean => p.part !== null || p.existing !== null;

/** What tells that a rule about lights, wires or housings is about a protector; the plan names such rules by job alone. */
const IS_ABOUT: { readonly [rule: string]: (protector: PlannedProtector) => boolean } = {
  'indicate/array-pole': (p) => lightsTell(p, ['sunlight', 'no-sunlight', 'turning-dc']),
  'indicate/battery-pole': (p) => lightsTell(p, ['battery-connected']),
  'indicate/control-circuit': (p) => isControl(p),
  'indicate/floating-pair': (p) => !isControl(p) && lightsTell(p, ['floating']),
  'indicate/grounded-conductor': (p) => lightsTell(p, ['grounded-conductor']),
  'indicate/grounded-system-line': (p) => !isControl(p) && lightsTell(p, ['energised']),
  'indicate/part-limit': (p) => lightsTell(p, ['below-indicator-voltage', 'flag', 'no-indicator']),
  'indicate/turbine-phase': (p) => lightsTell(p, ['turning-alternator', 'output-unknown']),
  'indicate/ungrounded-system-line': (p) => lightsTell(p, ['ungrounded-system']),
  'rate/enclosure': (p) => p.outdoors,
  'wire/neutral': (p) => p.required.current === 'ac' && p.system !== 'three-phase' && !isControl(p),
};

function lightsTell(protector: PlannedProtector, causes: readonly IndicatorCause[]): boolean {
  return protector.channels.some((c) => c.indicator.some((i) => causes.includes(i.cause)));
}

/** Control circuits alone have ports of this name. */
function isControl(protector: PlannedProtector): boolean {
  return protector.ports.some((p) => p.port === 'terminals');
}

/** Protectors to which a rule was applied: it asked for them, or it is about them, or one of their figures is its own. */
function touched(plan: Plan, rule: string): readonly PlannedProtector[] {
  if (rule.startsWith('place/')) return plan.protectors.filter((p) => p.reasons.some((r) => r.rule === rule));
  const isAbout = IS_ABOUT[rule];
  if (isAbout !== undefined) return plan.protectors.filter(isAbout);
  const computed = plan.protectors.filter((p) => p.calculations.some((c) => c.rule === rule));
  return computed.length > 0 ? computed : plan.protectors;
}

/** Equal reasons stand once, with the ports that share them. */
function notApplied(plan: Plan, rule: string): string[] {
  const ports = new Map<string, string[]>();
  for (const n of plan.notPlaced) {
    if (n.rule !== rule) continue;
    ports.set(n.because, [...(ports.get(n.because) ?? []), `${n.equipment} ${n.port}`]);
  }
  return [...ports].map(([because, at]) => `does not apply at ${at.join(', ')}: ${because}`);
}

/** The rule about parts that answers what another rule asks for. */
const ANSWERED_BY: { readonly [rule: string]: string } = {
  'rate/ac-voltage': 'rate/mcov',
  'rate/array-voltage': 'rate/mcov',
  'rate/battery-voltage': 'rate/mcov',
  'rate/control-voltage': 'rate/mcov',
  'rate/input-limit': 'rate/mcov',
  'rate/inverter-link': 'rate/mcov',
  'rate/turbine-voltage': 'rate/mcov',
  'rate/nominal-current': 'rate/discharge',
  'rate/array-current': 'rate/short-circuit',
  'rate/fault-current': 'rate/short-circuit',
  'rate/withstand': 'rate/clamping',
};

/** Why a rule can't be called met at a protector that has its part, `{tags}` for the protectors; ``: it is met. */
function doubtAt(protector: PlannedProtector, rule: string): string {
  if (!rule.startsWith('rate/')) return '';
  if (protector.part === null) return 'to confirm at {tags}: the ratings of what is there aren’t known';
  const answers = ANSWERED_BY[rule] ?? rule;
  const of = protector.unsettled.filter((u) => u.rule === answers);
  const fails = of.some((u) => u.fails);
  const because = [...new Set(of.map((u) => u.because))].join('; ');
  return of.length === 0 ? '' : `${fails ? 'not met' : 'to confirm'} at {tags}: ${because}`;
}

function standingOf(plan: Plan, rule: string): string[] {
  const protectors = touched(plan, rule);
  const open = protectors.filter((p) => !isSettled(p));
  const doubts = protectors.filter(isSettled).map((p) => ({ p, doubt: doubtAt(p, rule) }));
  const settled = doubts.filter(({ doubt }) => doubt === '').map(({ p }) => p);
  const doubtful = new Set(doubts.map(({ doubt }) => doubt).filter((doubt) => doubt !== ''));
  const standing = [
    ...(settled.length === 0 ? [] : [`met at ${tagsOf(settled)}`]),
    ...[...doubtful].map((doubt) =>
      doubt.replace('{tags}', () => tagsOf(doubts.filter((d) => d.doubt === doubt).map(({ p }) => p))),
    ),
    ...(open.length === 0 ? [] : [`open at ${tagsOf(open)}: no part is chosen`]),
    ...notApplied(plan, rule),
  ];
  return standing.length === 0 ? ['no protector rests on it here'] : standing;
}

/** The strip of clauses: those of the rules that fired, then the rules that looked at a port and did not apply. */
export function clauseStrip(plan: Plan): ClauseRow[] {
  const fired = clausesByRule(plan);
  const known = new Set(fired.map((c) => c.rule));
  const others = [...new Set(plan.notPlaced.map((n) => n.rule))].filter((rule) => !known.has(rule));
  return [
    ...fired.map(({ rule, title, clauses }) => ({
      rule,
      title,
      clauses: clauseSummary(clauses),
      standing: standingOf(plan, rule),
    })),
    ...others.map((rule) => ({
      rule,
      title: '',
      clauses: ['no clause: it did not apply'],
      standing: notApplied(plan, rule),
    })),
  ];
}
