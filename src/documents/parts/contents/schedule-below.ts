import { isNec } from '../../../model/editions.js';
import type { Plan } from '../../../model/plan.js';
import { tagList } from '../../../words/tag-list.js';
import { isListingBlank } from '../blanks.js';
import type { Cell } from './schedule-row.js';

/** What the rows of a schedule share, and their fault currents. */
interface Shared {
  /** `` where they don't share one. */
  readonly listing: string;
  readonly leads: readonly string[];
  readonly faults: readonly Cell[];
}

/** Facts that hold for every row, or for several of them, in one line each. */
export function belowTable(plan: Plan, { listing, leads, faults }: Shared): string[] {
  const lines = [
    ...(listing === '' ? [] : [`All parts: ${listing}${listing.endsWith('.') ? '' : '.'}`]),
    ...leads,
  ];
  const threePlusOne = plan.protectors.filter((p) => p.channels.some((c) => c.to === 'N'));
  if (threePlusOne.length > 0) {
    lines.push(`3+1, each line to N and N to PE: ${tagList(threePlusOne.map((p) => p.tag))}.`);
  }
  const supplied = plan.protectors.filter((p) =>
    p.overcurrent.some(({ because }) => because.code === 'overcurrent/by-supply-of-control'),
  );
  if (supplied.length > 0) {
    lines.push(
      `No fault current at ${tagList(supplied.map((p) => p.tag))}: limited by the class 2 supply of the circuit, else by the device.`,
    );
  }
  const unlisted = plan.protectors.filter((p) => isListingBlank(p, plan.basis));
  if (unlisted.length > 0) {
    const blanks = unlisted.map(({ tag }) => `${tag} ______`).join(', ');
    lines.push(`Turbine phases float; listed for ungrounded systems, by the maker: ${blanks}.`);
  }
  if (faults.some(({ lines: told }) => told.some((line) => line.endsWith('+'))))
    lines.push('+: and what the converter sends back, to be filled in.');
  lines.push(
    isNec(plan.basis)
      ? 'MCOV to ground. VPR: voltage protection rating. SCCR: short-circuit current rating.'
      : 'Uc: continuous voltage. Up: protection level. ISCCR: short-circuit current rating.',
  );
  return lines;
}
