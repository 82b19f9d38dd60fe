/** Codes of defaults, each of which decides something. */
export const DEFAULT_CODES: readonly string[] = [
  'default/basis',
  'default/used',
  'default/building',
  'default/dc-inputs',
  'default/dc-inputs-named',
  'default/isolated',
  'default/transformer-grounding',
];
