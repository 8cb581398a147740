import type { FlatShape } from './match-shape.ts'
import { kindOf } from './match-shape.ts'

/**
 * Code of EN ISO 3766: first digit the number of bends up to 5, second how they turn; 99 where no second digit says it. `standard`: whether the
 * radius of the bends is the standard one.
 *
 * Source: EN ISO 3766:2003, coding of shapes, from memory.
 */
export function isoCode({ turns, senses }: FlatShape, standard: boolean): string {
  if (turns.length === 0) return '00'
  if (turns.length > 5) return '99'
  const kinds = new Set(turns.map(kindOf))
  const [kind] = kinds
  if (kinds.size > 1 || kind === undefined) return '99'
  const oneWay = senses.every((sense) => sense === senses[0])
  const second = secondDigit(kind, oneWay, standard)
  return second === null ? '99' : `${turns.length}${second}`
}

function secondDigit(kind: ReturnType<typeof kindOf>, oneWay: boolean, standard: boolean): number | null {
  if (kind === 'right' && oneWay) return standard ? 1 : 2
  if (kind === 'right') return standard ? 4 : null
  if (kind === 'half') return oneWay ? 3 : null
  if (kind === 'shallow') return standard ? (oneWay ? 5 : 6) : null
  return null
}
