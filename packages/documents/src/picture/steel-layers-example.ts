import type { Drawing, Layer, Point } from '@castwright/engine/panel'
import type { CagePlan, ChairLayer, LayerTies, PlacedBar, PlacedLap } from '@castwright/engine/steel'

export interface ExampleCage {
  readonly placed: readonly PlacedBar[]
  readonly laps: readonly PlacedLap[]
  readonly chairs: ChairLayer
  readonly ties: LayerTies
  readonly cage: Pick<CagePlan, 'hooks' | 'placedCentre' | 'centre'>
}

const LAP = 500
const PITCH = 250

/**
 * A cage made up for the tests of the pictures: bars over the whole box of the panel, each long one in two pieces. Not computed by
 * the engine, so that a picture changes only when the picture changes.
 */
export function exampleCage(drawing: Drawing): ExampleCage {
  const [length, width] = [
    Math.max(...drawing.outline.map(([x]) => x)),
    Math.max(...drawing.outline.map(([, y]) => y)),
  ]
  const placed: PlacedBar[] = []
  const laps: PlacedLap[] = []
  const every = (end: number): number[] =>
    Array.from({ length: Math.floor((end - 80) / PITCH) + 1 }, (_, i) => 40 + i * PITCH)
  const lay = (
    mark: string,
    layer: Layer,
    use: PlacedBar['use'],
    diameter: number,
    height: number,
    path: Point[],
  ): string => {
    const id = `${mark}#${placed.filter((bar) => bar.mark === mark).length + 1}`
    const centreline = path.map(([x, y]) => [x, y, height] as const)
    placed.push({ id, mark, use, layer, diameter, path, height, centreline, inside: null })
    return id
  }
  for (const [row, y] of every(width).entries()) {
    const middle = length * (row % 2 === 0 ? 0.6 : 0.4)
    const first = lay('MX1', 'mould', 'mat', 12, 36, [
      [40, y],
      [middle + LAP / 2, y],
    ])
    const second = lay('MX2', 'mould', 'mat', 12, 36, [
      [middle - LAP / 2, y + 12],
      [length - 40, y + 12],
    ])
    laps.push({
      id: `mould-x~${row + 1}`,
      mark: 'mould-x',
      layer: 'mould',
      bars: [first, second],
      at: [middle, y],
      length: LAP,
      diameter: 12,
      direction: 'x',
      by: 'code',
      share: 50,
    })
  }
  for (const x of every(length)) {
    for (const [mark, layer, height] of [
      ['MY1', 'mould', 47],
      ['TY1', 'top', 115],
    ] as const) {
      lay(mark, layer, 'mat', 10, height, [
        [x, 40],
        [x, width - 40],
      ])
    }
  }
  lay('T7', 'mould', 'trimmer', 16, 60, [
    [600, width * 0.45],
    [length * 0.7, width * 0.45],
  ])
  return {
    placed,
    laps,
    chairs: chairs(length, width),
    ties: ties(every(length), every(width), length),
    cage: cage(length, width),
  }
}

function chairs(length: number, width: number): ChairLayer {
  const at: Point[] = []
  for (let x = 300; x < length; x += 600) for (let y = 300; y < width; y += 600) at.push([x, y])
  const spacingSource = { standard: 'an example', clause: '', status: 'entered' } as const
  return {
    layer: 'mould',
    direction: 'x',
    diameter: 12,
    height: 30,
    raise: 0,
    spacing: 600,
    spacingSource,
    sag: 4,
    stress: 300,
    yield: 500,
    at,
    formers: [],
  }
}

function ties(xs: readonly number[], ys: readonly number[], length: number): LayerTies {
  const places = ys.flatMap((y, j) => xs.map((x, i) => ({ x, y, i, j })))
  const isRim = (i: number, j: number): boolean =>
    i === 0 || j === 0 || i === xs.length - 1 || j === ys.length - 1
  const why = places.map(({ i, j }) => (isRim(i, j) ? 1 : (i + j) % 2 === 0 ? 2 : 0))
  return {
    layer: 'mould',
    height: 42,
    x: Float64Array.from(places, ({ x }) => x),
    y: Float64Array.from(places, ({ y }) => y),
    why: Uint8Array.from(why),
    rim: why.filter((each) => each === 1).length,
    tied: why.filter((each) => each > 0).length,
    lapX: Float64Array.from(ys, (_, j) => length * (j % 2 === 0 ? 0.6 : 0.4) - LAP / 2),
    lapY: Float64Array.from(ys),
  }
}

function cage(length: number, width: number): ExampleCage['cage'] {
  const hooks = [0.2, 0.8].flatMap((v) => [0.15, 0.5, 0.85].map((u): Point => [u * length, v * width]))
  const centre = [length * 0.51, width * 0.49, 52] as const
  return { hooks, placedCentre: centre, centre: { known: true, value: centre, working: [] } }
}
