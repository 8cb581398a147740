import { codeFamily } from '@castwright/engine/codes'
import { dischargeLimit } from '@castwright/engine/pour'
import { counts, inOrder } from '@castwright/engine/pour/loads'
import type { PanelFacts } from '@castwright/engine/steps'
import type { ReactElement } from 'react'
import { useYardState } from '../record/index.ts'
import { LoadClock } from './load-clock.tsx'

/** Trucks whose concrete is not in its mould yet: how long each may still wait, by the device's own clock. */
export function TruckClocks({ panels }: { readonly panels: readonly PanelFacts[] }): ReactElement | null {
  const { yard } = useYardState()
  const zone = yard.yard?.timezone ?? 'UTC'
  const trucks = panels.flatMap((facts) => {
    const mix = facts.cast?.mix
    return inOrder(facts.dockets)
      .filter((load) => counts(load) && load.discharged === undefined)
      .map((load) => ({ facts, load, mix: mix ?? load.mix }))
  })
  if (trucks.length === 0) return null
  return (
    <ul className="truck-clocks" aria-label="Trucks">
      {trucks.map(({ facts: { job, mark }, load, mix }) => {
        const stated = yard.yard?.mixes?.find((each) => each.mark === mix)?.dischargeMinutes
        const limit =
          yard.yard === null ? (stated ?? null) : dischargeLimit(codeFamily(yard.yard.code), stated).value
        return (
          <li key={`${job}/${mark} ${load.number}`}>
            <p className="load-name">
              <strong>{load.truck === undefined ? `Load ${load.number}` : truckName(load.truck)}</strong> for{' '}
              {mark}, docket {load.number}
            </p>
            <LoadClock load={load} limit={limit} zone={zone} />
          </li>
        )
      })}
    </ul>
  )
}

/** `truck 4` where only a number or a letter is written. */
export function truckName(truck: string): string {
  return /^truck\b/i.test(truck) ? `Truck${truck.slice(5)}` : `Truck ${truck}`
}
