import type { DecimalSign } from './table.ts'

/** `two-ways`: 1.200 is one and a fifth here and twelve hundred there. */
export type ReadNumber = number | 'none' | 'two-ways'

const SPACES = /[\u0020\u00a0\u2009\u202f]/g
const MARK = { point: '.', comma: ',' } as const

/** A number as written, by the decimal sign of its list; without one only what can be read in one way. */
export function numberOf(text: string, decimal: DecimalSign | null): ReadNumber {
  const trimmed = text.trim().replace('−', '-')
  const plain = /^[+-]?\d{1,3}([\u0020\u00a0\u2009\u202f]\d{3})+([.,]\d+)?$/.test(trimmed)
    ? trimmed.replace(SPACES, '')
    : trimmed
  if (/^[+-]?\d+$/.test(plain)) return Number(plain)
  const parts = /^([+-]?)(\d[\d.,]*|[.,]\d+)$/.exec(plain)
  if (parts === null) return 'none'
  const [, sign = '', digits = ''] = parts
  const value = unsigned(digits, decimal)
  return typeof value === 'number' && sign === '-' ? -value : value
}

function unsigned(digits: string, decimal: DecimalSign | null): ReadNumber {
  const points = digits.split('.').length - 1
  const commas = digits.split(',').length - 1
  if (points > 0 && commas > 0) {
    const last: DecimalSign = digits.lastIndexOf('.') > digits.lastIndexOf(',') ? 'point' : 'comma'
    return decimal !== null && decimal !== last ? 'none' : signed(digits, last)
  }
  const own: DecimalSign = points > 0 ? 'point' : 'comma'
  const other: DecimalSign = own === 'point' ? 'comma' : 'point'
  if (points + commas > 1) return decimal === own ? 'none' : signed(digits, other)
  if (decimal !== null) return signed(digits, decimal)
  return grouped(digits, own) ? 'two-ways' : signed(digits, own)
}

/** Digits by a decimal sign; the other sign may group thousands. */
function signed(digits: string, decimal: DecimalSign): ReadNumber {
  const mark = MARK[decimal]
  const group = decimal === 'point' ? ',' : '.'
  const [whole = '', part, more] = digits.split(mark)
  if (more !== undefined || part?.includes(group)) return 'none'
  if (whole.includes(group) && !grouped(whole, decimal === 'point' ? 'comma' : 'point')) return 'none'
  const value = Number(`${whole.split(group).join('') || '0'}.${part || '0'}`)
  return Number.isFinite(value) ? value : 'none'
}

/** Whether the sign stands as a mark of thousands would: `1,200`, `12.500.000`. */
function grouped(digits: string, sign: DecimalSign): boolean {
  return sign === 'comma' ? /^[1-9]\d{0,2}(,\d{3})+$/.test(digits) : /^[1-9]\d{0,2}(\.\d{3})+$/.test(digits)
}

/** The decimal sign that the numbers of a list show; null where they show none, or both. */
export function decimalShown(texts: Iterable<string>): DecimalSign | null {
  const shown = new Set<DecimalSign>()
  for (const text of texts) {
    const plain = text.trim()
    if (!/^\d[\d.]*,\d+$|^\d[\d,]*\.\d+$/.test(plain)) continue
    const signs = plain.replace(/\d/g, '')
    const last: DecimalSign = signs.endsWith('.') ? 'point' : 'comma'
    if (signs.length > 1 || !grouped(plain, last)) shown.add(last)
  }
  const [only] = shown
  return shown.size === 1 && only !== undefined ? only : null
}
