/**
 * Rounds up to a multiple of `step`, for what is ordered or needed. A value within a billionth of a multiple is that
 * multiple: 0.3 / 0.1 must not order a fourth.
 */
export function ceilTo(value: number, step: number): number {
  return Math.ceil(value / step - 1e-9) * step
}

/** Rounds down to a multiple of `step`, for what is rated or allowed. */
export function floorTo(value: number, step: number): number {
  return Math.floor(value / step + 1e-9) * step
}
