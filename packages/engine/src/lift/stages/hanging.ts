import type { Point } from '../../panel/point.ts'
import type { Piece } from '../../panel/region.ts'
import { STATICS } from '../../working/source.ts'
import { known, unknown, type Worked } from '../../working/worked.ts'
import { partsOnLine, type Side } from './lines.ts'
import { stripWidth } from './peaks.ts'
import type { StagePeak } from './stage.ts'

export interface HangingInput {
  readonly piece: Piece
  /** mm */
  readonly thickness: number
  /** Own weight with the stage's factor, kN/m² of face. */
  readonly pressure: number
  /** Edge that hangs lowest. */
  readonly about: Side
  readonly picks: readonly { readonly mark: string; readonly at: Point; readonly kind: 'face' | 'edge' }[]
}

/** Sections between two corners that are looked at. */
const BETWEEN = 8

/**
 * Greatest tension of a panel that hangs upright: at each section below the inserts the weight below over the concrete there; for face inserts,
 * which pull on one face, also the weight times half a thickness on the strips at the inserts. Beam theory; the panel hangs plumb or nearly so.
 */
export function hangingPeak({ piece, thickness, pressure, about, picks }: HangingInput): Worked<StagePeak> {
  if (picks.length === 0) return unknown('inserts to hang it from')
  const axis = about === 'bottom' || about === 'top' ? 'y' : 'x'
  const up = about === 'bottom' || about === 'left' ? 1 : -1
  const index = axis === 'y' ? 1 : 0
  const corners = [piece.outline, ...piece.holes].flat().map((corner) => up * corner[index])
  const levels = [...new Set(corners)].sort((a, b) => a - b)
  const widthAt = (level: number): number =>
    partsOnLine(piece, axis, up * level).reduce(
      (sum, [a, b]) => sum + Math.hypot(b[0] - a[0], b[1] - a[1]),
      0,
    )
  const top = Math.min(...picks.map(({ at }) => up * at[index]))
  let below = 0
  let worst = { stress: 0, level: levels[0]!, weight: 0, width: 1 }
  for (const [i, from] of levels.entries()) {
    const upper = levels[i + 1]
    if (upper === undefined || from >= top) break
    const to = Math.min(upper, top)
    const [low, high] = [from + EDGE, to - EDGE]
    const [first, last] = [widthAt(low), widthAt(high)]
    for (let k = 0; k <= BETWEEN; k += 1) {
      const share = k / BETWEEN
      const level = from + share * (to - from)
      const width = first + share * (last - first)
      const area = below + ((first + width) / 2) * (level - from)
      const weight = (pressure * area) / 1e6
      const stress = (weight * 1000) / (width * thickness)
      if (width > 0 && stress > worst.stress) worst = { stress, level, weight, width }
    }
    below += ((first + last) / 2) * (to - from)
  }
  const whole = (pressure * wholeArea(levels, widthAt)) / 1e6
  const onFace = picks.filter(({ kind }) => kind === 'face')
  const strip = onFace.reduce((sum, { at }) => {
    const run = partsOnLine(piece, axis, at[index]).find(([a, b]) => within(at, a, b, 1 - index))
    const length = run === undefined ? 0 : Math.hypot(run[1][0] - run[0][0], run[1][1] - run[0][1])
    return sum + stripWidth(thickness, length)
  }, 0)
  const at: Point = axis === 'y' ? [picks[0]!.at[0], up * worst.level] : [up * worst.level, picks[0]!.at[1]]
  const bending = onFace.length > 0 && strip > 0 ? ((whole * thickness) / 2 / 1000) * (1000 / strip) : 0
  const bendingStress = (6 * bending * 1000) / thickness ** 2
  const stress = worst.stress + bendingStress
  const value: StagePeak = {
    of: 'section',
    at,
    mark: '',
    stress,
    face: 'mould',
    mx: axis === 'x' ? bending : 0,
    my: axis === 'y' ? bending : 0,
    mxy: 0,
    width: worst.width,
  }
  return known(value, [
    {
      symbol: 'σn',
      formula: 'Wb · 1000 / (b t)',
      given: { Wb: worst.weight, b: worst.width, t: thickness },
      result: worst.stress,
      unit: 'MPa',
      source: STATICS,
      note: 'weight below the section, factor in it, on the concrete that is there; direct tension held against the limit of bending',
    },
    ...(bending > 0
      ? [
          {
            symbol: 'm',
            formula: 'W t / 2 / b',
            given: { W: whole, t: thickness, b: strip },
            result: bending,
            unit: 'kN·m/m',
            source: STATICS,
            note: 'face inserts pull half a thickness off the middle; b strips at the inserts together',
          },
          {
            symbol: 'σ',
            formula: 'σn + 6000 m / t²',
            given: { σn: worst.stress, m: bending, t: thickness },
            result: stress,
            unit: 'MPa',
            source: STATICS,
          },
        ]
      : []),
  ])
}

/** Beside a corner, mm: widths are taken just off it. */
const EDGE = 1e-4

function wholeArea(levels: readonly number[], widthAt: (level: number) => number): number {
  let sum = 0
  for (let i = 0; i + 1 < levels.length; i += 1) {
    const [from, to] = [levels[i]!, levels[i + 1]!]
    sum += ((widthAt(from + EDGE) + widthAt(to - EDGE)) / 2) * (to - from)
  }
  return sum
}

function within(at: Point, a: Point, b: Point, index: number): boolean {
  const [low, high] = [Math.min(a[index]!, b[index]!), Math.max(a[index]!, b[index]!)]
  return at[index]! >= low - 1 && at[index]! <= high + 1
}
