import '../panel/panel.css'
import './pours.css'
import { codeFamily } from '@castwright/engine/codes'
import type { Plan } from '@castwright/engine/plan'
import { counts, volumeHere } from '@castwright/engine/pour/loads'
import { cardOf, holdIsOpen, type PanelFacts, stepIsDone } from '@castwright/engine/steps'
import { Link } from '@tanstack/react-router'
import { type ReactElement, useMemo } from 'react'
import { clockText } from '../day/day-window.ts'
import { fixed, Sheet, useTitle } from '../look/index.ts'
import { NightLine } from '../night/night-line.tsx'
import { DocketForm } from '../panel/docket-form.tsx'
import { PanelContext, type PanelRoom } from '../panel/panel-context.ts'
import { TruckClocks } from '../panel/truck-clocks.tsx'
import { useNow, usePlans, useYardState } from '../record/index.ts'
import { BringDockets } from './bring-dockets.tsx'
import { Times } from './finish-part.tsx'
import { NextLoadPart } from './next-load.tsx'
import { TrucksPart } from './trucks-part.tsx'
import { useFinish } from './use-finish.ts'

const HOUR = 3_600_000
/** Panels that are planned at a time. */
const MOST = 40

/** Pours of the day: what stands ready, what is being placed, and which surface wants its next pass. */
export function PoursScreen(): ReactElement {
  useTitle('Pours')
  const { panels, yard } = useYardState()
  const open = useMemo(
    () =>
      [...panels.values()]
        .filter((facts) => facts.drawing !== null && holdIsOpen('set', facts) && !stepIsDone('finish', facts))
        .slice(0, MOST),
    [panels],
  )
  const plans = usePlans(open)
  const now = useNow(60_000)
  const zone = yard.yard?.timezone ?? 'UTC'
  return (
    <div className="room stack">
      <h1>Pours</h1>
      <TruckClocks panels={open} />
      {open.length === 0 ? (
        <Sheet
          title="Nothing to pour"
          note="A panel stands here from its opened pre-pour hold until its surface is finished."
        />
      ) : (
        <ul className="pours-list">
          {open.map((facts, at) => {
            const state = plans[at]
            return (
              <li key={`${facts.job}/${facts.mark}`}>
                <Pour
                  facts={facts}
                  plan={state?.status === 'ready' ? state.plan : null}
                  now={now}
                  zone={zone}
                />
              </li>
            )
          })}
        </ul>
      )}
      <BringDockets />
    </div>
  )
}

function Pour({
  facts,
  plan,
  now,
  zone,
}: {
  readonly facts: PanelFacts
  readonly plan: Plan | null
  readonly now: Date
  readonly zone: string
}): ReactElement {
  const { yard } = useYardState()
  const { job, mark, cast } = facts
  const step = stepOf(facts)
  // The next thing to do stands out: the walk, and once the concrete is in, the card.
  const vibrated = step === 'finish'
  const zones = plan?.pour.compaction?.zones ?? []
  const reached = zones.filter(({ id }) => facts.steps.place.values[`zone:${id}`]?.value === true).length
  const mixed = cast === null ? null : Date.parse(cast.at)
  const age = mixed === null ? null : (now.getTime() - mixed) / HOUR
  const found = useFinish(facts, plan, now)
  return (
    <Sheet title={`${mark}, ${job}`} note={stateText(facts)} className="pour">
      <dl className="pours-facts">
        <Fact word="Concrete" value={plan === null ? 'Computing …' : concreteText(facts, plan)} />
        <Fact word="Age of the concrete" value={age === null ? 'not mixed yet' : ageText(age)} />
        <Fact
          word="Zones vibrated"
          value={
            plan === null
              ? 'Computing …'
              : zones.length === 0
                ? 'no pattern'
                : `${reached} of ${zones.length}`
          }
        />
        {found === null || mixed !== null ? null : (
          <Fact
            word="Power float"
            value={
              found.finish === null
                ? 'not known'
                : `planned ${fixed(found.finish.opens, 1)} to ${fixed(found.finish.closes, 1)} h after mixing`
            }
          />
        )}
      </dl>
      {found === null || age === null || mixed === null ? (
        <p className="field-note">
          The surface decides: sheen gone, a boot print of 6 mm or less for the disc, hardly a print for the
          last pass.
        </p>
      ) : (
        <Times
          found={found}
          now={age}
          clock={(hour) => clockText(mixed + hour * HOUR, zone)}
          done={false}
          short
        />
      )}
      {cast === null ? null : <NightLine facts={facts} plan={plan} zone={zone} now={now} />}
      {plan === null ? null : <NextLoadPart facts={facts} plan={plan} zone={zone} />}
      {plan === null || vibrated || concreteHere(facts) >= plan.pour.netVolume ? null : (
        <TrucksPart
          plan={plan}
          family={codeFamily(plan.family)}
          mix={yard.yard?.mixes?.find((each) => each.mark === plan.pour.mix) ?? null}
          facts={facts}
          here={concreteHere(facts)}
          zone={zone}
          now={now}
        />
      )}
      <Loads facts={facts} plan={plan} zone={zone} now={now} />
      <div className="row">
        {plan?.pour.compaction ? (
          <Link
            className={vibrated ? 'button' : 'button button-main'}
            to="/pours/$job/$mark"
            params={{ job, mark }}
          >
            Place and vibrate
          </Link>
        ) : null}
        <Link
          className={vibrated ? 'button button-main' : 'button'}
          to="/panel/$job/$mark"
          params={{ job, mark }}
          search={{ step }}
        >
          Card
        </Link>
      </div>
    </Sheet>
  )
}

/** Dockets of this pour, entered and judged as on its card. */
function Loads({
  facts,
  plan,
  zone,
  now,
}: {
  readonly facts: PanelFacts
  readonly plan: Plan | null
  readonly zone: string
  readonly now: Date
}): ReactElement {
  const state = useYardState()
  const { job, mark, revision, dockets } = facts
  const rows = useMemo(
    () =>
      plan === null
        ? []
        : cardOf({ plan, step: 'deliver', facts, yard: state.yard, now: now.toISOString() }).rows,
    [plan, facts, state.yard, now],
  )
  const room: PanelRoom = {
    facts,
    state,
    zone,
    now,
    place: { job, mark, revision, edition: plan === null ? null : plan.editions.join('; ') },
  }
  const back = dockets.filter((load) => !counts(load)).length
  const waiting = dockets.some((load) => counts(load) && load.discharged === undefined)
  return (
    <PanelContext value={room}>
      <details open={waiting || undefined}>
        <summary>
          {dockets.length === 0
            ? 'Loads: none on record'
            : `Loads: ${dockets.length} on record${back === 0 ? '' : `, ${back} sent back`}`}
        </summary>
        <DocketForm card={{ rows }} />
      </details>
    </PanelContext>
  )
}

function Fact({ word, value }: { readonly word: string; readonly value: string }): ReactElement {
  return (
    <div>
      <dt>{word}</dt>
      <dd>{value}</dd>
    </div>
  )
}

function stepOf(facts: PanelFacts): 'deliver' | 'place' | 'finish' {
  if (!stepIsDone('deliver', facts)) return 'deliver'
  return stepIsDone('place', facts) ? 'finish' : 'place'
}

function stateText(facts: PanelFacts): string {
  const step = stepOf(facts)
  if (facts.cast === null) return 'ready for its concrete'
  return step === 'deliver'
    ? 'concrete is here'
    : step === 'place'
      ? 'is being placed'
      : 'waits for its surface'
}

/** Concrete of the loads that count, m³; what no docket says is not there yet. */
function concreteHere({ dockets }: PanelFacts): number {
  return dockets.filter(counts).reduce((all, load) => all + (volumeHere(load) ?? 0), 0)
}

/** What is to order, and once trucks have come, how much of the panel they hold. */
function concreteText(facts: PanelFacts, { pour }: Plan): string {
  const here = concreteHere(facts)
  return here === 0
    ? `${fixed(pour.orderVolume, 1)} m³ to order`
    : `${fixed(here, 1)} of ${fixed(pour.netVolume, 2)} m³`
}

function ageText(hours: number): string {
  return hours < 2 ? `${Math.round(hours * 60)} min` : `${fixed(hours, 1)} h`
}
