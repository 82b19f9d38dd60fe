import { describe, expect, it } from 'vitest';
import { recordView } from '../../src/documents/closeout-pack/record.js';
import { photoViews } from '../../src/documents/closeout-pack/photos.js';
import { siteTrees } from '../../src/documents/drawing/one-line/site-trees.js';
import { lightGroups } from '../../src/documents/parts/owner-lights.js';
import { ownerBoxes } from '../../src/documents/owner-sheet/boxes.js';
import { groundingHow } from '../../src/documents/parts/grounding-how.js';
import type { Plan } from '../../src/model/plan.js';
import { defaultSettings } from '../../src/model/settings.js';
import { planJob } from '../../src/plan/plan-job.js';
import { readListText } from '../../src/read/list/lists.js';
import { crewPackWords } from '../../src/words/crew-language.js';
import { ownerStrings } from '../../src/words/languages.js';

// Documents of a job twice as large cost twice as much: counted are looks at the site, never seconds.

const settings = defaultSettings();
const HEADING = 'job,tag,kind,connects_to,ac_in,place,run_length,system_grounding\n';

function planOf(rows: readonly string[]): Plan {
  const list = `${HEADING}J,S,service,,120/240,House / hall,,solid\n${rows.map((row) => `J,${row}\n`).join('')}`;
  const [job] = readListText('list.csv', list, { settings }).jobs;
  if (!job) throw new Error('no job');
  return planJob(job, { catalogue: undefined, settings });
}

/** Panels behind each other, each with a protector. */
const chain = (count: number): Plan =>
  planOf(
    Array.from(
      { length: count },
      (_, i) => `P${i + 1},panel,${i === 0 ? 'S' : `P${i}`},120/240,House / hall,20 ft`,
    ),
  );

/** Counts how often something looks at these of an equipment, or at the ends of a run. */
function counted(plan: Plan, ...keys: readonly string[]): () => number {
  let looks = 0;
  const watch = (target: object, key: string): void => {
    const value: unknown = Reflect.get(target, key);
    Object.defineProperty(target, key, {
      enumerable: true,
      get: () => {
        looks += 1;
        return value;
      },
    });
  };
  for (const equipment of plan.site.equipments) for (const key of keys) watch(equipment, key);
  for (const run of plan.site.runs) for (const end of ['from', 'to']) watch(run, end);
  return () => looks;
}

const strings = ownerStrings('en');
const questions: readonly (readonly [string, (plan: Plan) => void])[] = [
  ['whether a grounding is stated', (plan) => plan.protectors.map(groundingHow(plan))],
  ['what is written into the record', (plan) => recordView(plan, crewPackWords('en'))],
  ['what the drawing shows', siteTrees],
  [
    'whom a photo shows',
    (plan) =>
      photoViews(
        plan,
        plan.site.equipments.map(({ tag }) => ({ tag, caption: '', dataUrl: '' })),
      ),
  ],
  ['what feeds a light', (plan) => plan.protectors.map((p) => lightGroups(plan, p, strings.states))],
  ['where the owner’s protectors are', (plan) => ownerBoxes(plan, strings)],
];

describe('looks at the site grow with the job', () => {
  it.each(questions)('%s', (_, ask) => {
    const looks = (count: number): number => {
      const plan = chain(count);
      const sofar = counted(plan, 'tag', 'facts');
      ask(plan);
      return sofar();
    };
    expect(looks(160) / looks(80)).toBeLessThan(2.2);
  });
});
