import { stepPicture, withDefects } from '@castwright/documents/picture'
import { cardOf, isStepId, panelStep, STEP_IDS, type StepId, stepIsDone } from '@castwright/engine/steps'
import type { Check } from '@castwright/engine/working'
import { getRouteApi, Link } from '@tanstack/react-router'
import { type ReactElement, useCallback, useMemo, useState } from 'react'
import { massText, Notice, Sheet, sizeText, TitleBlock, useTitle } from '../look/index.ts'
import { useNight, useNow, usePanel, usePlan, useYardState } from '../record/index.ts'
import { Ladder } from './ladder.tsx'
import { PanelContext, type PanelRoom, usePanelRoom } from './panel-context.ts'
import './panel.css'
import { PictureView } from './picture-view.tsx'
import { openStep, rungsOf } from './rungs.ts'
import { StepCard } from './step-card.tsx'
import { whenText } from './when.ts'

const route = getRouteApi('/rooms/panel/$job/$mark')

/** One panel: title block, ladder, the picture and the card of the step that is open. */
export function PanelScreen(): ReactElement {
  const { job, mark } = route.useParams()
  const search = route.useSearch()
  const navigate = route.useNavigate()
  const facts = usePanel(job, mark)
  const state = useYardState()
  const planned = usePlan(job, mark)
  const now = useNow()
  useTitle(`${mark}, ${job}`)
  const wanted = search.step
  const step: StepId = isStepId(wanted) ? wanted : facts === null ? 'steel-in' : openStep(facts, stepIsDone)
  const plan = planned.status === 'ready' ? planned.plan : null
  const minute = now.toISOString().slice(0, 16)
  const night = useNight(step === 'cure' ? facts : null, plan)
  const advice = night.state.status === 'ready' ? night.state.night.checks : NO_CHECKS
  const card = useMemo(
    () =>
      facts === null || plan === null
        ? null
        : cardOf({ plan, step, facts, yard: state.yard, now: `${minute}:00.000Z`, night: advice }),
    [facts, plan, step, state.yard, minute, advice],
  )
  const onStep = useCallback(
    (to: StepId) => void navigate({ search: { step: to }, resetScroll: false }),
    [navigate],
  )
  if (facts === null || facts.drawing === null) return <NoPanel job={job} mark={mark} />
  const zone = state.yard.yard?.timezone ?? 'UTC'
  const room: PanelRoom = {
    facts,
    state,
    zone,
    now,
    place: { job, mark, revision: facts.revision, edition: plan === null ? null : plan.editions.join('; ') },
  }
  const cast = facts.cast === null ? 'not yet' : whenText(facts.cast.at, zone, now)
  return (
    <PanelContext value={room}>
      <TitleBlock
        mark={mark}
        step={`Step ${STEP_IDS.indexOf(step) + 1} of ${STEP_IDS.length}: ${panelStep(step).name.toLowerCase()}`}
        cells={[
          { label: 'Size, m', value: plan === null ? 'computing' : sizeText(plan.length, plan.width) },
          { label: 'Mass', value: plan === null ? 'computing' : massText(plan.mass) },
          { label: 'Cast', value: cast },
          {
            label: 'Drawing',
            value: `rev. ${facts.revision ?? 'none'}, ${facts.drawing.thickness} mm thick`,
          },
          { label: 'Job', value: job },
          { label: 'Stands', value: facts.place ?? facts.cast?.bed ?? 'not known' },
        ]}
      />
      <Ladder rungs={rungsOf({ facts, shown: step, isDone: stepIsDone })} onStep={onStep} />
      <PanelBody key={step} step={step} card={card} plan={planned} />
    </PanelContext>
  )
}

const NO_CHECKS: readonly Check[] = []

function PanelBody({
  step,
  card,
  plan,
}: {
  readonly step: StepId
  readonly card: ReturnType<typeof cardOf> | null
  readonly plan: ReturnType<typeof usePlan>
}): ReactElement {
  const { facts } = usePanelRoom()
  const [tapped, setTapped] = useState<readonly [number, number] | null>(null)
  const [wantsPlace, setWantsPlace] = useState(false)
  const { drawing, defects } = facts
  const marks = [
    ...defects.flatMap((defect, index) =>
      defect.place === null ? [] : [{ at: defect.place, number: index + 1 }],
    ),
    ...(wantsPlace && tapped !== null ? [{ at: tapped, number: defects.length + 1 }] : []),
  ]
  return (
    <div className="panel-body">
      <div className="panel-picture">
        {drawing === null ? null : (
          <PictureView
            layOut={(frame) =>
              withDefects(
                stepPicture({ step, drawing, plan: plan.status === 'ready' ? plan.plan : null, frame }),
                marks,
              )
            }
            onPlace={wantsPlace ? setTapped : undefined}
          />
        )}
        <p className="picture-edit no-print">
          <Link to="/drawing/$job/$mark" params={{ job: facts.job, mark: facts.mark }}>
            change the drawing
          </Link>
        </p>
      </div>
      <div className="panel-card">
        {card !== null ? (
          <StepCard card={card} tapped={tapped} onWantPlace={setWantsPlace} />
        ) : plan.status === 'none' ? (
          <Notice kind="unknown" title="Nothing can be planned">
            {plan.why}
          </Notice>
        ) : (
          <p role="status" className="waiting">
            Computing the plan of this panel …
          </p>
        )}
      </div>
    </div>
  )
}

function NoPanel({ job, mark }: { readonly job: string; readonly mark: string }): ReactElement {
  return (
    <div className="narrow">
      <Sheet
        title={`No panel ${mark} in ${job}`}
        note="Neither the record nor this device has a drawing of it."
      >
        <div className="row">
          <Link className="button button-main" to="/drawing/new">
            Enter its drawing
          </Link>
          <Link className="button" to="/panels">
            All panels
          </Link>
        </div>
      </Sheet>
    </div>
  )
}
