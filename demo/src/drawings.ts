import { type Drawing, panelOf, parseDrawing } from '@castwright/engine/panel'
import { PANEL_ROWS, type PanelRow } from './panels.ts'
import type { Shape } from './shapes.ts'

export const DEMO_JOB = 'Saltmarsh Library'

const EDGE_COVER = 35
const TRIMMER = 16
/** Middle of a trimmer from the opening: cover and half a bar, mm. */
const TRIMMER_BACK = 45
/** How far a trimmer runs past the opening, mm. */
const TRIMMER_PAST = 650

/** The drawings of the invented job, read by the same reader as a real one. */
export function demoDrawings(): Drawing[] {
  return PANEL_ROWS.map(drawingOf)
}

function drawingOf(row: PanelRow): Drawing {
  const base = {
    format: 'castwright.drawing/1',
    mark: row.mark,
    job: DEMO_JOB,
    revision: row.revision,
    code: 'eu',
    outline: row.shape.outline,
    thickness: row.thickness,
    ...(row.shape.openings.length > 0 ? { openings: row.shape.openings } : {}),
    ...row.inside,
    concrete: { strength: row.concrete, density: 2500, aggregate: 16 },
    cover: { mould: 30, top: 25, edge: EDGE_COVER },
    steel: [...matsOf(row), ...trimmersOf(row.shape), ...edgeBarsOf(row)],
    lap: { length: 850 },
  }
  const bare = panelOf(parseDrawing(base, row.mark), row.mark)
  const count = row.pick.on === 'face' ? 4 : 2
  const load = liftingLoad(bare.weight, count)
  const type = row.pick.on === 'edge' ? (load <= 40 ? 'E60' : 'E90') : load <= 30 ? 'F40' : 'F75'
  return parseDrawing(
    {
      ...base,
      inserts: insertsOf(row, bare.centre).map((insert) => ({
        ...insert,
        kind: row.pick.on === 'edge' ? 'edge' : 'face',
        type,
      })),
      rigging: count === 4 ? 'four-leg set' : 'two-leg set',
      lifting: {
        strength: row.liftStrength,
        load,
        reference: `lifting design SL-${row.mark} rev ${row.revision}`,
        by: 'R. Oakley, lifting designer',
      },
    },
    row.mark,
  )
}

/** Two mats in the mould layer; thick panels have two in the top layer as well. */
function matsOf(row: PanelRow): object[] {
  const thick = row.thickness >= 200
  const diameter = thick ? 12 : 10
  const spacing = row.kind === 'spandrel' ? 150 : 200
  const layers = thick ? ['mould', 'top'] : ['mould']
  return layers.flatMap((layer) =>
    ['x', 'y'].map((direction) => ({ layer, direction, diameter, grade: 'B500B', spacing })),
  )
}

/** Straight bars around each opening, ended at the edge cover of the panel's box. */
function trimmersOf(shape: Shape): object[] {
  const [length, height] = [largest(shape.outline, 0), largest(shape.outline, 1)]
  const within = (value: number, size: number) => Math.min(size - EDGE_COVER, Math.max(EDGE_COVER, value))
  return shape.openings.flatMap(({ mark, outline }) => {
    const [left, right] = [smallest(outline, 0) - TRIMMER_BACK, largest(outline, 0) + TRIMMER_BACK]
    const [bottom, top] = [smallest(outline, 1) - TRIMMER_BACK, largest(outline, 1) + TRIMMER_BACK]
    const x0 = within(left - TRIMMER_PAST, length)
    const x1 = within(right + TRIMMER_PAST, length)
    const y0 = within(bottom - TRIMMER_PAST, height)
    const y1 = within(top + TRIMMER_PAST, height)
    const bar = (name: string, path: number[][]) => ({
      bar: `${mark} ${name}`,
      diameter: TRIMMER,
      grade: 'B500B',
      layer: 'mould',
      path,
    })
    const sides = [
      bar('left', [
        [left, y0],
        [left, y1],
      ]),
      bar('right', [
        [right, y0],
        [right, y1],
      ]),
      bar('head', [
        [x0, top],
        [x1, top],
      ]),
    ]
    const sill = bar('sill', [
      [x0, bottom],
      [x1, bottom],
    ])
    return bottom < 0 ? sides : [...sides, sill]
  })
}

/** Spandrels carry stirrups; thick walls have U bars along the top edge. */
function edgeBarsOf(row: PanelRow): object[] {
  const length = largest(row.shape.outline, 0)
  const depth = row.thickness - 55
  if (row.kind === 'spandrel') {
    const width = largest(row.shape.outline, 1) - 2 * EDGE_COVER
    return [
      {
        bar: 'stirrup',
        diameter: 8,
        grade: 'B500B',
        role: 'stirrup',
        legs: [115, width, depth, width, 115],
        turns: [90],
        inside: 32,
        count: Math.ceil((length - 2 * EDGE_COVER) / 300) + 1,
      },
    ]
  }
  if (row.kind !== 'thick') return []
  return [
    {
      bar: 'U top',
      diameter: 10,
      grade: 'B500B',
      role: 'main',
      legs: [520, depth, 520],
      turns: [90],
      inside: 40,
      count: Math.ceil((length - 2 * EDGE_COVER) / 200) + 1,
    },
  ]
}

function insertsOf(row: PanelRow, centre: readonly [number, number]): { mark: string; at: number[] }[] {
  const [x, y] = [Math.round(centre[0]), Math.round(centre[1])]
  const { pick } = row
  if (pick.on !== 'face') {
    const height = largest(row.shape.outline, 1)
    return [
      { mark: 'A', at: [x - pick.dx, height] },
      { mark: 'B', at: [x + pick.dx, height] },
    ]
  }
  const { lower, upper } = pick
  return [
    { mark: 'A', at: [x - upper[0], y - upper[1]] },
    { mark: 'B', at: [x + lower[0], y + lower[1]] },
    { mark: 'C', at: [x + upper[0], y + upper[1]] },
    { mark: 'D', at: [x - lower[0], y - lower[1]] },
  ]
}

/**
 * What the invented designer wrote on the drawing, kN: an equal share of the weight with 1.6 for leaving the mould, legs
 * at up to 30 degrees from the vertical, rounded up.
 */
function liftingLoad(weight: number, count: number): number {
  return Math.ceil(((weight / count) * 1.6) / Math.cos(Math.PI / 6))
}

function smallest(ring: readonly (readonly [number, number])[], axis: 0 | 1): number {
  return Math.min(...ring.map((corner) => corner[axis]))
}

function largest(ring: readonly (readonly [number, number])[], axis: 0 | 1): number {
  return Math.max(...ring.map((corner) => corner[axis]))
}
