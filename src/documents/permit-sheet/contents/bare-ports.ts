import { byNaturalOrder } from '../../../model/natural-order.js';
import type { Plan, PlannedProtector, PlannedRun } from '../../../model/plan.js';
import { drawnLength, lengthUnitOf, reachWords } from '../../../words/lengths.js';
import { portInWords } from '../../../words/port-words.js';
import { tagList } from '../../../words/tag-list.js';
import { inputWords } from '../../parts/contents/turbine-inputs.js';

interface Port {
  readonly equipment: string;
  readonly port: string;
  readonly open: boolean;
}

const sorted = (tags: readonly string[]): string => tagList([...tags].sort(byNaturalOrder));

/** `within reach of P-3`: where a protector that stands elsewhere covers a port; `` where the plan says nothing of the kind. */
function coveredText(plan: Plan, { equipment, port }: Port): string {
  for (const one of plan.notPlaced) {
    if (one.equipment !== equipment || one.port !== port || one.because.code !== 'grid-tie/within-reach')
      continue;
    const { target } = one.because.values;
    const tags = plan.protectors
      .filter((p) => p.required.current === 'ac' && p.ports.some((at) => at.equipment === target))
      .map(({ tag }) => tag);
    return tags.length === 0 ? '' : `within reach of ${sorted(tags)}`;
  }
  return '';
}

/** What the ports of some kinds are called here. */
const NAMED: Readonly<Record<string, string>> = {
  'signal-line': 'data or signal line',
  disconnect: 'terminals',
};

/** Why a port has none, whatever its runs are. */
const WHATEVER: Readonly<Record<string, string>> = {
  'port/unused': 'unused',
  'service-place/shared': 'stands at the service',
  'drive/switched-pulses': 'carries switched pulses of the drive',
  'exempt/nothing-worth-protecting': 'nothing there worth protecting, by the list',
  'long-run/disconnect': 'a disconnect: protected at the ends of its run',
  'signal/outside-plan': 'outside this plan',
};

/** `its runs stay indoors in one building`: why nothing asks for one there, in a few words; `` where the plan doesn't speak of it. */
function runText(plan: Plan, { equipment, port }: Port): string {
  for (const { equipment: at, port: its, because } of plan.notPlaced) {
    if (at !== equipment || its !== port) continue;
    const why = WHATEVER[because.code];
    if (why !== undefined) return why;
    if (because.code === 'long-run/indoors') return 'its runs stay indoors in one building';
    if (because.code === 'long-run/not-longer') {
      const { limit, basis } = because.values;
      return `no run outdoors or between buildings over ${drawnLength(limit.value, basis)}`;
    }
  }
  return '';
}

/** The runs from a port to the next protector on the side of its supply, and that protector; undefined: there is none. */
interface Ahead {
  readonly protector: PlannedProtector;
  readonly runs: readonly PlannedRun[];
}

function protectorAhead(plan: Plan, { equipment, port }: Port): Ahead | undefined {
  const runs: PlannedRun[] = [];
  let at = { equipment, port };
  for (;;) {
    const run = plan.site.runs.find((one) => one.to.equipment === at.equipment && one.to.port === at.port);
    // A circle is a conflict of its own; here it ends the walk.
    if (!run || runs.includes(run)) return undefined;
    runs.push(run);
    const { from } = run;
    const protector = plan.protectors.find(
      ({ ports, required }) =>
        required.current === 'ac' &&
        ports.some((one) => one.equipment === from.equipment && one.port === from.port),
    );
    if (protector) return { protector, runs };
    at = from;
  }
}

/** `beyond the reach of P-8, 100 ft`: whether the next protector on the side of the supply covers a port; `` where nothing can be said, or there is none. */
function reachText(plan: Plan, port: Port): string {
  const ahead = protectorAhead(plan, port);
  if (!ahead) return '';
  const { protector, runs } = ahead;
  const { tag, figures } = protector;
  if (runs.some(({ betweenBuildings }) => betweenBuildings))
    return `fed from another building, where the reach of ${tag} ends`;
  const reach = figures?.reach ?? null;
  if (reach === null) return '';
  const lengths = runs.flatMap(({ length }) => length ?? []);
  const distance = lengths.reduce((sum, one) => sum + one, 0);
  if (distance > reach)
    return reach === 0
      ? `${tag} does not reach there`
      : `beyond the reach of ${tag}, ${reachWords(figures, lengthUnitOf(plan))}`;
  return lengths.length < runs.length
    ? `length of its run not stated, reach of ${tag} not compared`
    : `within reach of ${tag}`;
}

/** ` (its runs stay indoors in one building; beyond the reach of P-8, 100 ft)`. */
function whyText(plan: Plan, port: Port): string {
  const covered = coveredText(plan, port);
  const told = covered === '' ? [runText(plan, port), reachText(plan, port)] : [covered];
  const why = told.filter((one) => one !== '').join('; ');
  return why === '' ? '' : ` (${why})`;
}

/** Ports without a protector, equipment by equipment, in one line: with why, and whether the next protector on the side of the supply reaches there. */
export function bareNotes(plan: Plan): string[] {
  const inputs = inputWords(plan);
  const kinds = new Map(plan.site.equipments.map((e) => [e.tag, e.kind]));
  const isOpen = new Set(plan.notPlaced.filter(({ open }) => open).map((n) => `${n.equipment}\n${n.port}`));
  const ports = new Map<string, Port>();
  for (const { equipment, port } of plan.notPlaced) {
    const key = `${equipment}\n${port}`;
    ports.set(key, { equipment, port, open: isOpen.has(key) });
  }
  const named = (open: boolean): string => {
    const byPort = new Map<
      string,
      { readonly port: string; readonly why: string; readonly tags: string[] }
    >();
    for (const one of ports.values()) {
      if (one.open === open) {
        const words =
          NAMED[kinds.get(one.equipment) ?? ''] ?? inputs(one.equipment, [one.port], portInWords(one.port));
        const why = open ? '' : whyText(plan, one);
        const key = `${words}\n${why}`;
        const same = byPort.get(key) ?? { port: words, why, tags: [] };
        byPort.set(key, same);
        same.tags.push(one.equipment);
      }
    }
    return [...byPort.values()].map(({ port, why, tags }) => `${port} of ${sorted(tags)}${why}`).join('; ');
  };
  const none = named(false);
  const undecided = named(true);
  return [
    ...(none === '' ? [] : [`No protector asked for at: ${none}.`]),
    ...(undecided === '' ? [] : [`Not decided, as a fact is missing: ${undecided}.`]),
  ];
}
