import type { ChairSpacing } from '../../mould-rules.ts'

/** A bar is supported at most every 50 diameters of its own, in staggered rows; the cap of 1000 mm is from memory. */
export function chairSpacing({ diameter }: { readonly diameter: number }): ChairSpacing {
  const standard = 'BS 7973-2:2001'
  return 50 * diameter <= 1000
    ? { spacing: 50 * diameter, source: { standard, clause: '50 d, staggered rows', status: 'seen' } }
    : { spacing: 1000, source: { standard, clause: 'cap of 1000 mm', status: 'from memory' } }
}
