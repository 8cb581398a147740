import type { StagePeak, StageSupport, StressField } from '@castwright/engine/lift'
import type { Rigged } from '@castwright/engine/lift/rigging'
import { bounds, type Drawing, type Point, type Ring } from '@castwright/engine/panel'

/** Supports, peak, field and rigging made up for the tests of the pictures, not computed. */
export interface ExampleLift {
  readonly supports: readonly StageSupport[]
  readonly timbers: readonly StageSupport[]
  readonly peak: StagePeak
  readonly field: StressField
  readonly rigged: Rigged
  readonly centre: Point
}

const LEVELS = [0.1, 0.2, 0.35, 0.45, 0.6, 0.8]

export function exampleLift(drawing: Drawing): ExampleLift {
  const box = bounds(drawing.outline as unknown as Ring)
  const centre: Point = [(box.left + box.right) / 2, (box.bottom + box.top) / 2]
  const places = (drawing.inserts ?? []).map(({ mark, at }) => ({ mark, at: [at[0], at[1]] as Point }))
  const first = places[0] ?? { mark: '', at: centre }
  const shorter = Math.min(box.right - box.left, box.top - box.bottom)
  const supports = places.map(
    ({ mark, at }, index): StageSupport => ({
      mark,
      kind: 'insert',
      at: [at],
      load: index === 1 ? null : 17.23 + index,
    }),
  )
  const x = (share: number): number => box.left + share * (box.right - box.left)
  return {
    centre,
    supports,
    timbers: [0.25, 0.75].map((share, index) => ({
      mark: `timber ${index + 1}`,
      kind: 'timber',
      at: [
        [x(share), box.bottom],
        [x(share), box.top],
      ],
      load: 31.42,
    })),
    peak: {
      of: first.mark === '' ? 'plate' : 'pick',
      at: first.at,
      mark: first.mark,
      stress: 0.8142,
      face: 'top',
      mx: -3,
      my: -1,
      mxy: 0.2,
      width: first.mark === '' ? 0 : 1500,
    },
    field: {
      face: 'worse',
      bands: LEVELS.map((level, index) => ({
        level,
        rings: (places.length === 0 ? [first] : places).map(({ at }) =>
          circle(at, shorter * 0.3 * (1 - index / 6), box),
        ),
      })),
      x: new Float32Array(),
      y: new Float32Array(),
      stress: new Float32Array(),
      deflection: new Float32Array(),
      triangles: new Uint16Array(),
    },
    rigged: exampleRigged(places, centre),
  }
}

/** A circle as far as the panel's box goes. */
function circle([x, y]: Point, radius: number, box: ReturnType<typeof bounds>): Float32Array {
  return Float32Array.from(
    Array.from({ length: 24 }, (_, i) => {
      const angle = (i * Math.PI) / 12
      return [
        Math.min(box.right, Math.max(box.left, x + radius * Math.cos(angle))),
        Math.min(box.top, Math.max(box.bottom, y + radius * Math.sin(angle))),
      ]
    }).flat(),
  )
}

function exampleRigged(
  places: readonly { readonly mark: string; readonly at: Point }[],
  hook: Point,
): Rigged {
  const height = 3500
  const picks = places.map(({ mark, at }) => {
    const reach = Math.hypot(at[0] - hook[0], at[1] - hook[1])
    const angle = (Math.atan2(reach, height) * 180) / Math.PI
    return {
      mark,
      at,
      share: 15,
      uneven: null,
      counted: 20,
      vertical: 20,
      from: 'two of 4 legs count',
      angle,
      reach,
      length: Math.hypot(reach, height),
      bearing: 0,
      load: 20 / Math.cos((angle * Math.PI) / 180),
      pull: 5,
      tension: 20,
      shear: 5,
      moment: 0,
    }
  })
  return {
    picks,
    determinate: false,
    counted: 2,
    slingsCounted: 3,
    legTension: 20,
    legRating: 24,
    angle: Math.max(0, ...picks.map(({ angle }) => angle)),
    hook,
    hookHeight: height,
    beam: null,
    tilt: { off: 12, angle: 0.234, note: 'hook off the centre of gravity' },
    gaps: [],
  } as unknown as Rigged // the picture reads no other part
}
