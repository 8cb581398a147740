import { ceilTo } from '@castwright/engine/working'

/** A number for reading: four significant figures, no grouping, never an exponent for what the yard measures. */
export function figure(value: number | string | null | undefined, digits = 4): string {
  if (value === null || value === undefined) return 'not known'
  if (typeof value === 'string') return value
  if (!Number.isFinite(value)) return 'not known'
  if (value === 0) return '0'
  const size = Math.abs(value)
  if (size >= 10 ** digits && size < 1e12) return String(Math.round(value)).replace('-', '−')
  if (size < 1e-6 || size >= 1e12) return value.toExponential(2).replace('e', ' × 10^').replace('-', '−')
  return String(Number(value.toPrecision(digits))).replace('-', '−')
}

/** A number with a fixed count of decimals. */
export function fixed(value: number | null | undefined, decimals: number): string {
  if (value === null || value === undefined || !Number.isFinite(value)) return 'not known'
  return value.toFixed(decimals).replace('-', '−')
}

/** A number with its unit. */
export function withUnit(value: number | string | null | undefined, unit: string, digits = 4): string {
  const text = figure(value, digits)
  return unit === '' || text === 'not known' ? text : `${text} ${unit}`
}

/** Panel size for the title block: `6.0 × 3.0, 150 mm` with lengths in m. */
export function sizeText(length: number, width: number, thickness?: number): string {
  const plan = `${(length / 1000).toFixed(2).replace(/0$/, '')} × ${(width / 1000).toFixed(2).replace(/0$/, '')}`
  return thickness === undefined ? plan : `${plan}, ${figure(thickness)} mm`
}

/** Mass, rounded up as for a hook: t above 1 t, else kg. */
export function massText(kilograms: number | null | undefined): string {
  if (kilograms === null || kilograms === undefined || !Number.isFinite(kilograms)) return 'not known'
  return kilograms >= 1000 ? `${ceilTo(kilograms / 1000, 0.01).toFixed(2)} t` : `${ceilTo(kilograms, 1)} kg`
}
