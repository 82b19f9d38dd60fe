import { holds } from '../../../model/ac-parts.js';
import { isNec, type Basis } from '../../../model/editions.js';
import type { Plan, PlannedEquipment } from '../../../model/plan.js';
import { AC_SYSTEMS } from '../../../model/words.js';
import { current, figure, plain } from '../../../words/figures.js';
import { lengthUnitOf, paperLengths } from '../../../words/lengths.js';
import { isSourceBlank } from '../../parts/blanks.js';
import { shortened } from '../../parts/css.js';
import { acSystemWords, equipmentWords } from '../../../words/one-line.js';
import { portsInWords as portWords } from '../../../words/port-words.js';
import { BLANK, onLines, unbroken, type Line } from './measure.js';
import { tagsInShort } from './tags.js';
import { tapLines } from './tap-words.js';
import type { Branch, End, Tap, TreeNode } from './tree.js';

/** Widths of text, mm: in a box, at a line. */
const BOX = 36;
const AT_LINE = 34;

/** Characters of a name that a drawing keeps; the whole stands in the list. */
const MOST_OF_NAME = 44;

function fact(equipment: PlannedEquipment, field: string): PlannedEquipment['facts'][number] | undefined {
  return equipment.facts.find((f) => f.field === field);
}

function number(equipment: PlannedEquipment, field: string): number | null {
  const value = fact(equipment, field)?.value;
  return typeof value === 'number' ? value : null;
}

function word(equipment: PlannedEquipment, field: string): string {
  const value = fact(equipment, field)?.value;
  return typeof value === 'string' ? value : '';
}

const FIELD_OF_PORT: Readonly<Record<string, string>> = {
  service: 'ac_in',
  feeder: 'ac_in',
  'ac-in': 'ac_in',
  'ac-in-2': 'ac_in_2',
  'ac-out': 'ac_out',
  output: 'ac_out',
};

/** The AC system that a row states of a port; `` none. */
function acSystem(equipment: PlannedEquipment, port: string): string {
  const field = FIELD_OF_PORT[port];
  const stated = field === undefined ? '' : word(equipment, field);
  return stated === 'unused' ? '' : stated;
}

const DC_PORT = /^(?:dc-in(?:-\d+)?|battery)$/;

/** What a turbine's line carries begins with this. */
const TURBINE = 'turbine ';
const DC_INPUT = /^DC input/;

/** The words of a drawing of one plan. */
export interface OneLineWords {
  box(node: TreeNode): Line[];
  atLine(branch: Branch, near: TreeNode): Line[];
  tap(tap: Tap): Line[];
}

/** What is told of a kind beside its name: figures that decide what stands there. */
function figuresOf(equipment: PlannedEquipment, basis: Basis): string[] {
  const { kind } = equipment;
  const told: string[] = [];
  const volts = (field: string, words: (v: string) => string): void => {
    const value = number(equipment, field);
    if (value !== null) told.push(words(figure(value, 'V')));
  };
  const ac = ['service', 'panel', 'load', 'generator', 'ac-module-branch', 'ac-battery'].includes(kind);
  const system = ac ? word(equipment, 'ac_in') || word(equipment, 'ac_out') : '';
  if (system !== '' && system !== 'unused') told.push(acSystemWords(system, basis).system);
  volts('max_dc_voltage', (v) => `DC input max ${v}`);
  volts('battery_voltage', (v) => (kind === 'battery' ? `${v} DC nominal` : `battery ${v}`));
  volts('open_circuit_voltage', (v) => `open circuit ${v}`);
  if (word(equipment, 'control_voltage') !== '') told.push(word(equipment, 'control_voltage'));
  const series = number(equipment, 'modules_in_series');
  const strings = number(equipment, 'strings_in_parallel');
  if (series !== null)
    told.push(
      `${series} in series${strings === null ? '' : `, ${strings} ${strings === 1 ? 'string' : 'strings'}`}`,
    );
  const kva = number(equipment, 'kva');
  const percent = number(equipment, 'impedance_percent');
  if (kva !== null) told.push(`${plain(kva)} kVA${percent === null ? '' : `, ${plain(percent)} %`}`);
  const rating = number(equipment, 'rating_a');
  if (rating !== null) told.push(`rated ${figure(rating, 'A')}`);
  else if (['service', 'panel', 'dc-panel'].includes(kind)) told.push('rating by others');
  return told;
}

const SOURCES: ReadonlySet<string> = new Set([
  'service',
  'generator',
  'battery',
  'inverter-charger',
  'grid-tie-inverter',
  'ac-battery',
  'transformer',
  'panel',
]);

function faultCurrent(equipment: PlannedEquipment): string[] {
  const stated = number(equipment, 'fault_current');
  if (stated !== null) return [`fault current ${current(stated)}`];
  return isSourceBlank(equipment) ? [`fault current ${BLANK} kA`] : [];
}

/** On which sheets an equipment stands, once they are counted, and which of them is being drawn. */
export interface SheetNumbers {
  current: number;
  readonly of: Map<string, readonly number[]>;
}

/** As wide as a sheet's number becomes. */
const SOME_SHEET = ', sheet 88';

function otherSheet(tag: string, numbers: SheetNumbers): string {
  const on = numbers.of.get(tag) ?? [];
  const other = on.find((n) => n !== numbers.current);
  return other === undefined || on.includes(numbers.current) ? '' : `, sheet ${other}`;
}

function boxLines(node: TreeNode, basis: Basis, numbers: SheetNumbers): Line[] {
  const [equipment] = node.equipments;
  if (!equipment) return [];
  const tags = tagsInShort(node.equipments.map((e) => shortened(e.tag, MOST_OF_NAME)));
  const name = shortened([equipment.maker, equipment.model].filter((t) => t !== '').join(' '), MOST_OF_NAME);
  const places = [...new Set(node.equipments.map((e) => e.place))];
  const what = equipment.kind === 'other' && equipment.description !== '' ? equipment.description : '';
  const texts = [
    what === '' ? equipmentWords(equipment.kind, basis) : shortened(what, MOST_OF_NAME),
    name,
    ...figuresOf(equipment, basis),
    ...(SOURCES.has(equipment.kind) ? faultCurrent(equipment) : []),
    places.length > 3
      ? `in ${places.length} places`
      : places.map((one) => shortened(one, MOST_OF_NAME)).join('; '),
  ];
  const { tag } = equipment;
  const sheets = (): readonly number[] => (numbers.of.get(tag) ?? []).filter((n) => n !== numbers.current);
  const goesOn: Line[] =
    node.part === 'whole'
      ? []
      : [
          {
            text: 'see sheets 88, 88',
            bold: false,
            late: () => `see sheet ${sheets().slice(0, 2).join(', ')}`,
          },
        ];
  return [...onLines(tags, BOX, true), ...goesOn, ...texts.flatMap((text) => onLines(capital(text), BOX))];
}

const capital = (text: string): string => text.replace(/^[a-z]/, (letter) => letter.toUpperCase());

function lineSystem(branch: Branch, at: (end: End) => PlannedEquipment | undefined, basis: Basis): string[] {
  const ends = [...branch.far.slice(0, 1), ...branch.near.slice(0, 1)];
  const [system] = ends
    .map((end) => {
      const equipment = at(end);
      return equipment ? acSystem(equipment, end.port) : '';
    })
    .filter((one) => one !== '')
    .reduce<string[]>(([one], other) => [one === undefined || isPartOf(other, one) ? other : one], []);
  if (system !== undefined) {
    const { system: words, conductors } = acSystemWords(system, basis);
    return [unbroken(words), conductors];
  }
  const turbine = ends.map(at).find((e) => e?.kind === 'wind-turbine' || e?.kind === 'hydro-turbine');
  if (turbine && word(turbine, 'output') === 'three-phase')
    return [`turbine AC ${isNec(basis) ? '3Ø' : '3-ph'} 3W`, 'L1 L2 L3'];
  if (turbine && word(turbine, 'output') !== 'dc') return ['turbine AC or DC'];
  if (ends.some(({ port }) => DC_PORT.test(port))) return ['', 'DC 2W'];
  const control = ends.map(at).find((e) => e && word(e, 'control_voltage') !== '');
  return control ? [`control, ${word(control, 'control_voltage')}`] : [];
}

/** True where a line between ends of two systems carries the first of them: a part of the other. */
function isPartOf(part: string, whole: string): boolean {
  const [a, b] = [part, whole].map((text) => AC_SYSTEMS.find((one) => one === text));
  return a !== undefined && b !== undefined && holds(b, a);
}

/** The words of a plan's drawing. */
export function oneLineWords(plan: Plan, numbers: SheetNumbers): OneLineWords {
  const equipments = new Map(plan.site.equipments.map((e) => [e.tag, e]));
  const at = (end: End): PlannedEquipment | undefined => equipments.get(end.equipment);
  const { basis } = plan;
  const unit = lengthUnitOf(plan);
  const taps = new Map<Tap, Line[]>();
  return {
    box: (node) => boxLines(node, basis, numbers),
    tap(tap) {
      let lines = taps.get(tap);
      if (!lines) taps.set(tap, (lines = tapLines(tap, basis, unit)));
      return lines;
    },
    atLine(branch, near) {
      const each = near.equipments.length > 1 ? ' EACH' : '';
      const many = branch.count > 1 ? [{ text: `TYP. OF ${branch.count}${each}`, bold: true }] : [];
      const leaving = near.form === 'box' ? portsInWords(branch.near, at) : '';
      const goesOn =
        branch.child === null
          ? elsewhere(branch.isUpstream ? 'from' : 'to', branch.far, numbers)
          : near.form === 'from'
            ? elsewhere('from', branch.near, numbers)
            : [];
      const [told = '', conductors = ''] = near.form === 'utility' ? [] : lineSystem(branch, at, basis);
      // Terminals that rectify inside are named by what arrives there, not as a DC input.
      const isTurbines = told.startsWith(TURBINE) && DC_INPUT.test(leaving);
      const system = isTurbines ? told.slice(TURBINE.length) : told;
      const length = branch.lengths.includes(null)
        ? branch.far.length === 0 || branch.near.length === 0
          ? ''
          : 'length not stated'
        : `${paperLengths(branch.lengths, unit)}${branch.lengthFrom === null ? '' : ` from ${branch.lengthFrom}`}`;
      const last = [unbroken(conductors), unbroken(length)].filter((t) => t !== '').join(', ');
      const arriving = isTurbines ? leaving.replace(DC_INPUT, `${TURBINE}input`) : leaving;
      const first = near.form === 'utility' ? 'utility' : arriving;
      return [
        ...many,
        ...[first, system, last].filter((t) => t !== '').flatMap((text) => onLines(text, AT_LINE)),
        ...goesOn,
      ];
    },
  };
}

/** The ports where a line leaves, where an equipment has several. */
function portsInWords(ends: readonly End[], at: (end: End) => PlannedEquipment | undefined): string {
  const [end] = ends;
  const equipment = end && at(end);
  if (!end || !equipment || equipment.ports.length < 2) return '';
  return portWords([...new Set(ends.map(({ port }) => port))]);
}

/** `to MP, sheet 2`; the sheet is named where it is another. */
function elsewhere(word: 'to' | 'from', ends: readonly End[], numbers: SheetNumbers): Line[] {
  const [end] = ends;
  if (!end) return [];
  const lines = onLines(
    `${word} ${tagsInShort(ends.map(({ equipment }) => equipment))}${SOME_SHEET}`,
    AT_LINE,
  );
  return lines.map((line, index) =>
    index < lines.length - 1
      ? line
      : { ...line, late: () => line.text.replace(SOME_SHEET, otherSheet(end.equipment, numbers)) },
  );
}
