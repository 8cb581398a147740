import { belowZero, notAboveZero } from '../../working/guard.ts'
import { STATICS } from '../../working/source.ts'
import { known, unknown, type Worked } from '../../working/worked.ts'

/**
 * What a crane's chart must hold, kg: the panel with its allowance and everything between it and the head of the crane. A chart counts hook block,
 * slings and spreader as load.
 *
 * Unknown for a part that is missing, not finite or below 0.
 *
 * Source: statics.
 * Example: 7087.5 kg with a block of 450, slings of 150 and a beam of 120: 7807.5 kg.
 */
export function craneLoad({
  panel,
  block,
  slings,
  beam,
}: {
  /** Mass of the panel with its allowance, kg. */
  readonly panel: number
  /** kg; 0 where there is none. */
  readonly block: number
  readonly slings: number
  readonly beam: number
}): Worked<number> {
  const gaps = [
    ...notAboveZero({ 'mass of the panel': panel }),
    ...belowZero({ 'mass of the hook block': block, 'mass of the slings': slings, 'mass of the beam': beam }),
  ]
  if (gaps.length > 0) return unknown(...gaps)
  const all = panel + block + slings + beam
  return known(all, [
    {
      symbol: 'm all',
      formula: 'm + b + s + t',
      given: { m: panel, b: block, s: slings, t: beam },
      result: all,
      unit: 'kg',
      source: STATICS,
      note: 'b hook block, s slings, t beam',
    },
  ])
}
