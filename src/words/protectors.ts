import type { ProtectedGrounding, ProtectedSystem } from '../model/words.js';

/** Stands for what the catalogue doesn't state of a part. */
export const BY_INSTRUCTIONS = 'by the part’s instructions';

/** The system at a protector: `120/240`, `three-phase`, `dc`. */
export function systemText(system: ProtectedSystem | null): string {
  return system ?? 'not stated';
}

const GROUNDINGS: { readonly [G in ProtectedGrounding]?: string } = {
  negative: 'negative grounded',
  positive: 'positive grounded',
  neutral: 'N grounded',
  'not-known': 'grounding not known',
};

/** The grounding of a circuit: `solid`, `negative grounded`, `floating`; `` where nothing can be said yet. */
export function groundingName(grounding: ProtectedGrounding | null): string {
  return grounding === null ? '' : (GROUNDINGS[grounding] ?? grounding);
}

/** True where a protector guards the wires of a control circuit. */
export function guardsControl({ ports }: { readonly ports: readonly { readonly port: string }[] }): boolean {
  return ports.length > 0 && ports.every(({ port }) => port === 'terminals');
}
