import type { Reason } from '../reason.js';
import { message } from '../message.js';
import type { Quantity } from '../quantity.js';
import type { Basis } from '../editions.js';
import type { Kind, PortClass, PortName } from '../words.js';

/** Messages of the placement rules and of what plan/ makes of them. */
export const PLACE_MESSAGES = {
  runLength: message<{ row: string; from: string; to: string }>('fact/run-length', 'missing', 'designer'),
  /** `value`: a word of the contract, or a reason that says it; `rows` as far as they are named, `more` those that aren't. */
  defaultsUsed: message<{
    field: string;
    value: string | Reason;
    rows: readonly string[];
    why: Reason | null;
  }>('default/used', 'confirm', 'designer'),
  placeUnknown: message<{ tag: string }>('fact/place', 'missing', 'designer'),
  basisDefault: message<{ basis: Basis }>('default/basis', 'confirm', 'office'),
  buildingDefault: message<{ tag: string; other: string }>('default/building', 'confirm', 'designer'),
  subPanel: message<{ tag: string; main: string }>('place/sub-panel', 'confirm', 'office'),
  serviceOfUnitElsewhere: message<{ tag: string; units: readonly string[] }>(
    'place/service-of-unit-elsewhere',
    'confirm',
    'office',
  ),
  feedUnknown: message<{ tag: string; port: PortClass }>('place/feed-unknown', 'confirm', 'designer'),
  servicePlaceUnknown: message<{ tag: string }>('place/service-place-unknown', 'confirm', 'designer'),
  nothingWorth: message<{ tag: string; rules: readonly string[] }>(
    'place/nothing-worth-protecting',
    'confirm',
    'designer',
  ),
  cannotWaive: message<{ tag: string; rules: readonly string[] }>(
    'place/cannot-waive',
    'confirm',
    'designer',
  ),
  waivedByException: message<{ tag: string }>('place/waived-by-exception', 'confirm', 'designer'),
  noMainPort: message<{ tag: string; kind: Kind }>('place/no-main-port', 'conflict', 'designer'),
  passesThrough: message<{
    tag: string;
    kind: Kind;
    field: 'protect' | 'worth_protecting';
    value: boolean;
  }>('place/passes-through', 'confirm', 'designer'),
  driveOutput: message<{ tag: string }>('place/drive-output', 'confirm', 'maker'),
  askedAtMotor: message<{ tag: string; drive: string }>('place/asked-at-motor', 'conflict', 'designer'),
  mainPortUnused: message<{ tag: string }>('place/main-port-unused', 'conflict', 'designer'),
  signalLine: message<{ tag: string }>('place/signal-line', 'confirm', 'designer'),
  otherKind: message<{ tag: string; circuits: readonly string[] }>('place/other-kind', 'confirm', 'designer'),
  controlOtherEnd: message<{ tag: string; placed: boolean }>(
    'place/control-other-end',
    'confirm',
    'designer',
  ),
  controlNotLow: message<{ tag: string; voltage: Quantity; limit: Quantity }>(
    'place/control-voltage-high',
    'conflict',
    'designer',
  ),
  cycleUndecided: message<{ basis: Basis; count: number }>('place/cycle-undecided', 'conflict', 'office'),
  undecided: message<{ tag: string; port: PortName; basis: Basis }>('place/undecided', 'conflict', 'office'),
  windWithoutAc: message<{ tag: string }>('place/wind-without-ac', 'confirm', 'designer'),
  riskUnknown: message<{ tag: string }>('place/risk-level-unknown', 'confirm', 'designer'),
  criticalLengthUnknown: message<Record<string, never>>(
    'place/critical-length-unknown',
    'confirm',
    'designer',
  ),
  arraysLengthUnknown: message<{ tag: string }>('place/arrays-length-unknown', 'confirm', 'designer'),
} as const;
