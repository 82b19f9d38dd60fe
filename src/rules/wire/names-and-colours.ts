import { isNec } from '../../model/editions.js';
import { reason } from '../../model/reason.js';
import type { Given } from '../../model/rule.js';
import type { AcSystem } from '../../model/words.js';
import { practice, sources, type Cited } from '../sources.js';
import type { NamesDecision, WiringFacts, WiringRule } from '../wiring-facts.js';

const FACTS = [
  'basis',
  'circuit',
  'system',
  'whole',
  'grounding',
  'positiveGround',
  'negativeGround',
] as const;
type Facts = Given<WiringFacts, typeof FACTS>;

const PLANT = reason('names/positive-ground');
const IEC = reason('names/iec');
const LOWER = reason('names/nec');
const HIGHER = reason('names/nec-480');
const CORNER = reason('names/grounded-phase');
const POLE = reason('names/grounded-pole');

/** Systems of 277 V to neutral or more, whole or in part. */
const OF_480_OR_600: ReadonlySet<AcSystem | undefined> = new Set<AcSystem>([
  '277',
  '347',
  '480',
  '480 delta',
  '480Y/277',
  '600Y/347',
]);

const A_PLANT = practice(
  'A plant with its positive pole grounded names its poles by voltage and use, and no colour is taken for granted.',
);
const CITED_UNDER_NEC: readonly Cited[] = [
  'conductor-colours',
  practice(
    'Systems of 480Y/277 and 600Y/347: brown, orange, yellow, gray. Conductors are labelled whatever their colour.',
  ),
  A_PLANT,
];

export const namesAndColours = {
  id: 'wire/names-and-colours',
  title: 'Names and colours of conductors',
  why: 'A wire on the wrong channel leaves another one without protection, so each is told by a name, and by its colour besides.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: ['conductor-colours', practice('Conductors are labelled whatever their colour.'), A_PLANT],
  }),
  facts: FACTS,
  decide(f: Facts): NamesDecision {
    if (f.positiveGround) return { colours: 'positiveGround', grounded: null, because: PLANT };
    if (!isNec(f.basis)) return { colours: 'iec', grounded: null, because: IEC };
    const colours = isOf480(f) ? 'nec480' : 'nec';
    if (f.circuit === 'power' && f.grounding === 'corner')
      return { colours, grounded: 'L2', because: CORNER };
    if (f.negativeGround) return { colours, grounded: 'negative', because: POLE };
    return { colours, grounded: null, because: colours === 'nec480' ? HIGHER : LOWER };
  },
} satisfies WiringRule<WiringFacts, NamesDecision>;

function isOf480({ circuit, system, whole }: Facts): boolean {
  return circuit === 'power' && OF_480_OR_600.has(whole ?? system);
}
