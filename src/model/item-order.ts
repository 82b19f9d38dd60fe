import { byNaturalOrder } from './natural-order.js';
import type { OpenItem } from './open-item.js';
import { byGravity, type Severity } from './words.js';

/**
 * Codes in the order in which items of one severity are listed: what can change more stands first, a cause before its effects.
 * A code belongs to one group; within a group items go by equipment.
 */
export const ITEM_ORDER: readonly (readonly string[])[] = [
  // What feeds a place isn't all on the list: whoever works there has to know before anything else.
  [
    'place/feed-unknown',
    'site/inputs-without-source',
    'site/parallel-sources',
    'site/two-feeds-on-one-ac-input',
    'site/one-120-source',
  ],
  ['choose/may-not-protect'],
  // The run.
  [
    'command/wrong-command-line',
    'command/given-twice',
    'command/empty-value',
    'command/no-such-date',
    'command/no-such-workers',
    'command/no-such-value',
    'command/nothing-to-check',
    'command/no-such-rule',
    'command/no-such-plan',
    'command/which-job',
    'command/no-such-port',
    'command/already-there',
    'command/fault',
    'machine/ran-out',
    'machine/not-told',
    'output/held',
    'output/not-written',
    'output/link',
    'output/not-a-file',
    'output/no-answer',
    'print/no-browser',
    'print/other-browser',
    'print/no-sandbox',
    'print/document-failed',
    'print/font-missing',
    'print/cache-refused',
    'documents/template',
    'documents/view-model',
    'batch/program-fault',
    'batch/no-such-job',
    'batch/interrupted',
    'batch/interrupted-reading',
    'batch/no-photos',
  ],
  // A file as a whole.
  [
    'file/not-there',
    'file/not-readable',
    'file/empty',
    'file/too-large',
    'file/not-text',
    'file/folder-without-lists',
    'file/no-rows',
    'file/too-many-rows',
    'file/quote-open',
    'file/control-characters',
    'file/unseen-marks',
    'file/encoding-guessed',
    'file/quote-stray',
    'json/not-valid',
    'json/key-twice',
    'json/key-wrong',
    'job-facts/no-job-column',
  ],
  // Its columns: one that isn't read takes its fact from every row.
  [
    'heading/none',
    'heading/tag-missing',
    'heading/near',
    'heading/quote',
    'heading/same-field',
    'heading/two-fields',
    'heading/unit',
    'heading/again',
    'heading/unknown',
    'heading/many-unknown',
    'heading/blank',
    'map/heading-twice',
  ],
  // Its rows, and the jobs that they belong to.
  [
    'file/rows-left-out',
    'row/cells-surplus',
    'row/cells-short',
    'row/quote-in-name',
    'row/figures-left-out',
    'row/job-missing',
    'row/job-or-note',
    'row/job-from-above',
    'row/job-joined',
    'job-facts/no-job',
    'job-facts/unknown-job',
    'job/contradiction',
    'job/no-rows',
    'job/too-many-rows',
    'job/too-many-housings',
    'job/too-many-runs',
    'batch/too-many-jobs',
    'place/cycle-undecided',
    'cell/too-large',
  ],
  // What a row is.
  [
    'row/tag-missing',
    'row/kind-missing',
    'row/kind-unclear',
    'row/kind-contradicts',
    'fact/kind',
    'fact/kind-of-other',
    'library/kind-contradicts',
    'library/model-twice',
    'library/model-missing',
    'library/near-miss',
    'site/tag-twice',
    'site/made-tag-typed',
    'site/string-twice',
    'site/arrays-or-modules',
    'site/listed-otherwise',
    'site/microinverters',
    'site/variable-speed-drive',
    'site/bipolar-array',
  ],
  // A cell that can't be read, whatever it would have said.
  ['cell/wrong'],
  // What it is joined to.
  [
    'fact/connects-to',
    'site/connection-to-nothing',
    'site/connection-to-itself',
    'site/connection-twice',
    'site/circle',
    'site/senseless-connection',
    'site/unplanned-connection',
    'site/group-unclear',
    'site/pass-unconnected',
    'site/pass-unclear',
    'site/two-services',
    'fact/transfer-equipment',
    'fact/drive-supply',
    'site/combiner-without-source',
    'site/service-equipment',
    'fact/dc-inputs',
    'site/input-number',
    'site/inputs-unclear',
    'site/inputs-by-order',
    'site/sources-in-parallel',
    'site/mixed-sources',
    'site/unused-port-in-use',
    'site/lengths-count',
  ],
  // Where protection goes, or doesn't.
  [
    'fact/place',
    'fact/run-length',
    'place/undecided',
    'place/no-main-port',
    'place/main-port-unused',
    'place/asked-at-motor',
    'place/control-voltage-high',
    'place/nothing-worth-protecting',
    'place/cannot-waive',
    'place/waived-by-exception',
    'place/passes-through',
    'place/control-other-end',
    'place/sub-panel',
    'place/service-place-unknown',
    'place/risk-level-unknown',
    'place/critical-length-unknown',
    'place/arrays-length-unknown',
    'place/wind-without-ac',
    'place/drive-output',
    'place/other-kind',
    'place/signal-line',
  ],
  // What it must withstand.
  [
    'fact/ac-in',
    'fact/ac-in-2',
    'fact/ac-out',
    'fact/transformer-system',
    'site/systems-disagree',
    'site/dc-nominals-differ',
    'site/which-two-lines',
    'site/neutral-bond',
    'rate/link-in-it',
    'rate/no-neutral-in-tt',
    'site/grounding-differs',
    'fact/voc-stc',
    'fact/modules-in-series',
    'fact/voc-coefficient',
    'fact/cells',
    'fact/lowest-temp',
    'fact/open-circuit-voltage',
    'fact/max-dc-voltage',
    'fact/output',
    'fact/battery-voltage',
    'fact/battery-chemistry',
    'fact/control-voltage',
    'site/modules-product',
    'site/modules-uneven',
    'site/strings-differ',
    'site/strings-longest',
    'rate/above-converter',
    'rate/above-code-limit',
    'rate/coefficient-sign',
    'rate/rectified-above-converter',
    'rate/battery-voltage-unknown',
    'rate/battery-not-listed',
    'rate/cold-factor-assumed',
    'rate/lifted-by-inverter',
    'rate/foreign-system',
    'rate/turbine-floats',
    'rate/turbine-unearthed',
    'cell/unit-unsure',
    'cell/cut',
    'library/overridden',
  ],
  // Which part it is.
  [
    'choose/no-catalogue',
    'choose/none-fits',
    'choose/no-3-plus-1',
    'choose/by-hand-unknown',
    'choose/by-hand-fails',
    'choose/existing-fails',
    'choose/existing-unknown',
    'choose/existing-several',
    'choose/fault-current-unknown',
    'choose/shortfall',
    'choose/enclosure-scale',
    'choose/listed-to-ul-only',
    'choose/lead-thin',
    'catalogue/part-left-out',
    'catalogue/cell-ignored',
    'catalogue/part-twice',
    'catalogue/vpr-off-list',
    'catalogue/part-fits-nothing',
  ],
  // What changes no decision.
  [
    'cell/language-unknown',
    'batch/folder-left',
    'batch/picture-not-used',
    'batch/record-ignored',
    'batch/file-edited',
    'photo/too-much-together',
    'photo/not-printed',
    'photo/no-tag',
    'photo/no-job',
  ],
  // Defaults, each of which decides something: last, as nobody contradicts them.
  [
    'default/basis',
    'default/used',
    'default/building',
    'default/dc-inputs',
    'default/dc-inputs-named',
    'default/isolated',
    'default/transformer-grounding',
  ],
];

const RANKS: ReadonlyMap<string, number> = new Map(
  ITEM_ORDER.flatMap((codes, rank) => codes.map((code) => [code, rank] as const)),
);

/** The group of a code in `ITEM_ORDER`; one that isn't there, of a plan of another version, stands last. */
export function rankOf(code: string): number {
  return RANKS.get(code) ?? ITEM_ORDER.length;
}

/** What places an item among others. */
interface Ranked {
  readonly severity: Severity;
  readonly code: string;
}

/** Compares for a sort that lists the gravest first, and of one severity what leads. */
export function byLead(a: Ranked, b: Ranked): number {
  return byGravity(a.severity, b.severity) || rankOf(a.code) - rankOf(b.code);
}

/** Items alike in all else: by their values, so that the order is the same in every language. */
function byValues(a: OpenItem, b: OpenItem): number {
  const [x, y] = [JSON.stringify(a.values), JSON.stringify(b.values)];
  return x < y ? -1 : x > y ? 1 : 0;
}

/**
 * The items of one job as they are listed everywhere.
 * @param items in any order; they are left as they are
 * @returns by severity, what leads, equipment in natural order, code, values, line
 */
export function inOrder(items: readonly OpenItem[]): OpenItem[] {
  return [...items].sort(
    (a, b) =>
      byLead(a, b) ||
      byNaturalOrder(a.equipment, b.equipment) ||
      byNaturalOrder(a.code, b.code) ||
      byValues(a, b) ||
      a.line - b.line,
  );
}

/** Columns that nobody reads: what they hold may be what is asked for below. */
const UNREAD_COLUMNS: ReadonlySet<string> = new Set([
  'heading/unknown',
  'heading/many-unknown',
  'heading/blank',
]);

/** A row without a kind, whose heading or whose maker and model may stand in a column that isn't read. */
const WITHOUT_KIND: ReadonlySet<string> = new Set(['row/kind-missing', 'fact/kind']);

/** True for an item about a column that nobody reads. */
export function isOfUnreadColumn({ code }: Pick<OpenItem, 'code'>): boolean {
  return UNREAD_COLUMNS.has(code);
}

/** True for what a column that nobody reads may be the cause of: a row without a kind, a fact of which its file has no column. */
export function mayComeOfUnread({
  code,
  severity,
  column,
}: Pick<OpenItem, 'code' | 'severity' | 'column'>): boolean {
  if (WITHOUT_KIND.has(code)) return true;
  return severity === 'missing' && column === '' && code.startsWith('fact/');
}
