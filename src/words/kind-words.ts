/**
 * A kind of equipment as words: `charge controller`, `DC load`.
 * @param kind of the contract
 */
export function kindWords(kind: string): string {
  return kind.replaceAll('-', ' ').replace(/^(?:ac|dc)(?= )/, (current) => current.toUpperCase());
}
