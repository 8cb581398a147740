import type { ReactElement } from 'react'
import { Sheet } from '../look/index.ts'
import { DraftField } from './draft-field.tsx'

/** Concrete and cover. What is left empty is not known, never assumed in silence. */
export function ConcretePart(): ReactElement {
  return (
    <Sheet title="Concrete and cover">
      <div className="fields">
        <DraftField of="strength" field="concrete.strength" label="Strength" unit="MPa" />
        <DraftField
          of="density"
          field="concrete.density"
          label="Density with steel"
          unit="kg/m³"
          note="Left empty it is assumed, and listed as assumed."
        />
        <DraftField of="aggregate" field="concrete.aggregate" label="Largest aggregate" unit="mm" />
        <DraftField of="coverMould" field="cover.mould" label="Cover, mould" unit="mm" />
        <DraftField of="coverTop" field="cover.top" label="Cover, top" unit="mm" />
        <DraftField of="coverEdge" field="cover.edge" label="Cover, edges" unit="mm" />
      </div>
    </Sheet>
  )
}
