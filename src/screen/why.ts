import { isUnsaid, told } from '../words/messages/told.js';
import { channelText } from '../words/conductors.js';
import { deviceAndWhy, devicesText, smallestLeadsText } from '../words/overcurrent.js';
import { say } from '../words/reasons/say.js';
import type {
  Calculation,
  NotPlaced,
  Plan,
  PlannedAccepted,
  PlannedEquipment,
  PlannedProtector,
} from '../model/plan.js';
import type { Basis } from '../model/editions.js';
import { figure } from '../words/figures.js';
import { runLength } from '../words/lengths.js';
import { cited } from '../words/origin.js';
import { acceptedBy } from '../words/settled.js';
import { stepTold } from '../words/steps/told.js';
import { printable } from './text-table.js';

/** What `why` was asked about: a port, all ports of an equipment, or a protector by its tag. */
export interface Asked {
  readonly basis: Basis;
  readonly protectors: readonly PlannedProtector[];
  readonly notPlaced: readonly NotPlaced[];
  readonly equipments: readonly PlannedEquipment[];
  /** What somebody accepted about them, and about the job. */
  readonly accepted?: readonly PlannedAccepted[] | undefined;
}

/**
 * Finds what is asked about in a plan.
 * @param plan the plan of a job
 * @param wanted `TAG`, `TAG:PORT`, the tag of a protector; undefined: all of the plan
 * @returns null where the plan has no such thing
 */
export function askedOf(plan: Plan, wanted: string | undefined): Asked | null {
  const { basis } = plan;
  if (wanted === undefined) {
    return {
      basis,
      protectors: plan.protectors,
      notPlaced: plan.notPlaced,
      equipments: plan.site.equipments,
      accepted: plan.accepted,
    };
  }
  const protector = plan.protectors.filter((p) => p.tag === wanted);
  const { equipment, port } = split(plan, wanted);
  const equipments = plan.site.equipments.filter((e) => e.tag === equipment);
  const known = equipments.some((e) => port === undefined || e.ports.includes(port));
  if (protector.length > 0 && !known) {
    const tags = new Set(protector.flatMap((p) => p.ports.map((one) => one.equipment)));
    return {
      basis,
      protectors: protector,
      notPlaced: [],
      equipments: plan.site.equipments.filter((e) => tags.has(e.tag)),
      accepted: acceptedOf(plan, tags),
    };
  }
  if (!known) return null;
  const here = (p: { equipment: string; port: string }): boolean =>
    p.equipment === equipment && (port === undefined || p.port === port);
  return {
    basis,
    protectors: plan.protectors.filter((p) => p.ports.some(here)),
    notPlaced: plan.notPlaced.filter(here),
    equipments,
    accepted: acceptedOf(plan, new Set([equipment])),
  };
}

/** What somebody accepted about some equipments, and about the job. */
function acceptedOf({ accepted = [] }: Plan, tags: ReadonlySet<string>): readonly PlannedAccepted[] {
  return accepted.filter(({ equipment, values }) => {
    const rows = 'rows' in values && Array.isArray(values.rows) ? values.rows.map(String) : [];
    return equipment === '' || tags.has(equipment) || rows.some((tag) => tags.has(tag));
  });
}

/** A tag may itself hold a colon: the longest tag of the plan counts. */
function split(plan: Plan, wanted: string): { equipment: string; port: string | undefined } {
  if (plan.site.equipments.some((e) => e.tag === wanted)) return { equipment: wanted, port: undefined };
  const colon = wanted.lastIndexOf(':');
  return colon < 0
    ? { equipment: wanted, port: undefined }
    : { equipment: wanted.slice(0, colon), port: wanted.slice(colon + 1) };
}

/**
 * The chain behind protectors and bare ports: rule, source, each number with where it came from, each rejected part.
 * @param asked what was asked about
 * @returns lines, each ended by a line feed
 */
export function whyText(asked: Asked): string {
  return [
    ...asked.protectors.map((p) => protectorText(p, asked.basis)),
    asked.notPlaced.length > 0 ? notPlacedText(asked.notPlaced) : '',
    asked.equipments.length > 0 ? statedText(asked.equipments) : '',
    asked.accepted && asked.accepted.length > 0 ? acceptedText(asked.accepted) : '',
  ]
    .filter((s) => s !== '')
    .join('\n');
}

const lines = (of: readonly string[]): string => of.map((line) => `${line}\n`).join('');
const portName = (p: { equipment: string; port: string }): string =>
  printable(`${p.equipment}:${p.port}`, 120);
const or = (value: number | null, unit: string): string => (value === null ? 'unknown' : figure(value, unit));

function protectorText(p: PlannedProtector, basis: Basis): string {
  const part = p.part ?? p.existing ?? 'no part';
  const { required, figures } = p;
  const asks = [
    `MCOV at least ${or(required.mcov, 'V')} ${required.current ?? ''}`.trimEnd(),
    `In at least ${or(required.in, 'A')}`,
    required.sccr === null ? '' : `short-circuit current rating at least ${figure(required.sccr, 'A')}`,
    required.sccrAtLeast === null
      ? ''
      : `short-circuit current rating at least ${figure(required.sccrAtLeast, 'A')}, and more for what isn’t known`,
    required.types.length > 0 ? `type ${required.types.join(' or ')}` : '',
    required.enclosures.length > 0 ? `enclosure ${required.enclosures.join(', ')}` : '',
    required.listedFor === null ? '' : `listed for ${required.listedFor}`,
  ].filter((s) => s !== '');
  const has =
    figures === null
      ? []
      : [
          `  has: MCOV ${or(figures.mcov, 'V')}, ${figures.upBasis ?? 'Up'} ${or(figures.up, 'V')}, leads ${or(figures.leadVoltage, 'V')}, ` +
            `withstand behind it ${or(figures.impulseWithstand, 'V')}${figures.withstandAssumed ? ' (assumed)' : ''}, ` +
            `reach ${figures.reach === null ? 'not limited within its run' : runLength(figures.reach, basis)}` +
            (figures.reachWithstand === null || figures.reachWithstand === figures.impulseWithstand
              ? ''
              : ` by ${figure(figures.reachWithstand, 'V')} of what it feeds (assumed)`) +
            (figures.levelBetween === null
              ? ''
              : `, between two conductors up to ${figure(figures.levelBetween, 'V')}`),
        ];
  return lines([
    `${p.tag}  ${printable(part)} at ${p.ports.map(portName).join(' and ')}: ${p.strength}`,
    ...p.reasons.flatMap((r) => [
      `  ${r.rule} (${r.strength}): ${printable(say(r.because))}`,
      ...r.sources.map((source) => `    ${printable(say(source))}`),
    ]),
    `  asks: ${asks.join(', ')}`,
    ...has,
    ...devicesText(p, deviceAndWhy).map((text) => `  overcurrent device: ${printable(text)}`),
    ...leadLines(p),
    ...p.calculations.flatMap(calculationLines),
    ...p.channels.map((c) => `  channel ${String(c.channel)}: ${channelText(c)} to ${c.to}`),
    ...p.rejected.map((r) => `  not ${printable(r.part, 60)}: ${printable(say(r.because))} (${r.rule})`),
  ]);
}

function leadLines(p: PlannedProtector): string[] {
  const leads = smallestLeadsText(p);
  return leads === '' ? [] : [`  smallest leads: ${leads}`];
}

function calculationLines(calculation: Calculation): string[] {
  return [
    `  ${say(calculation.title)} (${calculation.rule})`,
    ...calculation.steps.map((s) => {
      const told = stepTold(s);
      const working = [told.formula, told.substituted]
        .filter((t) => !isUnsaid(t))
        .map((t) => `${printable(t)} = `);
      const says = printable(told.says);
      return `    ${s.symbol === '' ? '' : `${s.symbol} = `}${working.join('')}${stepValue(s.value, s.unit)}  ${says} [${printable(told.source)}]`;
    }),
  ];
}

/** A step's value: two decimals, or three figures where it is smaller than 1. */
function stepValue(value: number, unit: string): string {
  if (Math.abs(value) >= 1 || value === 0) return figure(value, unit);
  return `${String(Number(value.toPrecision(3)))} ${unit}`.trimEnd();
}

function notPlacedText(ports: readonly NotPlaced[]): string {
  return lines([
    'Without a protector',
    ...ports.map(
      (p) =>
        `  ${portName(p)}: ${p.open ? 'open: ' : ''}${printable(say(p.because))}${p.rule === '' ? '' : ` (${p.rule})`}`,
    ),
  ]);
}

function statedText(equipments: readonly PlannedEquipment[]): string {
  return lines([
    'Stated',
    ...equipments.flatMap((e) =>
      e.facts.map(
        (f) =>
          `  ${printable(e.tag, 60)} ${f.field}: ${printable(f.text === '' ? String(f.value) : f.text, 80)}  [${printable(cited(f.origin))}]`,
      ),
    ),
  ]);
}

function acceptedText(items: readonly PlannedAccepted[]): string {
  return lines([
    'Accepted',
    ...items.map(
      (item) => `  ${printable(told(item).message)} (${item.code})  [${printable(acceptedBy(item))}]`,
    ),
  ]);
}
