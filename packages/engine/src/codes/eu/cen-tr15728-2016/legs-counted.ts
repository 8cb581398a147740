import type { Source } from '../../../working/source.ts'

/** Legs that count for inserts where the loads of the legs are statically undetermined: two, on a diagonal. */
export const LEGS_COUNTED = 2

export const LEGS_COUNTED_SOURCE: Source = {
  standard: 'CEN/TR 15728:2016, VDI/BV-BS 6205-2:2012',
  clause: 'legs that count where the rigging is statically undetermined',
  status: 'from memory',
}
