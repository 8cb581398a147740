import '../../panel/panel.css'
import './laid.css'
import { codeFamily } from '@castwright/engine/codes'
import { type Drawing, panelOf } from '@castwright/engine/panel'
import type { Plan } from '@castwright/engine/plan'
import type { PanelFacts } from '@castwright/engine/steps'
import { getRouteApi } from '@tanstack/react-router'
import { type ReactElement, useMemo } from 'react'
import { Caution, figure, massText, Notice, SelectField, Sheet } from '../../look/index.ts'
import { usePlan, useYardState } from '../../record/index.ts'
import { SteelFrame } from '../steel-frame.tsx'
import { BesidePart } from './beside-part.tsx'
import { CagePart } from './cage-part.tsx'
import { ChairsPart } from './chairs-part.tsx'
import { LapsPart } from './laps-part.tsx'
import { LayersPart } from './layers-part.tsx'
import { SchedulePart } from './schedule-part.tsx'
import { SpacePart } from './space-part.tsx'
import { TiesPart } from './ties-part.tsx'

const route = getRouteApi('/rooms/steel/laid')

/** Where every bar of one panel lies, how it is lapped, tied, set on chairs and craned in. */
export function LaidPage(): ReactElement {
  const { panels } = useYardState()
  const { panel } = route.useSearch()
  const navigate = route.useNavigate()
  const drawn = useMemo(
    () => [...panels.values()].filter(({ drawing }) => (drawing?.steel?.length ?? 0) > 0),
    [panels],
  )
  const chosen = drawn.find(({ job, mark }) => `${job}/${mark}` === panel) ?? drawn[0]
  return (
    <SteelFrame page="Laid out">
      {chosen === undefined ? (
        <Sheet title="No steel is drawn yet" note="A panel stands here as soon as its drawing has bars." />
      ) : (
        <>
          <div className="row steel-choice">
            <SelectField
              label="Panel"
              value={`${chosen.job}/${chosen.mark}`}
              onChange={(event) =>
                navigate({ search: { panel: event.currentTarget.value }, replace: true, resetScroll: false })
              }
            >
              {drawn.map(({ job, mark }) => (
                <option key={`${job}/${mark}`} value={`${job}/${mark}`}>
                  {mark}, {job}
                </option>
              ))}
            </SelectField>
          </div>
          <OnePanel key={`${chosen.job}/${chosen.mark}`} facts={chosen} />
        </>
      )}
    </SteelFrame>
  )
}

function OnePanel({ facts }: { readonly facts: PanelFacts }): ReactElement {
  const state = usePlan(facts.job, facts.mark)
  if (state.status === 'computing') return <p role="status">Computing where the bars lie …</p>
  if (state.status === 'none' || facts.drawing === null) {
    return (
      <Notice kind="unknown" title="No bars are laid out">
        {state.status === 'none' ? state.why : 'There is no drawing in force.'}
      </Notice>
    )
  }
  return <Laid facts={facts} drawing={facts.drawing} plan={state.plan} />
}

export interface LaidProps {
  readonly facts: PanelFacts
  readonly drawing: Drawing
  readonly plan: Plan
}

function Laid(props: LaidProps): ReactElement {
  const { drawing, plan } = props
  const panel = useMemo(() => panelOf(drawing), [drawing])
  const family = useMemo(() => codeFamily(plan.family as Parameters<typeof codeFamily>[0]), [plan.family])
  return (
    <>
      <Summary {...props} />
      <LayersPart {...props} />
      <SpacePart {...props} />
      <BesidePart {...props} />
      <LapsPart {...props} />
      <TiesPart {...props} />
      <ChairsPart {...props} panel={panel} family={family} />
      <CagePart {...props} family={family} />
      <SchedulePart {...props} />
      <Caution
        order="The drawing outranks this page."
        text="Bars are laid out from the drawing, the yard’s stock and the code family. Where the engineer’s drawing shows otherwise, lay them as drawn and tell the engineer."
      />
    </>
  )
}

const SHEETS = [
  ['steel-schedule', 'Steel schedule'],
  ['bar-tags', 'Bar tags'],
  ['tie-plan', 'Tie plan'],
] as const

function Summary({ facts, plan }: LaidProps): ReactElement {
  const { steel } = plan
  const base = `/api/panels/${encodeURIComponent(facts.job)}/${encodeURIComponent(facts.mark)}/sheets`
  return (
    <Sheet
      title={`${facts.mark}, ${facts.job}`}
      note="Sheets are PDF, made by the server from the record; they need the network."
    >
      <div className="stack">
        <dl className="laid-facts">
          <Fact name="Bars" value={`${steel.bars.reduce((sum, { count }) => sum + count, 0)}`} />
          <Fact name="Steel" value={steel.mass === null ? 'not known' : massText(steel.mass)} />
          <Fact name="Laps" value={`${steel.laps.length}`} />
          <Fact name="Tying wire" value={steel.wire === null ? 'not known' : `${figure(steel.wire, 3)} kg`} />
        </dl>
        {steel.unknown.length > 0 ? (
          <Notice kind="unknown" title="Not known">
            {steel.unknown.join('; ')}
          </Notice>
        ) : null}
        <div className="row no-print">
          {SHEETS.map(([sheet, name]) => (
            <a key={sheet} className="button" href={`${base}/${sheet}`} target="_blank" rel="noreferrer">
              {name}
            </a>
          ))}
        </div>
      </div>
    </Sheet>
  )
}

function Fact({ name, value }: { readonly name: string; readonly value: string }): ReactElement {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{value}</dd>
    </div>
  )
}
