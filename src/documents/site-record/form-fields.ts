import type { FormField, FormFields } from '../../model/print.js';
import { OUTCOMES, REPLACED_FOR } from '../../model/site-form-headings.js';
import { ALL_FIELDS, fieldsOf, type FieldOf } from '../../site-forms/field-names.js';
import { carriedRows } from '../../site-forms/carried-rows.js';
import type { PlannedReading, SiteForms } from '../../site-forms/rows.js';
import type { SiteRecordWords } from '../../words/languages/site-record-words.js';
import type { SiteWords } from './site-words.js';

/** A label with what is written there: `Serial number: several joined by a semicolon`. */
function hinted({ record, hints }: SiteRecordWords, heading: keyof SiteRecordWords['record']): string {
  const hint = hints[heading];
  return hint === undefined ? record[heading] : `${record[heading]}: ${hint}`;
}

const TEXT = { options: [], free: false } as const;

function recordField(
  name: string,
  tag: string,
  of: FieldOf & { of: 'record' },
  site: SiteRecordWords,
): FormField {
  const tooltip = `${tag}, ${hinted(site, of.heading)}`;
  if (of.heading === 'outcome') {
    const options = OUTCOMES.map((value) => ({ value, shows: site.outcomes[value] }));
    return { name, tooltip, options, free: false };
  }
  if (of.heading === 'reason') {
    const options = REPLACED_FOR.map((value) => ({ value, shows: site.reasons[value] }));
    return { name, tooltip, options, free: true };
  }
  return { name, tooltip, ...TEXT };
}

/** How a light or a flag may be found. */
function looks(kind: 'light' | 'flag', { site, note }: SiteWords): FormField['options'] {
  if (kind === 'flag')
    return [
      { value: 'good', shows: note.looks.good },
      { value: 'used up', shows: site.readings.used },
    ];
  return (['lit', 'dark', 'flickers'] as const).map((value) => ({ value, shows: note.looks[value] }));
}

function readingField(
  name: string,
  planned: PlannedReading,
  called: string,
  of: FieldOf & { of: 'readings' },
  words: SiteWords,
): FormField {
  const { tips } = words.site.readings;
  const isVolts = planned.kind === 'volts';
  const tip = {
    found: isVolts ? tips.volts : tips.look,
    why_not: tips.whyNot,
    date: tips.date,
    name: tips.name,
  };
  const tooltip = `${planned.cells.protector}, ${called}: ${tip[of.heading]}`;
  const isChosen = of.heading === 'found' && !isVolts;
  return { name, tooltip, options: isChosen ? looks(planned.kind, words) : [], free: false };
}

/**
 * The fields of a job's form.
 * @param forms what is asked
 * @param planned the readings of `forms`, in their order, and what each is called on the page
 */
export function formFields(
  forms: SiteForms,
  planned: readonly (readonly [reading: PlannedReading, called: string])[],
  words: SiteWords,
): FormFields {
  const { site } = words;
  const everywhere = forms.record.length === 0 ? [] : ALL_FIELDS;
  const all = everywhere.map(({ name, heading }): FormField => {
    return { name, tooltip: `${site.allHeading}: ${hinted(site, heading)}`, ...TEXT };
  });
  const fields = [...fieldsOf(forms)].flatMap(([name, of]): FormField[] => {
    if (of.of === 'record') {
      return [recordField(name, forms.record[of.row]?.protector ?? '', of, site)];
    }
    if (of.of === 'readings') {
      const [reading, called] = planned[of.row] ?? [];
      return reading === undefined ? [] : [readingField(name, reading, called ?? '', of, words)];
    }
    const { assumption, tag } = forms.facts[of.row] ?? { assumption: '', tag: '' };
    const about = tag === '' ? site.facts.site : tag;
    return [{ name, tooltip: `${assumption}, ${about}: ${site.facts.columns[of.heading]}`, ...TEXT }];
  });
  return { fields: [...all, ...fields], hidden: [carriedRows(forms)] };
}
