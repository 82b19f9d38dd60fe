import type { Calculation, PlannedProtector } from '../../../model/plan.js';
import { plain } from '../../../words/figures.js';
import { current } from './paper-figures.js';

/** What the smallest leads rest on, in one line, and the leads as planned. */
export function leadWorking(
  protector: PlannedProtector,
  steps: Calculation['steps'],
): { working: string; result: string; against: string } | undefined {
  const { figures, wiring } = protector;
  const line = figures?.smallestLead ?? null;
  const ground = figures?.smallestGroundLead ?? null;
  if (line === null) return undefined;
  const parts = steps.flatMap((step): string[] => {
    switch (step.code) {
      case 'lead/behind-device':
        return [`behind a device of ${plain(step.values.device.value)} A`];
      case 'lead/for-current':
        return [`1.25 × the PV current: carries ${current(step.values.current.value)}`];
      case 'lead/by-instructions':
        return [`device of ${plain(step.value)} A, by the part’s instructions`];
      default:
        return [];
    }
  });
  return {
    working: parts.length === 0 ? 'least that code and terminals allow' : parts.join('; '),
    result: line === ground || ground === null ? line : `${line}, ground ${ground}`,
    against: wiring.leadGauge === '' ? '' : `${wiring.leadGauge} planned`,
  };
}
