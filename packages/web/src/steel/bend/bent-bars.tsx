import type { ScheduledBar } from '@castwright/engine/steel'
import { stepIsDone } from '@castwright/engine/steps'
import { type Asked, judge } from '@castwright/engine/working'
import { type ReactElement, useMemo, useState } from 'react'
import { Button, fixed, SelectField, VERDICT_WORD } from '../../look/index.ts'
import { useActing } from '../../panel/acting.ts'
import type { PanelPlace } from '../../panel/acts/act.ts'
import { recordValue } from '../../panel/acts/record-value.ts'
import { mayDo } from '../../panel/entitled.ts'
import { KeptWord } from '../../panel/kept-word.tsx'
import { usePerson, usePlans, useRecord, useYardState } from '../../record/index.ts'

/** Panels whose bars are still bent; empty: a bar of no panel. */
export function PanelField({
  value,
  onPanel,
}: {
  readonly value: string
  readonly onPanel: (panel: string) => void
}): ReactElement {
  const { panels } = useYardState()
  const open = useMemo(
    () => [...panels.values()].filter((facts) => facts.drawing !== null && !stepIsDone('cut-bend', facts)),
    [panels],
  )
  return (
    <SelectField
      label="For"
      note="Choose the panel to keep the reading on its card."
      value={value}
      onChange={(event) => onPanel(event.currentTarget.value)}
    >
      <option value="">any bar</option>
      {open.map(({ job, mark }) => (
        <option key={`${job}/${mark}`} value={`${job}/${mark}`}>
          {mark}, {job}
        </option>
      ))}
    </SelectField>
  )
}

export interface BentBars {
  readonly ready: boolean
  readonly place: PanelPlace
  readonly bars: readonly ScheduledBar[]
  /** What the panel's card asks, by id. */
  readonly asked: ReadonlyMap<string, Asked>
}

/** The bent bars of a panel (`<job>/<mark>`), by its plan; null for no panel. */
export function useBentBars(panel: string): BentBars | null {
  const { panels } = useYardState()
  const facts = panels.get(panel)
  const list = useMemo(() => (facts === undefined ? [] : [facts]), [facts])
  const [plan] = usePlans(list)
  return useMemo(() => {
    if (facts === undefined) return null
    const place = { job: facts.job, mark: facts.mark, revision: facts.revision }
    if (plan?.status !== 'ready') {
      return { ready: false, place: { ...place, edition: null }, bars: [], asked: new Map() }
    }
    const asked = new Map(plan.plan.toRecord.map((item) => [item.id, item]))
    return {
      ready: true,
      place: { ...place, edition: plan.plan.editions.join('; ') },
      bars: plan.plan.steel.bars.filter(({ mark }) => asked.has(measuredId(mark))),
      asked,
    }
  }, [facts, plan])
}

function measuredId(mark: string): string {
  return `bend:${mark}:measured`
}

/** Keeps a reading on the panel's card: the least diameter that it leaves, and the bar's temperature where it was taken. */
export function KeepBend({
  bent,
  mark,
  least,
  temperature,
}: {
  readonly bent: BentBars
  readonly mark: string
  readonly least: number
  readonly temperature: number | null
}): ReactElement | null {
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [kept, setKept] = useState<string | null>(null)
  const asked = bent.asked.get(measuredId(mark))
  const cold = bent.asked.get('bar-temperature')
  if (asked === undefined || !mayDo(person.role, 'value')) return null
  const value = Math.floor(least * 10) / 10
  const save = (): void => {
    void run(async () => {
      const entry = await record.add(recordValue.draft(bent.place, { asked, value }))
      if (cold !== undefined && temperature !== null) {
        await record.add(recordValue.draft(bent.place, { asked: cold, value: temperature }))
      }
      setKept(entry.id)
    })
  }
  return (
    <div className="stack">
      <p>
        On the card of {bent.place.mark} it counts as {fixed(value, 1)} mm, the least that the reading leaves:{' '}
        {VERDICT_WORD[judge(asked, value)]}.
      </p>
      <div className="row">
        <Button look="main" disabled={busy} onClick={save}>
          Keep it on the card of {bent.place.mark}
        </Button>
        {kept === null ? null : <KeptWord entry={kept} />}
      </div>
      {fault === null ? null : (
        <p role="alert" className="check-fault">
          {fault}
        </p>
      )}
    </div>
  )
}
