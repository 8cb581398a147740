import type { ReactElement } from 'react'
import { Sheet } from '../look/index.ts'
import { DraftField } from './draft-field.tsx'

/** The lifting design as its designer gives it; an engineer confirms it later, at the lift. */
export function LiftingPart(): ReactElement {
  return (
    <Sheet
      title="Lifting design"
      note="As its designer gives it. Without one, confirmed by an engineer, the lift stays shut."
    >
      <div className="fields">
        <DraftField of="liftReference" field="lifting.reference" label="Reference" words />
        <DraftField of="liftBy" field="lifting.by" label="By" words />
        <DraftField of="liftStrength" field="lifting.strength" label="Least strength at lift" unit="MPa" />
        <DraftField
          of="liftLoad"
          field="lifting.load"
          label="Greatest insert load"
          unit="kN"
          note="On any one insert, stage and sling-angle factors in it."
        />
      </div>
    </Sheet>
  )
}
