export const DECIDED = ['ports', 'place', 'part', 'conductors'] as const;
/** What of a housing can differ between two plans. */
export type Decided = (typeof DECIDED)[number];

/** How a housing stands in two plans: `gone`: the later one hasn't it; `new`: the earlier hadn't. */
export type DecisionIs = 'gone' | 'new' | 'changed';
