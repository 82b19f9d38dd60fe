import type { PlannedProtector } from '../../model/plan.js';

/**
 * How the catalogue says that the flag of a part is read: `good: green; used up: red`.
 * @returns `` where it says nothing, or the part has no flag
 */
export function flagWords({ partDetails }: PlannedProtector): string {
  if (partDetails?.indicator !== 'flag') return '';
  const { goodFlag, usedFlag, indicatorColor } = partDetails;
  const told = [
    ...(goodFlag === '' ? [] : [`good: ${goodFlag}`]),
    ...(usedFlag === '' ? [] : [`used up: ${usedFlag}`]),
  ];
  return told.length > 0 ? told.join('; ') : indicatorColor;
}
