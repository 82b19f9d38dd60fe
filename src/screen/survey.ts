import type { Basis } from '../model/editions.js';
import { runLength } from '../words/lengths.js';
import { counted, printable, textTable } from './text-table.js';

/** A port as the screen names it. */
interface PortTold {
  readonly name: string;
  readonly equipment: { readonly tag: string };
}

/** The survey of a job, as far as the screen shows it. */
export interface SurveyTold {
  readonly job: string;
  readonly basis: { readonly value: Basis; readonly byDefault: boolean };
  readonly equipments: readonly {
    readonly tag: string;
    readonly kind: string;
    readonly place: string;
    readonly row: { readonly line: number };
    readonly ports: readonly PortTold[];
  }[];
  readonly runs: readonly {
    readonly from: PortTold;
    readonly to: PortTold;
    readonly length: number | undefined;
    readonly outdoors: boolean;
    readonly betweenBuildings: boolean;
    readonly carries: string;
  }[];
}

/**
 * How a job was understood: its equipments with their ports, and its runs.
 * @param survey the survey of the job
 * @returns lines, each ended by a line feed
 */
export function surveyText(survey: SurveyTold): string {
  const { job, basis, equipments, runs } = survey;
  const byDefault = basis.byDefault ? ' by default' : '';
  const head = `${printable(job, 60)}: ${basis.value}${byDefault}, ${counted(equipments.length, 'equipment')}, ${counted(runs.length, 'run')}\n`;
  const port = (p: PortTold): string => `${p.equipment.tag}:${p.name}`;
  return [
    head,
    textTable(
      [
        { heading: 'line', align: 'right' },
        { heading: 'tag' },
        { heading: 'kind' },
        { heading: 'place' },
        { heading: 'ports' },
      ],
      equipments.map((e) => [
        String(e.row.line),
        e.tag,
        e.kind,
        e.place,
        e.ports.map((p) => p.name).join(' '),
      ]),
    ),
    runs.length === 0
      ? ''
      : textTable(
          [
            { heading: 'from' },
            { heading: 'to' },
            { heading: 'length' },
            { heading: 'carries' },
            { heading: 'where' },
          ],
          runs.map((r) => [
            port(r.from),
            port(r.to),
            r.length === undefined ? 'not stated' : runLength(r.length, basis.value),
            r.carries,
            [r.outdoors ? 'outdoors' : '', r.betweenBuildings ? 'between buildings' : '']
              .filter((s) => s !== '')
              .join(', '),
          ]),
        ),
  ].join('');
}
