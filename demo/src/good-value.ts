import type { Asked } from '@castwright/engine/working'
import type { Dice } from './dice.ts'

/** A value that somebody on the floor could well have found: within the limits where there are any. */
export function goodValue(asked: Asked, dice: Dice): boolean | number | string {
  switch (asked.kind) {
    case 'tick':
      return true
    case 'choice':
      return asked.choices?.find(({ good }) => good)?.value ?? ''
    case 'text':
      return 'seen'
    case 'readings':
      return 'seen'
    case 'number':
      return goodNumber(asked, dice)
  }
}

function goodNumber({ low: lowest, high: highest, unit }: Asked, dice: Dice): number {
  const low = lowest ?? null
  const high = highest ?? null
  if (low !== null && high !== null) return within(low, high, dice)
  if (low !== null) return Math.ceil(low) + Math.round(dice.between(4, 10))
  if (high !== null) return Math.floor(high - dice.between(0.05, 0.2) * high)
  return unit === '°C' ? 18 : Math.round(dice.between(2, 5))
}

/** Near the middle of both limits, as fine as their distance lets one read. */
function within(low: number, high: number, dice: Dice): number {
  if (low === high) return low
  const middle = low + (high - low) * dice.between(low === 0 ? 0.15 : 0.36, low === 0 ? 0.5 : 0.64)
  const fine = high - low > 4 ? 1 : high - low > 0.4 ? 0.1 : 0.001
  const value = Math.round(Math.round(middle / fine) * fine * 1000) / 1000
  return Math.min(high, Math.max(low, value))
}
