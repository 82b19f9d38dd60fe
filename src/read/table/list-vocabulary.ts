import { FIELD_NAMES, FIELDS } from '../../model/fields.js';
import type { Field, JobField, RowField } from '../../model/list.js';
import { ALIASES, DOUBTFUL } from './aliases.js';
import { dimensionOf } from '../cell/field-dimension.js';
import type { Vocabulary } from './headings.js';

const doubtfulOf = (field: Field): readonly string[] => DOUBTFUL[field] ?? [];
const aliasesOf = (field: Field): readonly string[] => ALIASES[field] ?? [];

export function isJobField(field: Field): field is JobField {
  return FIELDS[field].of === 'job' && field !== 'job';
}

export function isRowField(field: Field): field is RowField {
  return FIELDS[field].of === 'row';
}

/** Facts without which a list is planned as another site: cables, strings, inputs. */
const DECIDING = new Set<Field>([
  'connects_to',
  'run_length',
  'modules_in_series',
  'strings_in_parallel',
  'dc_inputs',
  'max_dc_voltage',
  'isolated',
]);

/** The headings of an equipment list. */
export const LIST_VOCABULARY: Vocabulary<Field> = {
  fields: FIELD_NAMES,
  aliases: aliasesOf,
  doubtful: doubtfulOf,
  decides: (field) => DECIDING.has(field),
  dimension: dimensionOf,
  identity: ['tag', 'kind', 'maker', 'model', 'connects_to'],
  mapped: true,
};

/** The headings of a file of job facts. */
export const JOB_FACTS_VOCABULARY: Vocabulary<Field> = {
  fields: FIELD_NAMES.filter((f) => f === 'job' || isJobField(f)),
  aliases: aliasesOf,
  doubtful: doubtfulOf,
  dimension: dimensionOf,
  identity: ['job'],
};

/** Fields of a place on a site: an equipment library knows none of them. */
const OF_A_SITE = new Set<Field>([
  'tag',
  'quantity',
  'connects_to',
  'run_length',
  'place',
  'building',
  'serial',
]);

/** The headings of an equipment library. */
export const LIBRARY_VOCABULARY: Vocabulary<RowField> = {
  fields: FIELD_NAMES.filter(isRowField).filter((f) => !OF_A_SITE.has(f)),
  aliases: aliasesOf,
  doubtful: doubtfulOf,
  dimension: dimensionOf,
  identity: ['maker', 'model'],
};
