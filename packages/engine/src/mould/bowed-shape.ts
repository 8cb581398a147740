import { STRIP_HELD } from './form-plate.ts'
import { BOW_COEFFICIENT, type SpanCount } from './side-form.ts'

/** Moments over the inner supports of equal spans under an even load, over w L²; three stands for three or more. */
const OVER_SUPPORTS: Readonly<Record<SpanCount, readonly number[]>> = {
  1: [0, 0],
  2: [0, 1 / 8, 0],
  3: [0, 1 / 10, 1 / 10, 0],
}

/**
 * How far a rail stands out at a place along its equal spans, as a part of its largest bow; `along` in spans from the first prop. 0 at every prop,
 * and beyond the last. Statics: elastic line of a continuous beam under an even load.
 */
export function bowedRail(spans: SpanCount, along: number): number {
  if (!(along > 0 && along < spans)) return 0
  const span = Math.min(Math.floor(along), spans - 1)
  const x = along - span
  const [left, right] = [OVER_SUPPORTS[spans][span] ?? 0, OVER_SUPPORTS[spans][span + 1] ?? 0]
  const line =
    (x * (1 - 2 * x ** 2 + x ** 3)) / 24 - (left * x * (1 - x) * (2 - x)) / 6 - (right * x * (1 - x ** 2)) / 6
  return line / BOW_COEFFICIENT[spans]
}

/**
 * How far a form plate stands out at a height, as a part of its largest bow; `up` from 0 at the bed to 1 at the top of the concrete. Statics:
 * elastic line of a strip under a triangle of pressure.
 */
export function bowedPlate(held: 'foot' | 'both', up: number): number {
  const h = Math.min(1, Math.max(0, up))
  if (held === 'foot') return (10 * h ** 2 - 10 * h ** 3 + 5 * h ** 4 - h ** 5) / 4
  const down = 1 - h
  return (7 * down - 10 * down ** 3 + 3 * down ** 5) / 360 / STRIP_HELD.bow
}
