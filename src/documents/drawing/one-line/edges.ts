import type { Plan, PlannedEquipment, PlannedRun } from '../../../model/plan.js';
import type { Edge, End, SiteParts } from './tree.js';

function stated(
  equipment: PlannedEquipment | undefined,
  field: string,
): string | number | boolean | undefined {
  return equipment?.facts.find((f) => f.field === field)?.value;
}

/** True where a row's connections name a tag. */
function names(equipment: PlannedEquipment | undefined, tag: string): boolean {
  const text = equipment?.facts.find((f) => f.field === 'connects_to')?.text ?? '';
  return text.split(';').some((one) => one.split('/')[0]?.trim() === tag);
}

/** The length of one cable of a run through other equipment: that of the row that names the other end; null: it can't be told. */
function legLength(a: PlannedEquipment | undefined, b: PlannedEquipment | undefined): number | null {
  const [owner] = [a, b].filter((one, i) => names(one, (i === 0 ? b : a)?.tag ?? ''));
  const length = stated(owner, 'run_length');
  return typeof length === 'number' ? length : null;
}

function edgesOfRun(run: PlannedRun, equipmentOf: ReadonlyMap<string, PlannedEquipment>): Edge[] {
  const between = run.through.map((equipment) => ({ equipment, port: '' }));
  const stations: End[] = [run.from, ...between, run.to];
  return stations.slice(1).flatMap((to, index) => {
    const from = stations[index];
    if (!from || from.equipment === to.equipment) return [];
    if (between.length === 0) return [{ from, to, length: run.length, lengthFrom: null }];
    const length = legLength(equipmentOf.get(from.equipment), equipmentOf.get(to.equipment));
    if (length !== null) return [{ from, to, length, lengthFrom: null }];
    const isLast = index === stations.length - 2;
    return [{ from, to, length: isLast ? run.length : null, lengthFrom: isLast ? run.from.equipment : null }];
  });
}

/** The site's lines, each once, at both their ends. */
export function siteParts(plan: Plan): SiteParts {
  const equipmentOf = new Map(plan.site.equipments.map((e) => [e.tag, e]));
  const edges = new Map<string, Edge>();
  for (const run of plan.site.runs) {
    for (const edge of edgesOfRun(run, equipmentOf)) {
      const { from, to } = edge;
      if (!equipmentOf.has(from.equipment) || !equipmentOf.has(to.equipment)) continue;
      const key = JSON.stringify([from.equipment, from.port, to.equipment, to.port]);
      if (!edges.has(key)) edges.set(key, edge);
    }
  }
  const edgesOf = new Map<string, Edge[]>();
  for (const edge of edges.values()) {
    for (const { equipment } of [edge.from, edge.to]) {
      const known = edgesOf.get(equipment);
      if (known) known.push(edge);
      else edgesOf.set(equipment, [edge]);
    }
  }
  return { plan, equipmentOf, edgesOf };
}
