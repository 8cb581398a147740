import type { ReactElement } from 'react'
import { Button, Sheet } from '../look/index.ts'
import { addBar } from './acts/add-bar.ts'
import { addLaid } from './acts/add-laid.ts'
import { addMat } from './acts/add-mat.ts'
import { removeSteel } from './acts/remove-steel.ts'
import { setSteel } from './acts/set-steel.ts'
import { CornerTable } from './corner-table.tsx'
import type { DraftBar, DraftMat } from './draft.ts'
import { useDraft } from './draft-context.ts'
import { DraftField, TypedField } from './draft-field.tsx'
import { DraftSelect } from './draft-select.tsx'
import { type DraftLaid, LAID_FORMS, type LaidForm } from './laid-draft.ts'
import { LaidFields } from './laid-fields.tsx'

/** Mats by spacing, listed bars by their shape, and the lap. */
export function SteelPart(): ReactElement {
  const { draft, act } = useDraft()
  return (
    <Sheet title="Steel" note="Of two mats in a layer the first listed lies nearer to that face.">
      <div className="stack">
        {draft.steel.map((steel, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the order of the list is part of the drawing
          <fieldset className="part" key={index}>
            <legend>{capital(nameOf(steel, index))}</legend>
            {steel.kind === 'mat' ? (
              <MatFields mat={steel} index={index} />
            ) : steel.kind === 'bar' ? (
              <BarFields bar={steel} index={index} />
            ) : (
              <LaidFields laid={steel} index={index} />
            )}
            <Button look="plain" onClick={() => act(removeSteel, { index })}>
              remove {nameOf(steel, index)}
            </Button>
          </fieldset>
        ))}
        <div className="row">
          <Button onClick={() => act(addMat, null)}>{addMat.label}</Button>
          <Button onClick={() => act(addBar, null)}>{addBar.label}</Button>
          {(Object.keys(LAID_FORMS) as LaidForm[]).map((form) => (
            <Button key={form} onClick={() => act(addLaid, form)}>
              {LAID_FORMS[form].button}
            </Button>
          ))}
        </div>
        <div className="fields">
          <DraftField
            of="lap"
            field="lap.length"
            label="Lap length"
            unit="mm"
            note="As the engineer gives it; left empty, laps are not known."
          />
        </div>
      </div>
    </Sheet>
  )
}

function nameOf(steel: DraftMat | DraftBar | DraftLaid, index: number): string {
  if (steel.kind === 'mat') return `mat ${index + 1}`
  return steel.kind === 'bar' ? `bar ${steel.bar}` : `${LAID_FORMS[steel.form].name} ${index + 1}`
}

function capital(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1)
}

const LAYERS = [
  ['mould', 'mould'],
  ['top', 'top'],
] as const

function MatFields({ mat, index }: { readonly mat: DraftMat; readonly index: number }): ReactElement {
  const { act } = useDraft()
  const path = `steel[${index}]`
  const text = (field: 'diameter' | 'grade' | 'spacing' | 'layer' | 'direction') => ({
    field: `${path}.${field}`,
    value: mat[field],
    onText: (typed: string) => act(setSteel, { index, field, text: typed }),
  })
  return (
    <div className="fields">
      <DraftSelect label="Near the" choices={LAYERS} {...text('layer')} />
      <DraftSelect
        label="Bars run along"
        choices={[
          ['x', 'x'],
          ['y', 'y'],
        ]}
        {...text('direction')}
      />
      <TypedField label="Diameter" unit="mm" {...text('diameter')} />
      <TypedField label="Spacing" unit="mm" {...text('spacing')} />
      <TypedField label="Grade" words {...text('grade')} />
    </div>
  )
}

function BarFields({ bar, index }: { readonly bar: DraftBar; readonly index: number }): ReactElement {
  const { act } = useDraft()
  const path = `steel[${index}]`
  const text = (field: Exclude<keyof DraftBar, 'kind' | 'corners'>) => ({
    field: `${path}.${field}`,
    value: bar[field],
    onText: (typed: string) => act(setSteel, { index, field, text: typed }),
  })
  return (
    <div className="fields">
      <TypedField label="Mark" words {...text('bar')} />
      <TypedField label="Diameter" unit="mm" {...text('diameter')} />
      <TypedField label="Grade" words {...text('grade')} />
      <DraftSelect
        label="Role"
        choices={[
          ['main', 'main bar'],
          ['stirrup', 'stirrup or tie'],
        ]}
        {...text('role')}
      />
      <DraftSelect label="Near the" choices={[['', 'neither'], ...LAYERS]} {...text('layer')} />
      <TypedField label="How many" {...text('count')} />
      <TypedField label="Bend, inside" unit="mm" {...text('inside')} />
      <DraftSelect
        label="Where it touches a bar"
        choices={[
          ['', 'not said'],
          ['yes', 'tied to it'],
          ['no', 'not tied'],
        ]}
        {...text('tied')}
      />
      <DraftSelect
        label="Shape by"
        choices={[
          ['path', 'corners'],
          ['legs', 'lengths'],
        ]}
        {...text('form')}
      />
      {bar.form === 'path' ? (
        <div className="fields-wide">
          <CornerTable
            name={`Bar ${bar.bar}`}
            ring={{ of: 'bar', index }}
            corners={bar.corners}
            path={`${path}.path`}
          />
        </div>
      ) : (
        <>
          <TypedField
            label="Legs"
            unit="mm"
            note="Outside lengths, parted by spaces."
            words
            {...text('legs')}
          />
          <TypedField label="Turns" unit="°" note="One, or one for each bend." words {...text('turns')} />
        </>
      )}
    </div>
  )
}
