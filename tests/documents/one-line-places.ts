import type { PennedSheet } from '../../src/documents/drawing/one-line.js';
import type { Area, TapPlace } from '../../src/documents/drawing/one-line/pen.js';
import type { Plan } from '../../src/model/plan.js';
import { tagsOf } from './tags-of.js';

interface Place {
  readonly equipment: string;
  readonly port: string;
}

function distance({ x, y }: TapPlace, box: Area): number {
  const dx = Math.max(box.x - x, 0, x - box.x - box.width);
  const dy = Math.max(box.y - y, 0, y - box.y - box.height);
  return Math.hypot(dx, dy);
}

/** The boxes of each equipment on a sheet: the bold words inside them are its tags. */
function boxesByTag({ pen }: Pick<PennedSheet, 'pen'>): Map<string, Area[]> {
  const found = new Map<string, Area[]>();
  for (const box of pen.boxes) {
    const own = pen.texts.find(
      (t) => t.x > box.x && t.y > box.y && t.x < box.x + box.width && t.y < box.y + box.height,
    );
    const bold = (own?.lines ?? []).flatMap(({ text, bold: isBold }) => (isBold ? [text] : [])).join(' ');
    for (const tag of tagsOf(bold)) found.set(tag, [...(found.get(tag) ?? []), box]);
  }
  return found;
}

/** What stands at the other end of each line of a port, with what the line passes through. */
function otherEnds({ site }: Plan, { equipment, port }: Place): Place[] {
  return site.runs.flatMap((run) => {
    const through = run.through.map((tag) => ({ equipment: tag, port: '' }));
    const at = (end: Place): boolean => end.equipment === equipment && end.port === port;
    if (at(run.from)) return [...through, run.to];
    return at(run.to) ? [...through, run.from] : [];
  });
}

/**
 * Protectors of a drawn sheet whose tap doesn't stand at its own end, each as one line: it is no nearer to the box of its equipment
 * than to the one at the other end, or no nearer than a protector of that end.
 */
export function misplacedTaps(plan: Plan, sheet: Pick<PennedSheet, 'pen'>): string[] {
  const boxes = boxesByTag(sheet);
  const nearest = (tap: TapPlace, tag: string): number =>
    Math.min(...(boxes.get(tag) ?? []).map((box) => distance(tap, box)));
  const known = new Map(plan.protectors.map((p) => [p.tag, p]));
  const placesOf = ({ protectors }: TapPlace): Place[] =>
    protectors.flatMap((tag) => known.get(tag)?.ports ?? []);
  /** Where it hangs: of a housing that guards two lines, the terminals that are nearest. */
  const ownOf = (tap: TapPlace): Place | undefined =>
    placesOf(tap).reduce<Place | undefined>(
      (a, b) => (a && nearest(tap, a.equipment) <= nearest(tap, b.equipment) ? a : b),
      undefined,
    );
  return sheet.pen.taps.flatMap((tap) => {
    const name = tap.protectors.join(', ');
    const own = ownOf(tap);
    if (!own) return [`${name} guards nothing`];
    const from = nearest(tap, own.equipment);
    if (!Number.isFinite(from)) return [`${name} stands on a sheet without ${own.equipment}`];
    return otherEnds(plan, own).flatMap((other) => {
      const faults: string[] = [];
      if (from >= nearest(tap, other.equipment))
        faults.push(`${name} of ${own.equipment} stands nearer to ${other.equipment}`);
      for (const one of sheet.pen.taps) {
        const isThere = placesOf(one).some(
          (p) => p.equipment === other.equipment && (other.port === '' || p.port === other.port),
        );
        if (isThere && one !== tap && from >= nearest(one, own.equipment))
          faults.push(
            `${one.protectors.join(', ')} of ${other.equipment} stands nearer to ${own.equipment} than ${name}`,
          );
      }
      return faults;
    });
  });
}
