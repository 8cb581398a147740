import { counts, type Load } from '@castwright/engine/pour/loads'
import { fixed } from '../look/index.ts'
import { truckName } from './truck-clocks.tsx'
import { whenText } from './when.ts'

/** Where a load stands: on its way, here, being discharged, discharged, or gone back. */
export function stateText(load: Load, zone: string, now: Date): string {
  const { arrived, began, discharged } = load
  if (!counts(load)) return 'sent back'
  if (discharged !== undefined) return `discharged ${whenText(discharged, zone, now)}`
  if (began !== undefined) return `discharging since ${whenText(began, zone, now)}`
  return arrived === undefined ? 'not here yet' : `here since ${whenText(arrived, zone, now)}`
}

/** What the docket says and what was measured, in one line; what nobody has said is left out but for the slump. */
export function loadText(load: Load, zone: string, now: Date): string {
  const { truck, supplier, mix, volume, used, slump, temperature, waterAdded, batched, specimens = [] } = load
  const parts = [
    supplier,
    truck === undefined ? undefined : truckName(truck),
    mix === undefined ? undefined : `mix ${mix}`,
    volume === undefined ? undefined : `${fixed(volume, 2)} m³`,
    used === undefined ? undefined : `${fixed(used, 2)} m³ of it here`,
    slump === undefined ? 'slump not known' : `slump ${slump} mm`,
    temperature === undefined ? undefined : `${temperature} °C`,
    waterAdded === undefined ? undefined : waterAdded === 0 ? 'no water added' : `${waterAdded} L added`,
    batched === undefined ? undefined : `batched ${whenText(batched, zone, now)}`,
    specimens.length === 0 ? undefined : `specimens ${specimens.join(', ')}`,
  ].filter((part) => part !== undefined)
  const text = parts.join(', ')
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`
}
