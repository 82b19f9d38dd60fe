import { FIELD_GUIDE } from '../../model/field-guide.js';
import { FIELD_NAMES, FIELDS, type FieldInfo } from '../../model/fields.js';
import type { Field } from '../../model/list.js';
import type { Part } from '../../model/catalogue.js';
import { KINDS, type Kind } from '../../model/words.js';
import { dimensionOf } from '../cell/field-dimension.js';
import { KIND_WORDS } from '../cell/kind-words.js';
import { unitSymbols, type Dimension } from '../cell/units.js';
import { LIBRARY_VOCABULARY, LIST_VOCABULARY } from '../table/list-vocabulary.js';
import { CATALOGUE_VOCABULARY, PART_FIELDS, type PartField, type PartFieldInfo } from './catalogue-fields.js';
import { PART_GUIDE } from './part-guide.js';

/** What is to be known of a field of the list or a column of the catalogue. */
export interface GuideEntry {
  readonly name: string;
  readonly of: 'job' | 'row' | 'part';
  readonly means: string;
  /** What a cell may hold. */
  readonly expected: string;
  /** Where the cell is one of a few words: those; else none. */
  readonly words: readonly string[];
  /** Units that may stand in the heading or in the cell; none: it takes no unit. */
  readonly units: readonly string[];
  /** What a figure without a unit is; ``: it takes no unit, or needs one. */
  readonly bare: string;
  /** What holds where it is blank; ``: nothing is taken for granted. */
  readonly unstated: string;
  /** A cell that is taken. */
  readonly example: string;
  /** Further headings that are taken for it. */
  readonly headings: readonly string[];
  /** Who can supply it; ``: the company. */
  readonly who: string;
  /** True where a library may state it for a model. */
  readonly ofModel: boolean;
}

/** A field of the list. */
export interface FieldEntry extends GuideEntry {
  readonly field: Field;
}

/** A column of the catalogue, with what of a part it states. */
export interface ColumnEntry extends GuideEntry {
  readonly reads: readonly (keyof Part)[];
}

const BARE: { readonly [D in Dimension]?: string } = {
  length: 'ft with nec, m with iec (units.length of the settings)',
  voltage: 'V',
  current: 'A',
  temperature: 'C (units.temperature of the settings)',
  'apparent-power': 'kVA',
  share: '%',
  speed: 'rpm',
  'flash-density': 'flashes/km2/year',
  days: 'days',
};

function wordsOf({ type }: FieldInfo): readonly string[] {
  if (typeof type === 'object') return type.words;
  if (type === 'yesno') return ['yes', 'no'];
  return type === 'mounting' ? ['roof', 'ground', 'recessed', 'surface'] : [];
}

function bareOf(field: Field, dimension: Dimension | null): string {
  if (FIELDS[field].type === 'kilometres') return 'km';
  return dimension === null || FIELDS[field].type === 'control-voltage' ? '' : (BARE[dimension] ?? '');
}

/** Every field of the equipment list, in the order of the contract. */
export function listGuide(): readonly FieldEntry[] {
  const ofModel = new Set<string>(LIBRARY_VOCABULARY.fields);
  return FIELD_NAMES.map((field) => {
    const dimension = dimensionOf(field);
    const { of, expected, who } = FIELDS[field];
    const { means, example, unstated = '' } = FIELD_GUIDE[field];
    return {
      field,
      name: field,
      of,
      means,
      expected,
      words: wordsOf(FIELDS[field]),
      // How many there are needs no unit.
      units: dimension === null || dimension === 'pieces' ? [] : unitSymbols(dimension),
      bare: bareOf(field, dimension),
      unstated,
      example,
      headings: LIST_VOCABULARY.aliases(field),
      who,
      ofModel: ofModel.has(field),
    };
  });
}

/** The unit of a bare figure of the catalogue. */
function bareOfPart({ type }: PartFieldInfo): string {
  if (type.is !== 'figure') return '';
  if (type.dimension === 'current') return type.bare === 1000 ? 'kA' : type.bare === 1 ? 'A' : 'mA';
  if (type.dimension === 'length') return 'm';
  return type.dimension === null ? '' : (BARE[type.dimension] ?? '');
}

function wordsOfPart({ type }: PartFieldInfo): readonly string[] {
  if (type.is === 'yes-no') return ['yes', 'no'];
  return type.is === 'words' || type.is === 'several' ? type.words : [];
}

/** Every column of the catalogue, in the order of the contract. */
export function catalogueGuide(): readonly ColumnEntry[] {
  return CATALOGUE_VOCABULARY.fields.map((name: PartField) => {
    const dimension = CATALOGUE_VOCABULARY.dimension(name);
    const { means, example, unstated = '', reads } = PART_GUIDE[name];
    return {
      name,
      of: 'part',
      means,
      expected: PART_FIELDS[name].expected,
      words: wordsOfPart(PART_FIELDS[name]),
      units: dimension === null ? [] : unitSymbols(dimension),
      bare: bareOfPart(PART_FIELDS[name]),
      unstated,
      example,
      headings: CATALOGUE_VOCABULARY.aliases(name),
      who: '',
      ofModel: false,
      reads,
    };
  });
}

/** A kind with the words of the trade that are taken for it. */
export interface KindEntry {
  readonly kind: Kind;
  readonly words: readonly string[];
}

/** The words that are taken for each kind, and those that can be several, which are asked about. */
export function kindGuide(): { readonly taken: readonly KindEntry[]; readonly asked: readonly string[] } {
  const known = [...KIND_WORDS.values()];
  const phrase = ({ words }: { readonly words: readonly string[] }): string => words.join(' ');
  return {
    taken: KINDS.map((kind) => ({
      kind,
      words: known.filter(({ taken, words }) => taken === kind && words.join('-') !== kind).map(phrase),
    })),
    asked: known
      .filter(({ taken }) => taken === null)
      .map((one) => `${phrase(one)} (${one.kinds.join(' or ')})`),
  };
}
