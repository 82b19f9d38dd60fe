import type { Probes } from '../../model/planned-measuring.js';
import type { Wire } from '../../model/wire.js';
import { figure } from '../../words/figures.js';
import type { AsBuiltWords } from '../../words/languages/as-built-words.js';
import { unparted } from '../../words/unparted.js';
import type { AsBuilt, BuiltHousing } from '../parts/as-built.js';

type Point = Pick<Wire, 'port' | 'name'> | null;

const isSame = (one: Point, other: Point): boolean => one?.name === other?.name && one?.port === other?.port;

/** The volts that were found between two points of a housing, `121 V`; several in the order of the record; `` none. */
export function foundVolts({ volts }: AsBuilt, tag: string, { wire, to }: Probes): string {
  const own = volts.filter((one) => one.tag === tag && isSame(one.wire, wire) && isSame(one.to, to));
  return [...new Set(own.map((one) => figure(one.volts, 'V')))].join(' / ');
}

/** How the light of a channel was seen, `ON`; several states in the order of the record; `` none. */
export function foundLooks(
  { looks }: AsBuilt,
  tag: string,
  channel: number,
  words: AsBuiltWords['looks'],
): string {
  const own = looks.filter((one) => one.tag === tag && one.channel === channel);
  return [...new Set(own.map(({ look }) => words[look]))].join(' / ');
}

/** The serials of a housing with their date codes. */
export function serialsText({ serials }: BuiltHousing, { found }: AsBuiltWords): string {
  return serials
    .map(({ serial, dateCode }) =>
      [serial === '' ? found.noSerial : serial, dateCode === '' ? '' : found.dateCode(dateCode)]
        .filter((text) => text !== '')
        .join(', '),
    )
    .join('; ');
}

/** What was found between two points of a housing; nothing where no record came back. */
export function foundOf(built: AsBuilt | undefined): (tag: string, probes: Probes) => string {
  return (tag, probes) => (built === undefined ? '' : unparted(foundVolts(built, tag, probes)));
}

/** The serials of a housing alone, or of a part without one its date code. */
export function bareSerials({ serials }: BuiltHousing): string {
  return serials.map(({ serial, dateCode }) => (serial === '' ? dateCode : serial)).join('; ');
}
