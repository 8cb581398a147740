import type { CodeFamily } from '@castwright/engine/codes'
import type { Plan } from '@castwright/engine/plan'
import { dischargeLimit, jointMinutes, latestBegin, loadTimes, POUR_RATES } from '@castwright/engine/pour'
import { airOfPour, type PanelFacts } from '@castwright/engine/steps'
import type { Mix } from '@castwright/engine/yard'
import { type ReactElement, useState } from 'react'
import { Explain, Field, fixed, NumberField, readNumber } from '../look/index.ts'
import { instantOf, whenText } from '../panel/when.ts'
import { useYardState } from '../record/index.ts'
import { OrderSheet } from './order-sheet.tsx'
import { orderText } from './order-text.ts'

const MINUTE = 60_000

/** When each truck is batched, so that it is ready as the one before ends, and how late it may be before a surface has waited too long. */
export function TrucksPart({
  plan,
  family,
  mix,
  facts,
  here,
  zone,
  now,
}: {
  readonly plan: Plan
  readonly facts: PanelFacts
  /** Concrete of this pour that has come already, m³: the rest is ordered. */
  readonly here: number
  readonly family: CodeFamily
  readonly mix: Mix | null
  readonly zone: string
  readonly now: Date
}): ReactElement {
  const [haul, setHaul] = useState('')
  const [checking, setChecking] = useState('10')
  const [rate, setRate] = useState('10')
  const [ready, setReady] = useState('')
  const [typedAir, setTypedAir] = useState('')
  const limit = dischargeLimit(family, mix?.dischargeMinutes)
  const { yard } = useYardState()
  const start = instantOf(ready, zone)
  const then = airOfPour({ facts, yard }, start ?? now.toISOString())
  const typed = readNumber(typedAir)
  const degrees = typed ?? then?.celsius ?? null
  const airText =
    degrees === null ? null : `air ${fixed(degrees, 0)} °C, ${typed === null ? then?.from : 'entered'}`
  const joint = degrees === null ? null : jointMinutes({ air: degrees, visible: true })
  const numbers = { haul: readNumber(haul), checking: readNumber(checking), rate: readNumber(rate) }
  const ordered = plan.pour.orderVolume - here
  const found = loadTimes({
    ordered,
    body: POUR_RATES.truckBody,
    rate: numbers.rate ?? Number.NaN,
    haul: numbers.haul ?? Number.NaN,
    checking: numbers.checking ?? Number.NaN,
    limit: limit.value,
    joint: joint ?? 60,
  })
  const first = found.known ? (found.value.loads[0]?.begins ?? 0) : 0
  const when = (minutes: number): string =>
    start === null
      ? `${Math.round(minutes)} min`
      : whenText(new Date(Date.parse(start) + (minutes - first) * MINUTE).toISOString(), zone, now)
  return (
    <details>
      <summary>Order and trucks</summary>
      <div className="docket-part">
        <NumberField
          label="On the road"
          unit="min"
          value={haul}
          onText={setHaul}
          note="From batching to the yard."
        />
        <NumberField label="Re-mixing and docket" unit="min" value={checking} onText={setChecking} />
        <NumberField
          label="The gang places"
          unit="m³/h"
          value={rate}
          onText={setRate}
          note="8 to 15 for a flat panel, common practice."
        />
        <NumberField
          label="Air"
          unit="°C"
          value={typedAir}
          onText={setTypedAir}
          note={
            then === null
              ? 'No weather is logged or forecast for then.'
              : `Empty: ${fixed(then.celsius, 0)}, ${then.from}.`
          }
        />
        <Field
          label="Placing begins"
          type="datetime-local"
          value={ready}
          onChange={(event) => setReady(event.currentTarget.value)}
        />
      </div>
      {haul.trim() === '' ? (
        <p>Say how long a truck is on the road.</p>
      ) : !found.known ? (
        <p role="status">Not known: {found.gaps.join('; ')}</p>
      ) : (
        <>
          <div role="status">
            <ul className="plain-list">
              {found.value.loads.map((load, at) => {
                const before = found.value.loads[at - 1]
                return (
                  <li key={load.load}>
                    <strong>Load {load.load}</strong>: {fixed(load.volume, 2)} m³, batched{' '}
                    {when(load.batched)}, here {when(load.arrives)}, placed {when(load.begins)} to{' '}
                    {when(load.ends)}, {Math.ceil(load.age)} min old at its end
                    {before === undefined
                      ? ''
                      : joint === null
                        ? '; how late it may be is not known without the air temperature'
                        : `; not later than ${when(latestBegin({ joint }, before))}, else the joint is cold`}
                  </li>
                )
              })}
            </ul>
          </div>
          <p className="field-note">
            {limit.value === null
              ? `No age limit is known: ${limit.gap ?? 'ask'}.`
              : `At most ${limit.value} min old at the end of discharge (${limit.source.standard}).`}{' '}
            A surface that waits: common practice, halved for visible work. A body of {POUR_RATES.truckBody}{' '}
            m³ is assumed.
          </p>
          <Explain about="times of the loads" working={found.working} />
          <OrderSheet
            text={orderText({
              yard: yard.yard?.name ?? 'the yard',
              panel: facts.mark,
              job: facts.job,
              mix: plan.pour.mix,
              slump: mix?.slump ?? null,
              net: plan.pour.netVolume,
              ordered,
              here,
              allowance: POUR_RATES.allowance,
              limit: limit.value,
              joint: joint === null || airText === null ? null : { minutes: joint, air: airText },
              loads: found.value.loads,
              when:
                start === null ? (minutes) => `${Math.round(minutes)} min after the first is batched` : when,
            })}
          />
        </>
      )}
    </details>
  )
}
