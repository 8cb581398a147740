import type { ReactElement } from 'react'
import { Button, Sheet } from '../look/index.ts'
import { addDuct } from './acts/add-duct.ts'
import { addVoid } from './acts/add-void.ts'
import { removeDuct } from './acts/remove-duct.ts'
import { removeVoid } from './acts/remove-void.ts'
import { setDuct } from './acts/set-duct.ts'
import { setVoid } from './acts/set-void.ts'
import { shapeVoid } from './acts/shape-void.ts'
import { BoxOrCorners } from './box-or-corners.tsx'
import { CornerTable } from './corner-table.tsx'
import type { DraftDuct, DraftVoid } from './draft.ts'
import { useDraft } from './draft-context.ts'
import { TypedField } from './draft-field.tsx'

/** What displaces concrete inside the panel and floats while it is fluid. */
export function VoidPart(): ReactElement {
  const { draft, act } = useDraft()
  return (
    <Sheet
      title="Void formers and ducts"
      note="Inside the concrete, clear of openings. They float while the concrete is fluid: the card of the mould says what holds them."
    >
      <div className="stack">
        {draft.voids.map((former, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a former is its place in the list while it is typed
          <VoidView key={index} former={former} index={index} />
        ))}
        {draft.ducts.map((duct, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a duct is its place in the list while it is typed
          <DuctView key={index} duct={duct} index={index} />
        ))}
        <div className="row">
          <Button onClick={() => act(addVoid, null)}>{addVoid.label}</Button>
          <Button onClick={() => act(addDuct, null)}>{addDuct.label}</Button>
        </div>
      </div>
    </Sheet>
  )
}

function VoidView({ former, index }: { readonly former: DraftVoid; readonly index: number }): ReactElement {
  const { act } = useDraft()
  const path = `voids[${index}]`
  const text = (field: 'mark' | 'depth' | 'above' | 'mass' | 'density' | 'section') => ({
    field: `${path}.${field}`,
    value: former[field],
    onText: (typed: string) => act(setVoid, { index, field, text: typed }),
  })
  return (
    <fieldset className="part">
      <legend>Void former {former.mark}</legend>
      <div className="fields">
        <TypedField label="Mark" words {...text('mark')} />
        <BoxOrCorners
          name={`Void former ${former.mark}`}
          shape={former}
          ring={{ of: 'void', index }}
          path={path}
          up="Height on the drawing"
          onForm={(form) => act(shapeVoid, { index, form })}
          onText={(field, typed) => act(setVoid, { index, field, text: typed })}
        />
        <TypedField label="Thickness" unit="mm" {...text('depth')} />
        <TypedField
          label="Above the mould face"
          unit="mm"
          note="Concrete under it. 0: it sits on the bed, sealed to it."
          {...text('above')}
        />
        <TypedField label="Its mass" unit="kg" note="Left empty: 0, listed as assumed." {...text('mass')} />
        <TypedField label="Or its density" unit="kg/m³" {...text('density')} />
        <div className="fields-wide">
          <TypedField
            label="Section left, of full"
            note="Section modulus across it over that of the full panel, 0 to 1, by the designer. Left empty: bending is not known."
            {...text('section')}
          />
        </div>
      </div>
      <Button look="plain" onClick={() => act(removeVoid, { index })}>
        remove void former {former.mark}
      </Button>
    </fieldset>
  )
}

function DuctView({ duct, index }: { readonly duct: DraftDuct; readonly index: number }): ReactElement {
  const { act } = useDraft()
  const path = `ducts[${index}]`
  const text = (field: 'mark' | 'diameter' | 'height' | 'mass') => ({
    field: `${path}.${field}`,
    value: duct[field],
    onText: (typed: string) => act(setDuct, { index, field, text: typed }),
  })
  return (
    <fieldset className="part">
      <legend>Duct {duct.mark}</legend>
      <div className="fields">
        <TypedField label="Mark" words {...text('mark')} />
        <TypedField label="Outside diameter" unit="mm" {...text('diameter')} />
        <TypedField label="Axis above the mould face" unit="mm" {...text('height')} />
        <TypedField
          label="Its mass"
          unit="kg/m"
          note="Empty duct. Left empty: 0, listed as assumed."
          {...text('mass')}
        />
        <div className="fields-wide">
          <p className="duct-axis">Points of its axis, mm:</p>
          <CornerTable
            name={`Duct ${duct.mark}`}
            ring={{ of: 'duct', index }}
            corners={duct.corners}
            path={`${path}.line`}
          />
        </div>
      </div>
      <Button look="plain" onClick={() => act(removeDuct, { index })}>
        remove duct {duct.mark}
      </Button>
    </fieldset>
  )
}
