import { counts } from '../../pour/loads/load.ts'
import type { PanelFacts } from '../../steps/facts.ts'
import { type Assumed, known, unknown, type Worked } from '../../working/worked.ts'

/** No fresh concrete is colder or hotter: what reads so is a slip, °C. */
const COLDEST = -10
const HOTTEST = 60

/**
 * Temperature of the concrete as placed, °C: as measured at the truck and on the dockets, the coldest of several. A load that was sent
 * back is no concrete of this panel, and beside it nobody knows whose temperature the delivery card holds.
 *
 * Unknown where nobody measured it: no temperature is made up.
 */
export function placedTemperature({ steps, dockets }: Pick<PanelFacts, 'steps' | 'dockets'>): Worked<number> {
  const loads = dockets.filter(counts)
  const asked = steps.deliver.values['concrete-temperature']?.value
  const told = [
    ...loads.flatMap(({ temperature }) => temperature ?? []),
    ...(typeof asked === 'number' && loads.length === dockets.length ? [asked] : []),
  ].filter((celsius) => celsius >= COLDEST && celsius <= HOTTEST)
  if (told.length === 0)
    return unknown('initial: temperature of the concrete as placed, on the delivery card or a docket')
  const coldest = Math.min(...told)
  const why = `the coldest of ${told.length} measured, for the whole panel`
  const assumed: Assumed[] =
    coldest === Math.max(...told) ? [] : [{ field: 'initial', value: coldest, unit: '°C', why }]
  return known(coldest, [], assumed)
}
