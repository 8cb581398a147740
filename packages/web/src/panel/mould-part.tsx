import {
  agentText,
  alikeSides,
  formSectionPicture,
  mouldMeasuredPicture,
  type Picture,
  PROP_RULE_WORDS,
  railBowPicture,
  spansText,
} from '@castwright/documents/picture'
import { mouldSurvey } from '@castwright/engine/mould'
import type { Ring } from '@castwright/engine/panel'
import type { Plan } from '@castwright/engine/plan'
import { mouldNow } from '@castwright/engine/steps'
import { ceilTo, shown } from '@castwright/engine/working'
import type { ReactElement } from 'react'
import { Sheet } from '../look/index.ts'
import { usePlan } from '../record/index.ts'
import { usePanelRoom } from './panel-context.ts'
import { PictureView } from './picture-view.tsx'

/** The mould beside its checks: what is taped and what it gives, the load on the side forms, props side by side, release agent. */
export function MouldPart(): ReactElement | null {
  const { facts, state } = usePanelRoom()
  const planned = usePlan(facts.job, facts.mark)
  const { drawing } = facts
  if (drawing === null || planned.status !== 'ready') return null
  const { plan } = planned
  const survey = mouldSurvey(drawing.outline as unknown as Ring)
  const now = mouldNow({ plan, facts, yard: state.yard })
  const values = facts.steps.mould.values
  const taped = new Set(
    survey.lengths.flatMap(({ id }) => (values[id]?.revision === facts.revision ? [id] : [])),
  )
  const height = state.yard.yard?.forms?.find(({ mark }) => mark === plan.mould.form)?.height ?? null
  const { mould } = plan
  return (
    <>
      <Sheet
        title="The mould as measured"
        level={3}
        note={
          now?.shape == null
            ? `${taped.size} of ${survey.lengths.length} lengths are on record. All of them give its shape.`
            : 'Measured. The panel is taken to become what the mould is.'
        }
      >
        <PictureView
          height={320}
          layOut={(frame) =>
            mouldMeasuredPicture({ drawing, survey, taped, shape: now?.shape ?? null, frame })
          }
        />
      </Sheet>
      {mould.thrust === null || mould.pressure === null ? null : (
        <Sheet
          title="Load on the side forms"
          level={3}
          note="Planned: full head of fresh concrete. A screed or a person leaning on the form is not in it."
        >
          <div className="stack">
            <PictureView
              height={240}
              layOut={(frame) =>
                drawn(
                  formSectionPicture({ mark: plan.mark, thickness: plan.thickness, height, mould, frame }),
                )
              }
            />
            {mould.sides.length > 0 ? <Props mark={plan.mark} mould={mould} /> : null}
          </div>
        </Sheet>
      )}
      <Agents mould={mould} bed={facts.cast?.bed ?? bedOf(facts.place)} />
    </>
  )
}

function drawn(picture: Picture | null): Picture {
  if (picture === null)
    throw new Error('mould part: found no picture, expected one where the thrust is known')
  return picture
}

/** `bed 4` stands for bed 4; a rack or a truck is no bed. */
function bedOf(place: string | null): string | null {
  return place?.startsWith('bed ') ? place.slice('bed '.length) : null
}

/** The rail that bows most, and the props of all sides; sides that are alike are one row. */
function Props({ mark, mould }: { readonly mark: string; readonly mould: Plan['mould'] }): ReactElement {
  return (
    <>
      <PictureView height={150} layOut={(frame) => drawn(railBowPicture({ mark, mould, frame }))} />
      <ul className="plain" aria-label="Props side by side">
        {alikeSides(mould.sides).map(({ numbers, side }) => (
          <li key={side.side}>
            <strong>
              {numbers.length === 1 ? 'Side' : 'Sides'} {numbers.join(', ')}:{' '}
              {spansText(side.spans, side.spacing)} mm
            </strong>
            , {PROP_RULE_WORDS[side.rule]}.
            <span className="prop-loads">
              Bow {shown(ceilTo(side.bow, 0.01), 'mm')}, one prop {shown(ceilTo(side.push, 0.01), 'kN')}, one
              brace {shown(ceilTo(side.brace, 0.01), 'kN')}.
            </span>
          </li>
        ))}
      </ul>
    </>
  )
}

/** What goes on the face: on that of the bed where the panel lies, or on each face that the yard has. */
function Agents({
  mould,
  bed,
}: {
  readonly mould: Plan['mould']
  readonly bed: string | null
}): ReactElement | null {
  const here = mould.agents.filter(({ beds }) => bed !== null && beds.includes(bed))
  const faces = here.length > 0 ? here : mould.agents
  if (faces.length === 0) return null
  return (
    <Sheet
      title="Release agent"
      level={3}
      note={`Planned for ${shown(mould.oiledArea, 'm²')} of mould face and side forms. Thin and even: more pools and stains.`}
    >
      <ul className="plain">
        {faces.map((face) => (
          <li key={face.face}>
            {agentText(face)}
            {face.against.length === 0 ? null : (
              <span className="check-note"> {face.against.join('; ')}.</span>
            )}
          </li>
        ))}
      </ul>
    </Sheet>
  )
}
