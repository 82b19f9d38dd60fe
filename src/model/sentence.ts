declare const made: unique symbol;

/**
 * A sentence for people. It is made in words/ alone and goes to paper, screen and files as it is: nothing is decided by it, so a
 * lint rule refuses to compare one or to take it apart.
 */
export type Sentence = string & { readonly [made]: true };
