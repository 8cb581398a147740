import type { PanelFacts } from '../../steps/facts.ts'
import { type Assumed, known, unknown, type Worked } from '../../working/worked.ts'

export interface PlacedTemperatureInput {
  readonly facts: Pick<PanelFacts, 'steps'>
  /** Temperatures on the dockets of this pour, °C. */
  readonly dockets: readonly number[]
}

/**
 * Temperature of the concrete as placed, °C: measured at the truck, else by its dockets, the coldest of several.
 * Unknown where nobody measured it: no temperature is made up.
 */
export function placedTemperature({ facts, dockets }: PlacedTemperatureInput): Worked<number> {
  const measured = facts.steps.deliver.values['concrete-temperature']?.value
  if (typeof measured === 'number' && Number.isFinite(measured)) return known(measured, [])
  const told = dockets.filter(Number.isFinite)
  if (told.length === 0)
    return unknown('initial: temperature of the concrete as placed, on the delivery card or a docket')
  const coldest = Math.min(...told)
  const assumed: Assumed[] =
    told.length === 1
      ? []
      : [
          {
            field: 'initial',
            value: coldest,
            unit: '°C',
            why: `the coldest of ${told.length} dockets for the whole panel`,
          },
        ]
  return known(coldest, [], assumed)
}
