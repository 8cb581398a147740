import type { CardRow } from '@castwright/engine/steps'
import { shown } from '@castwright/engine/working'

const TICK_WORDS = { yes: 'as it should be', no: 'not so' } as const

/** Value *of* limit, as the right side of a row says it. */
export function valueText(row: CardRow): string {
  const { demand, limit, unit, asked, recorded } = row
  if (asked !== null && recorded === null) return 'not recorded'
  if (asked?.kind === 'tick') return recorded?.value === true ? TICK_WORDS.yes : TICK_WORDS.no
  if (asked?.kind === 'readings') return readingsText(recorded?.value, unit)
  const found = figureText(demand ?? plain(recorded?.value))
  if (found === null) return 'not known'
  const wanted = figureText(limit)
  const value =
    wanted === null ? found : isLeast(row) ? `${found}, at least ${wanted}` : `${found} of ${wanted}`
  return unit === '' ? value : `${value} ${unit}`
}

/** Whether the limit is one to be reached and not one to stay below: by what was asked, or by verdict and numbers. */
function isLeast({ asked, demand, limit, verdict }: CardRow): boolean {
  if (asked !== null) return (asked.low ?? null) !== null && (asked.high ?? null) === null
  if (typeof demand !== 'number' || typeof limit !== 'number' || demand === limit) return false
  return verdict === 'pass' ? demand > limit : verdict === 'fail' && demand < limit
}

function plain(value: unknown): number | string | null {
  return typeof value === 'number' || typeof value === 'string' ? value : null
}

function figureText(value: number | string | null): string | null {
  if (value === null || (typeof value === 'number' && !Number.isFinite(value))) return null
  return typeof value === 'string' ? value : shown(value)
}

function readingsText(value: unknown, unit: string): string {
  if (!Array.isArray(value)) return 'recorded'
  const flat = value.every((item) => typeof item === 'number')
  if (!flat || value.length > 4) return `${value.length} readings`
  return `${value.map((item) => shown(item as number)).join(', ')}${unit === '' ? '' : ` ${unit}`}`
}

/** Where the number of a row comes from: words that must not blur. */
export function originText(row: CardRow): string {
  if (row.advice === true) return 'computed, as advice'
  const limit = row.source.status === 'entered' ? `limit ${enteredText(row.source.standard)}` : ''
  if (row.from === 'asked') {
    return [row.recorded === null ? '' : 'measured', limit].filter((part) => part !== '').join(', ')
  }
  if (row.from === 'record') return 'from the record'
  if (row.source.status === 'entered') return `planned, ${enteredText(row.source.standard)}`
  return 'planned'
}

/** Sources of the drawing and the yard say who entered them; an engineer’s limit names its paper. */
function enteredText(standard: string): string {
  return standard.startsWith('entered by') ? standard : `entered by an engineer from ${standard}`
}

export function assumedText(row: CardRow): string {
  return row.assumed
    .map(
      ({ field, value, unit }) =>
        `${field} ${typeof value === 'number' ? shown(value) : value}${unit === '' ? '' : ` ${unit}`}`,
    )
    .join(', ')
}

/** What a person may answer to an asked item, in the order of the buttons. */
export const TICK_CHOICES = [
  { value: true, word: 'As it should be' },
  { value: false, word: 'Not so' },
] as const
