import { notAboveZero } from '../../working/guard.ts'
import type { Source } from '../../working/source.ts'
import { known, unknown, type Worked } from '../../working/worked.ts'

/** Length of links with the least end legs, by shape: times A, times B, and what is added. Shape 63 is from memory. */
const FORMS: Readonly<
  Record<string, { a: number; b: number; times: number; least: number; status: Source['status'] }>
> = {
  '47': { a: 2, b: 1, times: 21, least: 240, status: 'seen' },
  '51': { a: 2, b: 2, times: 16, least: 160, status: 'seen' },
  '63': { a: 2, b: 3, times: 14, least: 150, status: 'from memory' },
}

/**
 * Length of a link whose end legs are as short as the standard lets them be, by its own formula, mm: for schedules that leave C out.
 *
 * Unknown for other shapes. Example: shape 51, 12 mm, 250 by 600: 1892 mm.
 */
export function minimisedLength({
  code,
  diameter,
  A,
  B,
}: {
  readonly code: string
  readonly diameter: number
  readonly A: number
  readonly B: number
}): Worked<number> {
  const form = Object.hasOwn(FORMS, code) ? FORMS[code] : undefined
  if (form === undefined) return unknown(`code: no minimised form of shape ${code}`)
  const gaps = notAboveZero({ diameter, A, B })
  if (gaps.length > 0) return { known: false, gaps }
  const length = form.a * A + form.b * B + Math.max(form.times * diameter, form.least)
  return known(length, [
    {
      symbol: 'L',
      formula: 'a A + b B + max(n d, L_min)',
      given: { a: form.a, A, b: form.b, B, n: form.times, d: diameter, L_min: form.least },
      result: length,
      unit: 'mm',
      source: { standard: 'BS 8666:2005', clause: `Table 3, shape ${code}, minimised`, status: form.status },
    },
  ])
}
