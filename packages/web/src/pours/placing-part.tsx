import './pours.css'
import type { Plan } from '@castwright/engine/plan'
import { MOST_HEADS, STAND, VIBRATORS } from '@castwright/engine/pour'
import type { PanelFacts, Recorded } from '@castwright/engine/steps'
import { type ReactElement, useState } from 'react'
import { Notice, NumberField, readNumber, SelectField } from '../look/index.ts'
import { useActing } from '../panel/acting.ts'
import { settlePlacing } from '../panel/acts/settle-placing.ts'
import { mayDo } from '../panel/entitled.ts'
import { Extra } from '../panel/extra.tsx'
import { KeptWord } from '../panel/kept-word.tsx'
import { usePerson, useRecord, useYardState } from '../record/index.ts'
import type { Place } from './panel-frame.ts'
import { cornersOf, StandPicture } from './stand-picture.tsx'

/** Where the chute stands and which heads work: the order, the shares and the zones follow both. */
export function PlacingPart({
  facts,
  plan,
}: {
  readonly facts: PanelFacts
  readonly plan: Plan
}): ReactElement {
  const faults = plan.pour.unknown.filter((gap) => gap.startsWith('place.'))
  return (
    <>
      {faults.length === 0 ? null : (
        <Notice kind="unknown" title="The record says something here that cannot be read">
          {faults.join('; ')}
        </Notice>
      )}
      <EarlierZones facts={facts} plan={plan} />
      <StandForm facts={facts} plan={plan} />
      <HeadsForm facts={facts} plan={plan} />
    </>
  )
}

/** Zones that were ticked before other heads made other zones: their ticks stand in the record and are asked anew. */
function EarlierZones({
  facts,
  plan,
}: {
  readonly facts: PanelFacts
  readonly plan: Plan
}): ReactElement | null {
  const now = new Set((plan.pour.compaction?.zones ?? []).map(({ id }) => `zone:${id}`))
  const earlier = Object.keys(facts.steps.place.values).filter((id) => id.startsWith('zone:') && !now.has(id))
  if (earlier.length === 0) return null
  const parts = earlier.map((id) => id.slice('zone:'.length)).join(', ')
  return (
    <Notice kind="unknown" title="Zones recorded for another pattern">
      The parts at {parts} mm along the panel were recorded before the heads changed. They stay in the record;
      the zones of today are recorded anew.
    </Notice>
  )
}

function usePlacing(facts: PanelFacts, plan: Plan) {
  const person = usePerson()
  const record = useRecord()
  const acting = useActing()
  return {
    ...acting,
    record,
    may: mayDo(person.role, 'value'),
    place: {
      job: facts.job,
      mark: facts.mark,
      revision: facts.revision,
      edition: plan.editions.join('; '),
    },
  }
}

function StandForm({
  facts,
  plan,
}: {
  readonly facts: PanelFacts
  readonly plan: Plan
}): ReactElement | null {
  const { busy, fault, run, record, may, place } = usePlacing(facts, plan)
  const { chute, stand } = plan.pour
  const [x, setX] = useState(String(Math.round(chute[0])))
  const [y, setY] = useState(String(Math.round(chute[1])))
  const [asked, setAsked] = useState(false)
  if (facts.drawing === null) return null
  const at: Place | null = placeOf(x, y)
  const put = ([px, py]: Place): void => {
    setX(String(Math.round(px)))
    setY(String(Math.round(py)))
  }
  const corners = cornersOf(facts.drawing)
  const corner = corners.findIndex((each) => at !== null && each[0] === at[0] && each[1] === at[1])
  return (
    <Extra
      title="Where the chute or skip stands"
      open={stand === null ? 'Say where it stands' : 'It stands elsewhere'}
      button={settlePlacing.stand.label}
      busy={busy}
      fault={fault}
      onSubmit={async () => {
        setAsked(true)
        return at !== null && run(() => record.add(settlePlacing.stand.draft(place, at)))
      }}
      fields={
        may ? (
          <>
            <StandPicture drawing={facts.drawing} stand={at ?? (chute as unknown as Place)} onPlace={put} />
            <SelectField
              label="At a corner"
              value={String(corner)}
              onChange={(event) => {
                const chosen = corners[Number(event.currentTarget.value)]
                if (chosen !== undefined) put(chosen)
              }}
            >
              <option value="-1">none: as tapped or typed</option>
              {corners.map(([cx, cy], i) => (
                <option key={`${cx} ${cy}`} value={i}>
                  {`${Math.round(cx)}, ${Math.round(cy)} mm`}
                </option>
              ))}
            </SelectField>
            <div className="row">
              <NumberField
                label="From the left, x"
                unit="mm"
                value={x}
                onText={setX}
                fault={
                  asked && readNumber(x) === null ? 'A number of mm; below 0 is left of the panel.' : null
                }
              />
              <NumberField
                label="From below, y"
                unit="mm"
                value={y}
                onText={setY}
                fault={asked && readNumber(y) === null ? 'A number of mm; below 0 is below the panel.' : null}
              />
            </div>
            <p className="field-note">
              The far end is poured first. What the vibrator has reached stays reached, by its place.
            </p>
          </>
        ) : null
      }
    >
      <p>
        {stand === null
          ? `Assumed: the corner at ${Math.round(chute[0])}, ${Math.round(chute[1])} mm. Nobody said where it stands.`
          : `At ${Math.round(stand[0])}, ${Math.round(stand[1])} mm. `}
        <SaidBy recorded={facts.steps.place.values[STAND]} counts={stand !== null} />
      </p>
    </Extra>
  )
}

function HeadsForm({ facts, plan }: { readonly facts: PanelFacts; readonly plan: Plan }): ReactElement {
  const { busy, fault, run, record, may, place } = usePlacing(facts, plan)
  const { yard } = useYardState()
  const own = yard.yard?.vibrators ?? []
  const { heads } = plan.pour
  const recorded = facts.steps.place.values[VIBRATORS]
  const said = recorded?.revision === facts.revision && plan.pour.heads.length > 0
  const [counts, setCounts] = useState<Readonly<Record<string, string>>>(() =>
    Object.fromEntries(own.map(({ mark }) => [mark, String(heads.filter((head) => head === mark).length)])),
  )
  const chosen = Object.fromEntries(
    own.flatMap(({ mark }) => {
      const count = Number(counts[mark] ?? '0')
      return count >= 1 ? [[mark, count] as const] : []
    }),
  )
  const all = Object.values(chosen).reduce((sum, count) => sum + count, 0)
  const [asked, setAsked] = useState(false)
  const wrong = all < 1 || all > MOST_HEADS
  return (
    <Extra
      title="Vibrators at work"
      open={said ? 'Other heads work' : 'Say which heads work'}
      button={settlePlacing.vibrators.label}
      busy={busy}
      fault={asked && wrong ? `1 to ${MOST_HEADS} heads in all.` : fault}
      onSubmit={async () => {
        setAsked(true)
        return !wrong && run(() => record.add(settlePlacing.vibrators.draft(place, chosen)))
      }}
      fields={
        may && own.length > 0 ? (
          <>
            {own.map(({ mark, head }) => (
              <SelectField
                key={mark}
                label={`${mark}, head ${head} mm`}
                value={counts[mark] ?? '0'}
                onChange={(event) => {
                  // Read now: the event is gone when the state is made.
                  const { value } = event.currentTarget
                  setCounts((before) => ({ ...before, [mark]: value }))
                }}
              >
                {Array.from({ length: MOST_HEADS + 1 }, (_, count) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: the place in this fixed list is the count itself, nothing is put in or taken out
                  <option key={count} value={count}>
                    {count === 0 ? 'none' : String(count)}
                  </option>
                ))}
              </SelectField>
            ))}
            <p className="field-note">
              The pattern is built on the least of them, so that every head reaches with it. Other heads make
              another pattern: what was reached stays reached where the old visits cover it.
            </p>
          </>
        ) : null
      }
    >
      <p>
        {own.length === 0
          ? 'The yard lists no vibrator.'
          : heads.length === 0
            ? `Not known: ${plan.pour.unknown.find((gap) => gap.startsWith('yard.vibrators')) ?? 'which heads work'}.`
            : said
              ? `${headsText(heads)}. `
              : `Assumed: ${headsText(heads)}, the first that the yard lists. Nobody said which work today.`}
        <SaidBy recorded={recorded} counts={said} />
      </p>
    </Extra>
  )
}

function SaidBy({
  recorded,
  counts,
}: {
  readonly recorded: Recorded | undefined
  readonly counts: boolean
}): ReactElement | null {
  if (recorded === undefined || !counts) return null
  return (
    <>
      Said by {recorded.by.name}. <KeptWord entry={recorded.entry} />
    </>
  )
}

function headsText(heads: readonly string[]): string {
  return [...new Set(heads)]
    .map((mark) => `${heads.filter((each) => each === mark).length} × ${mark}`)
    .join(', ')
}

function placeOf(x: string, y: string): Place | null {
  const [px, py] = [readNumber(x), readNumber(y)]
  return px === null || py === null ? null : [px, py]
}
