/** How conductors and lights come about: code and values. */
export type WireReasons = Record<never, never>;
