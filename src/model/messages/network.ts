import type { FileLine } from '../fact.js';
import { message } from '../message.js';
import type { AcSystem, Kind, SystemGrounding } from '../words.js';

interface Pair {
  tag: string;
  kind: Kind;
  line: FileLine;
  to: string;
  toKind: Kind;
  toLine: FileLine;
}

/** Messages about how what feeds and what is fed go together. */
export const NETWORK_MESSAGES = {
  passUnconnected: message<{ tag: string; kind: Kind; lacks: 'supply' | 'load' | 'both' }>(
    'site/pass-unconnected',
    'missing',
    'designer',
  ),
  passUnclear: message<{ tag: string; ends: readonly string[] }>('site/pass-unclear', 'missing', 'designer'),
  serviceEquipment: message<{ service: string; panel: string; through: readonly string[] }>(
    'site/service-equipment',
    'confirm',
    'installer',
  ),
  listedOtherwise: message<Pair & { instead: 'converter' | 'ac-battery' }>(
    'site/listed-otherwise',
    'conflict',
    'designer',
  ),
  unplanned: message<Pair>('site/unplanned-connection', 'conflict', 'designer'),
  transformerSystem: message<{ tag: string; port: 'ac-in' | 'ac-out' }>(
    'fact/transformer-system',
    'missing',
    'designer',
  ),
  separatelyDerived: message<{ tag: string }>('default/isolated', 'confirm', 'designer'),
  transformerGrounding: message<{ tag: string; grounding: SystemGrounding }>(
    'default/transformer-grounding',
    'confirm',
    'designer',
  ),
  systemsDisagree: message<{
    tag: string;
    from: string;
    fromSystem: AcSystem;
    to: string;
    toSystem: AcSystem;
    lines: readonly FileLine[];
  }>('site/systems-disagree', 'conflict', 'designer'),
  oneSource: message<{ source: string; at: string }>('site/one-120-source', 'confirm', 'designer'),
  whichLines: message<{ tag: string; from: string }>('site/which-two-lines', 'confirm', 'designer'),
  cornerLine: message<{ tag: string; system: AcSystem; whole: AcSystem }>(
    'site/corner-line',
    'confirm',
    'designer',
  ),
  dcNominals: message<{ rows: readonly { tag: string; volts: number }[] }>(
    'site/dc-nominals-differ',
    'conflict',
    'designer',
  ),
  transferMissing: message<{ tag: string; others: readonly string[] }>(
    'fact/transfer-equipment',
    'missing',
    'designer',
  ),
  inParallel: message<{ tag: string; others: readonly string[] }>(
    'site/parallel-sources',
    'confirm',
    'designer',
  ),
  otherInTheWay: message<{ tag: string; ends: readonly string[] }>(
    'fact/kind-of-other',
    'missing',
    'designer',
  ),
  driveSupply: message<{ tag: string }>('fact/drive-supply', 'missing', 'designer'),
} as const;
