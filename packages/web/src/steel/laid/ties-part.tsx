import { tiePicture } from '@castwright/documents/picture'
import { tiePlan } from '@castwright/engine/steel'
import { type ReactElement, useMemo, useState } from 'react'
import { Sheet } from '../../look/index.ts'
import { PictureView } from '../../panel/picture-view.tsx'
import type { LaidProps } from './laid-page.tsx'
import { SwitchRow } from './switch-row.tsx'

const NAMES = { mould: 'Near the mould', top: 'Near the top' } as const

/** Every crossing of a layer and whether it is tied. */
export function TiesPart({ drawing, plan }: LaidProps): ReactElement {
  const { steel } = plan
  const ties = useMemo(() => tiePlan(steel), [steel])
  const [chosen, setChosen] = useState<'mould' | 'top'>('mould')
  const layer = ties.layers.find((one) => one.layer === chosen) ?? ties.layers[0]
  if (layer === undefined) return <Sheet title="Ties" note="No mats that cross: nothing to tie by a plan." />
  return (
    <Sheet
      title="Ties"
      note={`${ties.tied} of ${ties.crossings} crossings and ${ties.lapTies} ends of laps. Edge bars, trimmers and listed bars are tied wherever they cross.`}
    >
      <div className="stack">
        {ties.layers.length > 1 ? (
          <SwitchRow
            name="Layer of the ties"
            chosen={layer.layer}
            onChoose={setChosen}
            choices={ties.layers.map((one) => ({ key: one.layer, name: NAMES[one.layer] }))}
          />
        ) : null}
        <PictureView layOut={(frame) => tiePicture({ drawing, steel, ties: layer, frame })} />
      </div>
    </Sheet>
  )
}
