import type { FileLine } from '../fact.js';
import { message } from '../message.js';
import type { DcGrounding, Kind, PortName } from '../words.js';

/** Messages about how the rows of a job hang together. */
export const SITE_MESSAGES = {
  tagTwice: message<{ tag: string; first: FileLine; second: FileLine }>(
    'site/tag-twice',
    'conflict',
    'designer',
  ),
  madeTagTyped: message<{ tag: string; group: string; typed: FileLine; made: FileLine }>(
    'site/made-tag-typed',
    'conflict',
    'designer',
  ),
  connectionToNothing: message<{ tag: string; to: string }>(
    'site/connection-to-nothing',
    'conflict',
    'designer',
  ),
  connectionTwice: message<{ tag: string; to: string }>('site/connection-twice', 'conflict', 'designer'),
  connectionToItself: message<{ tag: string }>('site/connection-to-itself', 'conflict', 'designer'),
  circle: message<{ connections: readonly { tag: string; line: FileLine; to: string }[] }>(
    'site/circle',
    'conflict',
    'designer',
  ),
  senseless: message<{
    tag: string;
    kind: Kind;
    line: FileLine;
    to: string;
    toKind: Kind;
    toLine: FileLine;
  }>('site/senseless-connection', 'conflict', 'designer'),
  groupUnclear: message<{ tag: string; count: number; to: string; toCount: number }>(
    'site/group-unclear',
    'missing',
    'designer',
  ),
  sourceUnconnected: message<{ tag: string; kind: Kind }>('fact/connects-to', 'missing', 'designer'),
  twoServices: message<{
    tag: string;
    line: FileLine;
    services: readonly { tag: string; line: FileLine }[];
  }>('site/two-services', 'conflict', 'designer'),
  twoOnAcIn: message<{ tag: string; feeds: readonly string[] }>(
    'site/two-feeds-on-one-ac-input',
    'confirm',
    'designer',
  ),
  inputNumberTooHigh: message<{ tag: string; to: string; inputs: number }>(
    'site/input-number',
    'conflict',
    'designer',
  ),
  dcInputsMissing: message<{ tag: string }>('fact/dc-inputs', 'missing', 'maker'),
  dcInputsDefault: message<{ tag: string }>('default/dc-inputs', 'confirm', 'maker'),
  dcInputsNamed: message<{ tag: string; inputs: number }>('default/dc-inputs-named', 'confirm', 'maker'),
  unusedInUse: message<{ tag: string; port: PortName; others: readonly string[] }>(
    'site/unused-port-in-use',
    'conflict',
    'designer',
  ),
  combinerUnfed: message<{ tag: string }>('site/combiner-without-source', 'missing', 'designer'),
  inputsByOrder: message<{ tag: string; sources: readonly string[] }>(
    'site/inputs-by-order',
    'confirm',
    'designer',
  ),
  inputsUnclear: message<{ tag: string; sources: readonly string[]; inputs: number }>(
    'site/inputs-unclear',
    'missing',
    'designer',
  ),
  inputsAssumedFed: message<{ tag: string }>('site/inputs-without-source', 'confirm', 'designer'),
  sourcesInParallel: message<{ tag: string; input: PortName; sources: readonly string[] }>(
    'site/sources-in-parallel',
    'confirm',
    'designer',
  ),
  mixedSources: message<{ tag: string; port: PortName; sources: readonly string[] }>(
    'site/mixed-sources',
    'conflict',
    'designer',
  ),
  groundingDiffers: message<{
    tag: string;
    port: PortName;
    rows: readonly { tag: string; grounding: DcGrounding }[];
  }>('site/grounding-differs', 'conflict', 'designer'),
  kindMissing: message<{ tag: string }>('fact/kind', 'missing', 'designer'),
  bipolar: message<{ tag: string }>('site/bipolar-array', 'conflict', 'designer'),
  variableSpeedDrive: message<{ tag: string }>('site/variable-speed-drive', 'confirm', 'designer'),
  microinverters: message<{ tag: string; quantity: number }>('site/microinverters', 'confirm', 'designer'),
  bondUnknown: message<Record<string, never>>('site/neutral-bond', 'confirm', 'installer'),
} as const;
