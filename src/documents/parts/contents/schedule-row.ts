import { isNec } from '../../../model/editions.js';
import type { Plan, PlannedProtector } from '../../../model/plan.js';
import { lengthUnitOf, longestLead } from '../../../words/lengths.js';
import { devicesInFew } from '../../../words/devices-in-short.js';
import { portsInWords } from '../../../words/port-words.js';
import {
  channelsInShort,
  groundInShort,
  positionInShort,
  systemInShort,
} from '../../../words/protector-short.js';
import { metric } from './code-figures.js';
import { isDeviceBlank, isFaultCurrentBlank, isGroundBlank, isLeadBlank } from '../blanks.js';
import { askedCurrent, askedKiloamperes, askedVolts, givenKiloamperes } from './paper-figures.js';
import { requiredBy } from './required-by.js';

/** A cell of the schedule: its lines, and whether something is left to be filled in below them. */
export interface Cell {
  readonly lines: readonly string[];
  readonly fill: boolean;
}

/** What the schedule says of a housing, but for its tag and the equipment that it guards. */
export interface ScheduleCells {
  readonly place: Cell;
  readonly system: Cell;
  readonly channels: Cell;
  readonly part: Cell;
  readonly listing: Cell;
  readonly type: Cell;
  readonly mcovNeeded: Cell;
  readonly mcov: Cell;
  readonly level: Cell;
  readonly inNeeded: Cell;
  readonly in: Cell;
  readonly faultCurrent: Cell;
  readonly sccr: Cell;
  readonly device: Cell;
  readonly gauge: Cell;
  readonly longest: Cell;
  readonly ground: Cell;
  readonly enclosure: Cell;
  readonly asked: Cell;
}

const cell = (...lines: readonly string[]): Cell => ({
  lines: lines.filter((one) => one !== ''),
  fill: false,
});
const NONE = '–';
const given = (value: number | null | undefined, tell: (value: number) => string): Cell =>
  cell(value === null || value === undefined ? NONE : tell(value));

/** Ports that the tag of the equipment says already. */
const PLAIN_PORTS: ReadonlySet<string> = new Set(['output', 'feeder', 'terminals', 'dc-in']);

/** The ports of one equipment in words; `` where its tag says it all. */
export function guardedPorts(ports: readonly string[]): string {
  return ports.every((name) => PLAIN_PORTS.has(name)) ? '' : portsInWords(ports);
}

function partCell({ part, existing, partDetails }: PlannedProtector): Cell {
  if (existing !== null) return cell('(E) existing:', existing);
  if (part === null) return cell('no part chosen');
  return cell(part, partDetails?.maker ?? '');
}

function typeCell({ partDetails, required }: PlannedProtector, nec: boolean): Cell {
  if (partDetails === null) return cell(required.types.length === 0 ? NONE : required.types.join(' or '));
  const { type, iecClass } = partDetails;
  const own = nec ? type : iecClass;
  const other = nec ? iecClass : type === null ? null : `type ${String(type)}`;
  return cell(own === null ? (other ?? NONE) : String(own));
}

/** The IP code alone where the catalogue states one beside a NEMA type and the IEC standards are in force. */
const enclosureText = (stated: string, nec: boolean): string =>
  nec ? stated : (/\bIP ?\d[\dX]/i.exec(stated)?.[0] ?? stated);

/** The fault current there, as far as it is known. */
function faultCell(protector: PlannedProtector): Cell {
  const { sccr, sccrAtLeast, backfeedUnknown } = protector.required;
  const fill = isFaultCurrentBlank(protector);
  const known = sccr ?? sccrAtLeast;
  if (known === null) return { lines: fill ? [] : [NONE], fill };
  const isAll = sccr !== null && backfeedUnknown.length === 0;
  const holds = protector.figures?.sccr;
  // Of an array it is some amperes, which would be a small share of a kA.
  const told = known < 1000 ? askedCurrent(known, holds) : askedKiloamperes(known, holds);
  return { lines: [`${told}${isAll ? '' : ' +'}`], fill };
}

/**
 * The cells of one housing: V, kA and lengths as the trade writes them; what nobody states is a blank to fill in.
 */
export function scheduleCells(protector: PlannedProtector, plan: Plan): ScheduleCells {
  const { figures, required, partDetails, place, outdoors, wiring } = protector;
  const nec = isNec(plan.basis);
  const gauge = wiring.leadGauge === '' ? (figures?.smallestLead ?? '') : wiring.leadGauge;
  return {
    place: cell(`${place === '' ? NONE : place}${outdoors ? ' (outdoors)' : ''}`, positionInShort(protector)),
    system: cell(systemInShort(protector, plan)),
    channels: cell(channelsInShort(protector)),
    part: partCell(protector),
    listing: cell(partDetails?.listing ?? '', partDetails?.listingFile ?? ''),
    type: typeCell(protector, nec),
    mcovNeeded: given(required.mcov, (v) => askedVolts(v, figures?.mcov)),
    mcov: given(figures?.mcov, String),
    level: given(figures?.up, String),
    inNeeded: given(required.in, (v) => askedKiloamperes(v, figures?.in)),
    in: given(figures?.in, givenKiloamperes),
    faultCurrent: faultCell(protector),
    sccr: given(figures?.sccr, givenKiloamperes),
    device: { lines: devicesInFew(protector), fill: protector.overcurrent.some(isDeviceBlank) },
    gauge: {
      lines: gauge === '' ? [] : [metric(gauge)],
      fill: isLeadBlank(protector) || isGroundBlank(protector),
    },
    longest: cell(longestLead(wiring, lengthUnitOf(plan))),
    ground: cell(groundInShort(protector)),
    enclosure: cell(enclosureText(partDetails?.enclosure ?? required.enclosures.join(', '), nec)),
    asked: cell(...requiredBy(protector, plan)),
  };
}
