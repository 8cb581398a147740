import '../panel/panel.css'
import './lifts.css'
import type { LiftStageId } from '@castwright/engine/lift'
import { clearPlace } from '@castwright/engine/lift/trial'
import { type DrawnInsert, type Panel, type Point, panelOf } from '@castwright/engine/panel'
import type { Plan } from '@castwright/engine/plan'
import {
  type CardRow,
  cardOf,
  type PanelFacts,
  panelStep,
  STEP_IDS,
  stepIsDone,
} from '@castwright/engine/steps'
import { InputError } from '@castwright/engine/working'
import { getRouteApi, Link } from '@tanstack/react-router'
import { type ReactElement, useEffect, useMemo, useState } from 'react'
import {
  announce,
  Button,
  Caution,
  fixed,
  massText,
  Notice,
  Sheet,
  sizeText,
  TitleBlock,
  useTitle,
} from '../look/index.ts'
import { mayDo } from '../panel/entitled.ts'
import { openStep } from '../panel/rungs.ts'
import { whenText } from '../panel/when.ts'
import { useNow, usePanel, usePerson, usePlan, useYardState } from '../record/index.ts'
import { BestPlaces } from './best-places.tsx'
import { CompareDrawn } from './compare-drawn.tsx'
import { DeflectedShape } from './deflected-shape.tsx'
import { HoursPart } from './hours-part.tsx'
import { LiftPicture } from './lift-picture.tsx'
import { loadText } from './load-text.ts'
import { RiggingPart } from './rigging-part.tsx'
import { stageRows, stageStrength } from './stage-rows.ts'
import { StageTable } from './stage-table.tsx'
import { StressLegend } from './stress-legend.tsx'
import { takeOver } from './take-over.ts'
import type { TrialCase } from './trial-messages.ts'
import { isMoved, type TrialState } from './trial-state.ts'
import { TurnSlider } from './turn-slider.tsx'
import { type Trial, useTrial } from './use-trial.ts'

const route = getRouteApi('/rooms/lifts/$job/$mark')

/** One panel's lift: its stress as it is carried, every stage, the hour, the rigging. */
export function LiftScreen(): ReactElement {
  const { job, mark } = route.useParams()
  const facts = usePanel(job, mark)
  const { yard } = useYardState()
  const planned = usePlan(job, mark)
  useTitle(`Lift of ${mark}, ${job}`)
  const panel = useMemo(() => panelOrWhy(facts), [facts])
  if (facts === null || facts.drawing === null) {
    return (
      <div className="narrow">
        <Sheet title={`No panel ${mark} in ${job}`} note="The record on this device has no drawing of it.">
          <Link to="/lifts">All lifts</Link>
        </Sheet>
      </div>
    )
  }
  const family = facts.drawing.code ?? yard.yard?.code
  const why =
    typeof panel === 'string'
      ? panel
      : family === undefined
        ? 'Neither drawing nor yard names a code family.'
        : null
  if (why !== null || typeof panel === 'string' || family === undefined) {
    return (
      <div className="narrow">
        <h1>{mark}</h1>
        <Notice kind="unknown" title="Nothing can be lifted by this drawing">
          {why}
        </Notice>
      </div>
    )
  }
  return (
    <Lift
      key={`${job}/${mark}`}
      facts={facts}
      panel={panel}
      of={{ drawing: facts.drawing, yard: yard.yard, limits: yard.limits, family }}
      plan={planned.status === 'ready' ? planned.plan : null}
      none={planned.status === 'none' ? planned.why : null}
    />
  )
}

function panelOrWhy(facts: PanelFacts | null): Panel | string {
  if (facts === null || facts.drawing === null) return 'There is no drawing in force.'
  try {
    return panelOf(facts.drawing)
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    return error.issues
      .map(({ path, found, expected }) => `${path}: found ${found}, expected ${expected}`)
      .join('; ')
  }
}

interface LiftProps {
  readonly facts: PanelFacts
  readonly panel: Panel
  readonly of: TrialCase
  readonly plan: Plan | null
  /** Why there is no plan. */
  readonly none: string | null
}

function Lift({ facts, panel, of, plan, none }: LiftProps): ReactElement {
  /** Another number of inserts than drawn, and the drawn views kept to compare them with. */
  const [other, setOther] = useState<Other | null>(null)
  const trial = useTrial(
    other === null ? of : { ...of, drawing: { ...of.drawing, inserts: [...other.inserts] } },
    'release',
  )
  const { state } = trial
  const moved = other !== null || isMoved(state)
  const strip = useStripCard(facts, plan)
  const at = stageStrength(strip?.find(({ id }) => id === 'strength'))
  const stages = state.stages ?? plan?.lift.stages ?? null
  const rows = useMemo(
    () =>
      stages === null
        ? []
        : stageRows({
            stages,
            family: of.family,
            limits: of.limits,
            strength: at.strength,
            thickness: panel.drawing.thickness,
          }),
    [stages, of, at, panel],
  )
  useSpoken(trial, moved)
  return (
    <>
      <Head facts={facts} panel={panel} strip={strip} />
      <div className="lift-body">
        <Sheet
          className="lift-main"
          title={titleOf(state.stage)}
          note="Own weight with the factor of the stage. Move an insert and everything follows."
        >
          <PictureRoom
            facts={facts}
            panel={panel}
            trial={trial}
            moved={moved}
            drawn={other?.drawn ?? state.drawn}
            onOther={(found) => {
              const type = of.drawing.inserts?.[0]?.type
              const inserts = found.map((insert) => (type === undefined ? insert : { ...insert, type }))
              setOther({ inserts, drawn: other?.drawn ?? state.drawn })
            }}
            onBack={() => {
              if (other === null) trial.back()
              else setOther(null)
            }}
          />
        </Sheet>
        <div className="stack">
          <Sheet
            title="Every stage"
            note={
              at.of === 'now'
                ? 'Held against the strength of now, low edge.'
                : at.of === 'wanted'
                  ? 'Held against the strength wanted at the first lift: this pour has no result yet.'
                  : 'The strength is not known: neither now nor wanted.'
            }
          >
            {none === null ? null : (
              <Notice kind="unknown" title="Nothing can be planned">
                {none}
              </Notice>
            )}
            {moved ? <p className="trial-word">With the inserts as tried, not as drawn.</p> : null}
            {rows.length === 0 ? (
              <p role="status" className="waiting">
                Computing every stage …
              </p>
            ) : (
              <StageTable rows={rows} chosen={state.stage} onChoose={trial.choose} />
            )}
          </Sheet>
          {plan === null ? null : <HoursPart facts={facts} plan={plan} />}
          {stages === null ? null : (
            <RiggingPart drawing={panel.drawing} centre={panel.centre} stages={stages} />
          )}
          <Caution {...panelStep('strip').caution} />
        </div>
      </div>
    </>
  )
}

interface Other {
  readonly inserts: readonly DrawnInsert[]
  readonly drawn: TrialState['drawn']
}

const TITLES: Readonly<Record<LiftStageId, string>> = {
  release: 'Tension while it leaves the mould',
  turn: 'Tension while it is turned',
  hang: 'It hangs upright',
  store: 'Tension in storage',
  travel: 'Tension on the trailer',
  erect: 'Tension while it is set',
}

function titleOf(stage: LiftStageId): string {
  return TITLES[stage]
}

function useStripCard(facts: PanelFacts, plan: Plan | null): readonly CardRow[] | null {
  const { yard } = useYardState()
  const minute = useNow().toISOString().slice(0, 16)
  return useMemo(
    () =>
      plan === null ? null : cardOf({ plan, step: 'strip', facts, yard, now: `${minute}:00.000Z` }).rows,
    [plan, facts, yard, minute],
  )
}

function Head({
  facts,
  panel,
  strip,
}: {
  readonly facts: PanelFacts
  readonly panel: Panel
  readonly strip: readonly CardRow[] | null
}): ReactElement {
  const { yard } = useYardState()
  const now = useNow()
  const step = openStep(facts, stepIsDone)
  const strength = strip?.find(({ id }) => id === 'strength')
  const low =
    typeof strength?.demand === 'number' ? `${fixed(strength.demand, 1)} MPa, low edge` : 'not known'
  const cast = facts.cast === null ? 'not yet' : whenText(facts.cast.at, yard.yard?.timezone ?? 'UTC', now)
  return (
    <TitleBlock
      mark={facts.mark}
      step={
        <Link
          className="button button-plain"
          to="/panel/$job/$mark"
          params={{ job: facts.job, mark: facts.mark }}
          search={{ step: 'strip' }}
        >
          Step {STEP_IDS.indexOf(step) + 1} of {STEP_IDS.length}: {panelStep(step).name.toLowerCase()}
        </Link>
      }
      cells={[
        { label: 'Size, m', value: sizeText(panel.length, panel.width, panel.drawing.thickness) },
        { label: 'Mass', value: massText(panel.mass) },
        { label: 'Cast', value: cast },
        { label: 'Strength now', value: low },
        { label: 'Drawing', value: `rev. ${facts.revision ?? 'none'}` },
      ]}
    />
  )
}

function sameKinds(found: readonly DrawnInsert[], drawn: readonly DrawnInsert[]): boolean {
  return found.length === drawn.length && drawn.every(({ kind }) => kind === found[0]?.kind)
}

/** Each drawn insert goes to the nearest of the places that is left. */
function inOrder(found: readonly DrawnInsert[], drawn: readonly DrawnInsert[]): Point[] {
  const left = found.map(({ at }): Point => [Math.round(at[0]), Math.round(at[1])])
  return drawn.map(({ at }) => {
    const apart = left.map(([x, y]) => Math.hypot(x - at[0], y - at[1]))
    const [taken] = left.splice(apart.indexOf(Math.min(...apart)), 1)
    return taken ?? [at[0], at[1]]
  })
}

interface PictureRoomProps {
  readonly facts: PanelFacts
  readonly panel: Panel
  readonly trial: Trial
  readonly moved: boolean
  readonly drawn: TrialState['drawn']
  /** Another number of inserts than drawn is to be tried. */
  readonly onOther: (inserts: readonly DrawnInsert[]) => void
  readonly onBack: () => void
}

function PictureRoom({ facts, panel, trial, moved, drawn, onOther, onBack }: PictureRoomProps): ReactElement {
  const { state } = trial
  const [compare, setCompare] = useState(false)
  const [shape, setShape] = useState(false)
  const inserts = state.inserts.map((insert, i): DrawnInsert => {
    const [x, y] = state.places[i] ?? insert.at
    return { ...insert, at: [x, y] }
  })
  const turned =
    state.view !== null &&
    (state.stage === 'turn' ||
      (state.stage === 'erect' && state.view.supports.some(({ kind }) => kind === 'edge')))
  const move = (index: number, wanted: Point): void => {
    const insert = state.inserts[index]
    if (insert === undefined) return
    const clear = clearPlace({ region: panel.region, kind: insert.kind, at: wanted })
    if (clear !== null) trial.move(index, [Math.round(clear[0]), Math.round(clear[1])])
  }
  return (
    <div className="stack">
      {state.proposed ? (
        <Notice title="The drawing has no inserts">
          These are proposed: four, where sag and hog are alike. They are not on the drawing.
        </Notice>
      ) : null}
      <LiftPicture
        drawing={panel.drawing}
        region={panel.region}
        inserts={inserts}
        view={state.view}
        drawn={moved ? state.inserts.map(({ at }): Point => [at[0], at[1]]) : []}
        onMove={move}
        onLetGo={trial.letGo}
      />
      <StressLegend field={state.view?.field ?? null} />
      <Standing trial={trial} />
      {turned ? <TurnSlider angle={state.angle} onTurn={trial.turn} /> : null}
      <p id="lift-keys" className="quiet">
        Drag an insert, or choose it and use the arrow keys: 10 mm, with shift 100 mm. While moving: quick;
        let go: full.
      </p>
      <div className="row no-print">
        <Button aria-pressed={compare} onClick={() => setCompare(!compare)}>
          Compare with drawing
        </Button>
        <Button aria-pressed={shape} onClick={() => setShape(!shape)}>
          Show deflected shape
        </Button>
        <Button shut={!moved} onClick={onBack}>
          Back to the drawing
        </Button>
        <TakeOver facts={facts} inserts={inserts} shut={!moved && !state.proposed} />
      </div>
      {compare ? <CompareDrawn drawn={drawn[state.stage] ?? null} trial={state.view} /> : null}
      {shape ? <DeflectedShape view={state.view} /> : null}
      <BestPlaces
        key={`${state.inserts.length}`}
        drawing={panel.drawing}
        kind={
          state.inserts.length > 0 && state.inserts.every(({ kind }) => kind === 'edge') ? 'edge' : 'face'
        }
        count={state.inserts.length}
        factor={state.view?.factor ?? 1}
        onTry={(found) => {
          if (sameKinds(found, state.inserts)) trial.put(inOrder(found, state.inserts))
          else onOther(found)
        }}
      />
    </div>
  )
}

/** Which number is shown, or why there is none. It keeps its height: nothing below moves while the finger does. */
function Standing({ trial: { state } }: { readonly trial: Trial }): ReactElement {
  const { view, why, waits } = state
  if (why.length > 0) {
    return (
      <div className="lift-standing">
        <Notice kind="unknown" title="Not known at this stage">
          {why.join('; ')}
        </Notice>
      </div>
    )
  }
  return (
    <p className="lift-standing" role="status">
      {view === null
        ? 'Computing the plate of this panel …'
        : view.quality === 'quick'
          ? 'Quick: interpolated between mesh points. The full number follows when you let go.'
          : waits
            ? 'Computing in full …'
            : view.field === null
              ? 'Nothing bends at this stage.'
              : `Full: mesh refined at each insert.${view.factor === null ? ' Own weight alone: no factor of this stage is known.' : ''}`}
    </p>
  )
}

function TakeOver({
  facts,
  inserts,
  shut,
}: {
  readonly facts: PanelFacts
  readonly inserts: readonly DrawnInsert[]
  readonly shut: boolean
}): ReactElement | null {
  const person = usePerson()
  const navigate = route.useNavigate()
  if (!mayDo(person.role, 'drawing')) return null
  const { drawing, job, mark, revision } = facts
  return (
    <Button
      shut={shut}
      onClick={() => {
        if (drawing === null) return
        takeOver({ storage: localStorage, drawing, job, mark, revision, inserts })
        void navigate({ to: '/drawing/$job/$mark', params: { job, mark } })
      }}
    >
      Take into a new revision
    </Button>
  )
}

/** Says to a screen reader what the move did, once it is known in full. */
function useSpoken({ state }: Trial, moved: boolean): void {
  const { view, waits } = state
  useEffect(() => {
    if (!moved || waits || view === null || view.quality !== 'full') return
    const loads = view.supports.flatMap(({ mark, load }) =>
      load === null ? [] : [`${mark} ${loadText(load)}`],
    )
    const peak = view.peak === null ? '' : `Peak ${fixed(view.peak.stress, 2)} MPa. `
    announce(`${peak}${loads.join(', ')}.`)
  }, [view, waits, moved])
}
