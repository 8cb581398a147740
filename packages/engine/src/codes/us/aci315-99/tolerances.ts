import type { Source } from '../../../working/source.ts'
import type { Tolerance, TwoSided } from '../../steel-rules.ts'

const STRAIGHT: Source = { standard: 'ACI 315-99', clause: 'Figure 8', status: 'from memory' }
const BENT: Source = { standard: 'ACI 315-99', clause: 'Figure 8', status: 'seen' }

const INCH = 25.4

/** Cut length of a straight bar, mm. */
export function cutTolerance(): TwoSided {
  return { minus: INCH, plus: INCH, source: STRAIGHT }
}

/** A side of a stirrup half an inch, of another bent bar one inch, mm. */
export function legTolerance({ role }: { readonly role: 'main' | 'stirrup' }): Tolerance {
  const either = role === 'stirrup' ? INCH / 2 : INCH
  return { minus: either, plus: either, source: BENT }
}
