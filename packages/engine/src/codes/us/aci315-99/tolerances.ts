import type { Source } from '../../../working/source.ts'
import type { Tolerance, TwoSided } from '../../steel-rules.ts'
import { usBar } from '../astm/bars.ts'

const STRAIGHT: Source = { standard: 'ACI 315-99', clause: 'Figure 8', status: 'from memory' }
const BENT: Source = { standard: 'ACI 315-99', clause: 'Figure 8', status: 'seen' }

const INCH = 25.4

/** Cut length of a straight bar, mm. */
export function cutTolerance(): TwoSided {
  return { minus: INCH, plus: INCH, source: STRAIGHT }
}

/** Bars shorter than this have the tighter tolerance, mm. */
const SHORT = 12 * 12 * INCH

/**
 * A bent dimension, mm: half an inch for stirrups, for No. 3 to 5 in bars under 12 ft and where their length is not given; one inch for longer ones and
 * for No. 6 to 8.
 *
 * Null without a US size and over No. 8: no confirmed value.
 */
export function legTolerance({
  role,
  diameter,
  cutLength,
}: {
  readonly role: 'main' | 'stirrup'
  readonly diameter?: number
  readonly cutLength?: number
}): Tolerance | null {
  const bar = diameter === undefined ? null : usBar(diameter)
  if (bar === null || bar.number > 8) return null
  const long = cutLength !== undefined && cutLength >= SHORT
  const either = role === 'stirrup' || (bar.number <= 5 && !long) ? INCH / 2 : INCH
  return { minus: either, plus: either, source: BENT }
}
