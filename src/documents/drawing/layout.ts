import type { ElkNode } from 'elkjs/lib/elk-api.js';
import type { CellShape } from './cell.js';
import { LINE, TEXT } from './cell.js';
import { laidOut } from './layout-engine.js';
import type { Line } from './site-graph.js';
import { wrapped } from '../parts/wrapped.js';

interface Point {
  readonly x: number;
  readonly y: number;
}

/** A cell at its place on the sheet, in points from the upper left corner of the drawing. */
export interface PlacedCell extends Point {
  readonly cell: CellShape;
}

/** The frame of a place with its title. */
export interface PlaceFrame extends Point {
  readonly width: number;
  readonly height: number;
  readonly title: readonly string[];
}

/** A laid-out sheet before it is drawn. */
export interface Layout {
  readonly width: number;
  readonly height: number;
  readonly cells: readonly PlacedCell[];
  readonly frames: readonly PlaceFrame[];
  /** Orthogonal polylines. */
  readonly routes: readonly (readonly Point[])[];
}

const FRAME_PAD = 9;
const FRAME_TOP = 7;

const OPTIONS = {
  'elk.algorithm': 'layered',
  'elk.direction': 'RIGHT',
  'elk.edgeRouting': 'ORTHOGONAL',
  'elk.hierarchyHandling': 'INCLUDE_CHILDREN',
  'elk.randomSeed': '1',
  'elk.json.edgeCoords': 'ROOT',
  'elk.json.shapeCoords': 'ROOT',
  'elk.spacing.nodeNode': '14',
  'elk.spacing.edgeNode': '9',
  'elk.spacing.edgeEdge': '8',
  'elk.layered.spacing.nodeNodeBetweenLayers': '26',
  'elk.layered.spacing.edgeNodeBetweenLayers': '10',
  'elk.layered.spacing.edgeEdgeBetweenLayers': '8',
  'elk.padding': '[top=2,left=2,bottom=2,right=2]',
};

/** How a place is called over its frame. */
export function placeTitle(place: string): string {
  return place === '' ? 'place not stated' : place;
}

/** Its ports are called by their number: a graph holds no name of the site (`laidOut`). */
function cellNode(cell: CellShape, id: string, portId: (key: string) => string): ElkNode {
  return {
    id,
    width: cell.width,
    height: cell.height,
    layoutOptions: { 'elk.portConstraints': 'FIXED_POS' },
    ports: cell.rows
      .filter((r) => r.toEdge)
      .map((r) => ({
        id: portId(r.row.key),
        x: r.row.side === 'west' ? 0 : cell.width,
        y: r.y,
        width: 0,
        height: 0,
        layoutOptions: { 'elk.port.side': r.row.side === 'west' ? 'WEST' : 'EAST' },
      })),
  };
}

/**
 * Lays out one sheet: cells inside the frames of their places, runs as orthogonal lines from left to right.
 * @param cells measured cells
 * @param lines runs of which both ends are on this sheet
 */
export async function layoutSheet(cells: readonly CellShape[], lines: readonly Line[]): Promise<Layout> {
  const places = [...new Set(cells.map((c) => c.unit.equipment.place))];
  const portOf = new Map<string, string>();
  const portId = (key: string): string => portOf.get(key) ?? '';
  const byId = new Map<string, CellShape>();
  const titles = new Map<string, string[]>();
  const children = places.map((place, placeIndex) => {
    const members = cells.filter((c) => c.unit.equipment.place === place);
    const widest = members.reduce((most, c) => Math.max(most, c.width), 0);
    const title = wrapped(placeTitle(place), widest, TEXT);
    const id = `place ${placeIndex}`;
    titles.set(id, title);
    const nodes = members.map((cell, index) => {
      const cellId = `${id} cell ${index}`;
      byId.set(cellId, cell);
      for (const [at, r] of cell.rows.entries()) portOf.set(r.row.key, `${cellId} port ${at}`);
      return cellNode(cell, cellId, portId);
    });
    const top = title.length * LINE + FRAME_TOP;
    const padding = `[top=${top},left=${FRAME_PAD},bottom=${FRAME_PAD},right=${FRAME_PAD}]`;
    return { id, children: nodes, layoutOptions: { ...OPTIONS, 'elk.padding': padding } };
  });
  const edges = lines.map((l, index) => ({
    id: `line ${index}`,
    sources: [portId(l.from)],
    targets: [portId(l.to)],
  }));
  const sheet: ElkNode = { id: 'sheet', layoutOptions: OPTIONS, children, edges };
  const result: ElkNode = await laidOut(sheet);
  const frames = result.children ?? [];
  return {
    width: result.width ?? 0,
    height: result.height ?? 0,
    cells: frames.flatMap((f) =>
      (f.children ?? []).flatMap((n) => {
        const cell = byId.get(n.id);
        return cell === undefined ? [] : [{ cell, x: n.x ?? 0, y: n.y ?? 0 }];
      }),
    ),
    frames: frames.map((f) => ({
      x: f.x ?? 0,
      y: f.y ?? 0,
      width: f.width ?? 0,
      height: f.height ?? 0,
      title: titles.get(f.id) ?? [],
    })),
    routes: (result.edges ?? []).flatMap((e) =>
      (e.sections ?? []).map((s) => [s.startPoint, ...(s.bendPoints ?? []), s.endPoint]),
    ),
  };
}
