/** What rules ask of a part, and the steps' sources: code and values. */
export type RateReasons = Record<never, never>;
