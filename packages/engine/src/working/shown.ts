/**
 * A number as the floor reads it: three figures, whole from 100 up, never rounded to nothing. Null and what is not finite are
 * `not known`. Only for showing: calculations keep full precision.
 */
export function shown(value: number | null | undefined, unit = ''): string {
  if (typeof value !== 'number' || !Number.isFinite(value)) return 'not known'
  const size = Math.abs(value)
  const figures = size >= 100 ? String(Math.round(value)) : trimmed(value, size)
  const text = figures.replace('-', '−')
  return unit === '' ? text : `${text} ${unit}`
}

function trimmed(value: number, size: number): string {
  if (Number.isInteger(value)) return String(value)
  const decimals = size >= 10 ? 1 : size >= 1 ? 2 : 3
  const fixed = value.toFixed(decimals)
  // 0.0004 must not read as 0.
  if (Number(fixed) === 0 && value !== 0) return String(Number(value.toPrecision(2)))
  return fixed.includes('.') && decimals > 1 ? fixed.replace(/0$/, '') : fixed
}
