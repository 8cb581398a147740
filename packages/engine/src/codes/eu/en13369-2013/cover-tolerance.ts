import type { CoverTolerance } from '../../mould-rules.ts'

const TABLE_4: CoverTolerance['source'] = {
  standard: 'EN 13369:2013',
  clause: 'Table 4',
  status: 'from memory',
}

/** Section size and what the cover may be under and over the drawn one, mm; straight between the rows. */
const ROWS = [
  { size: 150, below: 5, above: 5 },
  { size: 400, below: 10, above: 15 },
  { size: 2500, below: 10, above: 30 },
] as const

/**
 * Cover of a precast product by its section size: tighter downwards than EN 13670 for thin sections, and the product standard of the yard.
 *
 * Null on both sides where the size is none. Example: 200 mm: 6 under, 7 over.
 */
export function productCover({ size }: { readonly size: number }): CoverTolerance {
  if (!(size > 0 && Number.isFinite(size))) return { below: null, above: null, source: TABLE_4 }
  const upper = ROWS.findIndex((row) => size <= row.size)
  const [from, to] =
    upper < 0 ? [ROWS[2], ROWS[2]] : [ROWS[Math.max(0, upper - 1)] ?? ROWS[0], ROWS[upper] ?? ROWS[2]]
  const share = to.size === from.size ? 0 : Math.max(0, (size - from.size) / (to.size - from.size))
  const between = (low: number, high: number) => low + share * (high - low)
  return { below: between(from.below, to.below), above: between(from.above, to.above), source: TABLE_4 }
}
