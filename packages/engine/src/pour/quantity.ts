import { belowZero, notAboveZero } from '../working/guard.ts'
import { ceilTo } from '../working/round.ts'
import { commonPractice, GEOMETRY, type Source } from '../working/source.ts'
import { known, unknown, type Worked } from '../working/worked.ts'

const ALLOWANCE: Source = commonPractice('allowance for waste and hollow moulds')
const STEP: Source = commonPractice('supplier’s step of an order')

export interface OrderInput {
  /** Concrete in the panel, m³; steel and cast-ins not taken off. */
  readonly net: number
  /** Share on top, 0.05 for 5 %. */
  readonly allowance: number
  /** Share that the supplier may deliver under the order; 0 where none. */
  readonly underDelivery: number
  /** Step that the supplier sells in, m³. */
  readonly step: number
  /** Body of one truck, m³. */
  readonly body: number
}

export interface Order {
  /** m³, allowance included, not rounded. */
  readonly wanted: number
  /** m³, rounded up to the step. */
  readonly ordered: number
  readonly loads: number
}

/**
 * Concrete to order, m³, and truck loads. Unknown where a volume is not above 0 or a share below 0.
 *
 * Left out: residue in hopper, skip or pump, 0.1 to 0.3 m³ a set-up. Example: 2.430 m³, 5 %, step 0.2: 2.5515, order 2.6.
 */
export function orderVolume({ net, allowance, underDelivery, step, body }: OrderInput): Worked<Order> {
  const gaps = [...notAboveZero({ net, step, body }), ...belowZero({ allowance, underDelivery })]
  if (underDelivery >= 1) gaps.push('underDelivery: a share below 1')
  if (gaps.length > 0) return unknown(...gaps)
  const wanted = (net * (1 + allowance)) / (1 - underDelivery)
  const ordered = ceilTo(wanted, step)
  const loads = Math.ceil(ordered / body - 1e-9)
  return known({ wanted, ordered, loads }, [
    {
      symbol: 'V_w',
      formula: 'V (1 + a) / (1 − u)',
      given: { V: net, a: allowance, u: underDelivery },
      result: wanted,
      unit: 'm³',
      source: ALLOWANCE,
    },
    {
      symbol: 'V_o',
      formula: 'ceil(V_w / s − 10⁻⁹) s',
      given: { V_w: wanted, s: step },
      result: ordered,
      unit: 'm³',
      source: STEP,
    },
    {
      symbol: 'n_load',
      formula: 'ceil(V_o / b − 10⁻⁹)',
      given: { V_o: ordered, b: body },
      result: loads,
      unit: '',
      source: GEOMETRY,
    },
  ])
}
