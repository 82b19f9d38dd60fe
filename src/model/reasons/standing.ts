/** How a job stands to a rule: code and values. */
export type StandingReasons = Record<never, never>;
