/** Why a part fits, or doesn't: code and values. */
export type ChooseReasons = Record<never, never>;
