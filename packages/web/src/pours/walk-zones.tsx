import type { Plan } from '@castwright/engine/plan'
import type { CompactionPlan } from '@castwright/engine/pour'
import { LEFT_TOO_LONG, type ZoneState, zoneRows } from '@castwright/engine/pour/live'
import type { PanelFacts } from '@castwright/engine/steps'
import type { ReactElement } from 'react'
import { Button, fixed } from '../look/index.ts'
import { useActing } from '../panel/acting.ts'
import { recordZone } from '../panel/acts/record-zone.ts'
import { mayDo } from '../panel/entitled.ts'
import { usePerson, useRecord } from '../record/index.ts'
import type { WalkHand } from './use-walk.ts'

/** Zones in working order, how far each is, and the button that puts it on record. */
export function WalkZones({
  facts,
  plan,
  compaction,
  hand,
}: {
  readonly facts: PanelFacts
  readonly plan: Plan
  readonly compaction: CompactionPlan
  readonly hand: WalkHand
}): ReactElement {
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const place = {
    job: facts.job,
    mark: facts.mark,
    revision: facts.revision,
    edition: plan.editions.join('; '),
  }
  const save = (zone: ZoneState, at: number, tick: boolean): void => {
    const asked = plan.toRecord.find(({ id }) => id === `zone:${zone.id}`)
    if (asked === undefined) return
    const drafts = recordZone.drafts(place, {
      asked,
      zone: zone.id,
      walk: hand.walk.id,
      rows: zoneRows(hand.walk, compaction, at),
      of: zone.of,
      reached: zone.reached,
      wait: zone.wait,
      tick,
    })
    void run(async () => {
      for (const draft of drafts) await record.add(draft)
    })
  }
  return (
    <section className="stack" aria-labelledby="walk-zones">
      <h2 id="walk-zones">Zones</h2>
      <ul className="walk-zones">
        {hand.state.zones.map((zone, at) => {
          const own = compaction.zones[at]
          const recorded = facts.steps.place.values[`zone:${zone.id}`]
          // The share of this device is done, another's is not: its visits go on record, the tick waits.
          const part = !zone.done && zone.own.of < zone.of && zone.own.reached === zone.own.of
          return (
            <li key={zone.id}>
              <span>
                <strong>Zone {zone.order}</strong>: {countText(zone, compaction)}
                {own === undefined ? '' : `, about ${fixed(own.minutes, 1)} min, ${fixed(own.volume, 2)} m³`}
                {zone.wait !== null && zone.wait > LEFT_TOO_LONG
                  ? `, waited ${Math.ceil(zone.wait)} min`
                  : ''}
                {zone.said > 0 && recorded !== undefined
                  ? `, ${zone.reached === 0 ? '' : 'the rest '}said to be reached by ${recorded.by.name}`
                  : ''}
                {recorded === undefined || zone.said > 0
                  ? ''
                  : `, recorded ${recorded.value === true ? 'as reached' : 'as not reached'}`}
              </span>
              {mayDo(person.role, 'value') ? (
                <Button disabled={busy || zone.reached === 0} onClick={() => save(zone, at, !part)}>
                  {zone.done
                    ? `Record zone ${zone.order}`
                    : part
                      ? `Record my part of zone ${zone.order}`
                      : `Record zone ${zone.order} as not all reached`}
                </Button>
              ) : null}
            </li>
          )
        })}
      </ul>
      {hand.state.zones.some(({ said }) => said > 0) ? (
        <p className="field-note">
          Said to be reached: ticked on the card and not walked. It has no times, so nobody knows how long
          concrete beside it waited.
        </p>
      ) : null}
      {fault === null ? null : (
        <p role="alert" className="check-fault">
          {fault}
        </p>
      )}
    </section>
  )
}

function countText({ reached, of, own, layers }: ZoneState, { layers: all }: CompactionPlan): string {
  const share = own.of === of ? '' : ` (mine ${own.reached} of ${own.of})`
  const deep = all.count === 1 ? '' : `, ${layers} of ${all.count} layers done`
  return `${reached} of ${of} insertions${share}${deep}`
}
