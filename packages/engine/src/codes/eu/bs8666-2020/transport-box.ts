import type { Source } from '../../../working/source.ts'

/** Largest shorter side of the rectangle around a bent bar that is carried without a special load, mm. */
export const TRANSPORT_BOX: { readonly most: number; readonly source: Source } = {
  most: 2750,
  source: { standard: 'BS 8666:2020', clause: 'transport of bent bars', status: 'from memory' },
}
