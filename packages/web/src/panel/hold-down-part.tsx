import { lengthText, voidSection } from '@castwright/documents/picture'
import type { Plan } from '@castwright/engine/plan'
import { ceilTo } from '@castwright/engine/working'
import type { ReactElement } from 'react'
import { fixed, Sheet } from '../look/index.ts'
import { usePlan } from '../record/index.ts'
import { usePanelRoom } from './panel-context.ts'
import { PictureView } from './picture-view.tsx'

type HeldVoid = Plan['mould']['voids'][number]
type HeldDuct = Plan['mould']['ducts'][number]

/** What lifts the void formers and ducts of this panel and what holds them, with a section of each former; nothing for a full panel. */
export function HoldDownPart(): ReactElement | null {
  const { facts } = usePanelRoom()
  const planned = usePlan(facts.job, facts.mark)
  const { drawing } = facts
  if (planned.status !== 'ready' || drawing === null) return null
  const { voids, ducts } = planned.plan.mould
  if (voids.length === 0 && ducts.length === 0) return null
  return (
    <Sheet
      title="What holds formers and ducts down"
      note="Planned. Uplift is that of fluid concrete; the peak comes as it just covers a former. Place in two layers, both sides evenly."
    >
      <div className="stack">
        <table className="hold-down">
          <thead>
            <tr>
              <th scope="col">what</th>
              <th scope="col" className="figure">
                uplift
              </th>
              <th scope="col" className="figure">
                to hold
              </th>
              <th scope="col" className="figure">
                straps, ties
              </th>
            </tr>
          </thead>
          <tbody>
            {voids.map((held) => (
              <VoidRow key={held.mark} held={held} />
            ))}
            {ducts.map((held) => (
              <DuctRow key={held.mark} held={held} />
            ))}
          </tbody>
        </table>
        {voids.map((held) => (
          <PictureView
            key={held.mark}
            height={200}
            layOut={(frame) => voidSection({ drawing, held, frame })}
          />
        ))}
      </div>
    </Sheet>
  )
}

/** A load never shown below what it is. */
function load(value: number, unit: string): string {
  return `${fixed(ceilTo(value, 0.01), 2)} ${unit}`
}

function VoidRow({ held }: { readonly held: HeldVoid }): ReactElement {
  const { mark, floats, gross, hold, straps, spacing } = held
  return (
    <tr>
      <th scope="row">Void former {mark}</th>
      <td className="figure">{floats ? load(gross, 'kN') : 'sealed'}</td>
      <td className="figure">{floats ? load(hold, 'kN') : 'none'}</td>
      <td className="figure">
        <Holds count={floats ? straps : 0} spacing={spacing} />
      </td>
    </tr>
  )
}

function DuctRow({ held }: { readonly held: HeldDuct }): ReactElement {
  const { mark, gross, hold, ties, spacing } = held
  return (
    <tr>
      <th scope="row">Duct {mark}</th>
      <td className="figure">{load(gross, 'kN/m')}</td>
      <td className="figure">{load(hold, 'kN/m')}</td>
      <td className="figure">
        <Holds count={ties} spacing={spacing} />
      </td>
    </tr>
  )
}

function Holds({
  count,
  spacing,
}: {
  readonly count: number | null
  readonly spacing: number | null
}): ReactElement {
  if (count === null) return <>not known</>
  if (count === 0 || spacing === null) return <>none</>
  return (
    <>
      <span className="number">{count}</span>
      <span className="hold-apart">at {lengthText(Math.floor(spacing))} mm</span>
    </>
  )
}
