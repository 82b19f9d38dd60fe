/**
 * A reason that is a value of another one. Its type names none of them: the table of all reasons would else hold itself.
 * `isReason` in words/ tells which one it is.
 */
export interface NestedReason {
  /** Of a reason, permanent. */
  readonly code: string;
  readonly values: object;
}
