import type { ReactElement } from 'react'
import { Sheet } from '../look/index.ts'
import { setHandling } from './acts/set-handling.ts'
import { useDraft } from './draft-context.ts'
import { TypedField } from './draft-field.tsx'
import { DraftSelect } from './draft-select.tsx'
import { type DraftLying, FACTOR_STAGES, type FactorStage } from './handling-draft.ts'

/** How the panel is turned, kept and carried, and the load factors that the drawing asks for. */
export function HandlingPart(): ReactElement {
  return (
    <Sheet
      title="Handling"
      note="All of it may stay empty: what is then taken is said under each field, and listed as assumed."
    >
      <div className="stack">
        <TurnFields />
        <LyingFields of="store" />
        <LyingFields of="travel" />
        <FactorFields />
      </div>
    </Sheet>
  )
}

const EDGES = [
  ['', 'not said'],
  ['bottom', 'its bottom edge'],
  ['top', 'its top edge'],
  ['left', 'its left edge'],
  ['right', 'its right edge'],
] as const

function TurnFields(): ReactElement {
  const { draft, act } = useDraft()
  const text = (field: 'about' | 'inserts' | 'rigging') => ({
    field: `handling.turn.${field}`,
    value: draft.handling[field],
    onText: (typed: string) => act(setHandling, { of: 'turn', field, text: typed }),
  })
  return (
    <fieldset className="part">
      <legend>Turned up</legend>
      <div className="fields">
        <div className="fields-wide">
          <DraftSelect
            label="About"
            choices={EDGES}
            note="Not said: the edge opposite to its edge inserts; without those it is moved flat and not turned."
            {...text('about')}
          />
        </div>
        <div className="fields-wide">
          <TypedField
            label="By the inserts"
            words
            note="Marks parted by spaces; one with a space in it in quotes. Empty: those farthest from that edge; where no edge is said, the edge inserts."
            {...text('inserts')}
          />
        </div>
        <TypedField
          label="With the rigging"
          words
          list="rigging"
          note="Empty: the drawing’s rigging."
          {...text('rigging')}
        />
      </div>
    </fieldset>
  )
}

const LYING = {
  store: {
    title: 'Kept',
    label: 'How it is kept',
    empty: 'Not said: flat; upright where it is turned up and has fewer than three face inserts.',
  },
  travel: {
    title: 'Carried',
    label: 'How it is carried',
    empty: 'Not said: as it is kept.',
  },
} as const

const FLAT = ['across', 'first', 'second'] as const
const UPRIGHT = ['lean'] as const

function LyingFields({ of }: { readonly of: 'store' | 'travel' }): ReactElement {
  const { draft, act } = useDraft()
  const lying = draft.handling[of]
  const { title, label, empty } = LYING[of]
  const path = `handling.${of}`
  const text = (field: keyof DraftLying, name: string = field) => ({
    field: `${path}.${name}`,
    value: lying[field],
    onText: (typed: string) => act(setHandling, { of, field, text: typed }),
  })
  // What was typed stays in sight though it no longer counts: a field that is hidden would be kept in silence.
  const shown = (as: 'flat' | 'upright', fields: readonly (keyof DraftLying)[]): boolean =>
    lying.as === as || fields.some((field) => lying[field] !== '')
  const idle = (as: 'flat' | 'upright', note: string): string =>
    lying.as === as
      ? note
      : `Counts only for a panel that is ${title.toLowerCase()} ${as}: choose that, or clear it.`
  return (
    <fieldset className="part">
      <legend>{title}</legend>
      <div className="fields">
        <div className="fields-wide">
          <DraftSelect
            label={label}
            choices={[
              ['', 'not said'],
              ['flat', 'flat on two timbers'],
              ['upright', 'upright, leaning in a frame'],
            ]}
            note={empty}
            {...text('as')}
          />
        </div>
        {shown('flat', FLAT) ? (
          <>
            <div className="fields-wide">
              <DraftSelect
                label="Timbers stand at two places along"
                choices={[
                  ['', 'not said'],
                  ['x', 'x'],
                  ['y', 'y'],
                ]}
                note={idle(
                  'flat',
                  'Not said: along the longer side of the panel; x where both are alike. Places left empty: under the outermost of three face inserts or more that stand well apart; else 0.207 of the side from each end, where sag and hog are alike.',
                )}
                {...text('across')}
              />
            </div>
            <TypedField
              label="First timber at"
              unit="mm"
              note={idle('flat', 'From the origin, along that axis.')}
              {...text('first', 'lines[0]')}
            />
            <TypedField
              label="Second timber at"
              unit="mm"
              note={idle('flat', 'As the first.')}
              {...text('second', 'lines[1]')}
            />
          </>
        ) : null}
        {shown('upright', UPRIGHT) ? (
          <div className="fields-wide">
            <TypedField
              label="Lean from plumb"
              unit="°"
              note={idle(
                'upright',
                'Empty: 8°; frames usually lean 5 to 10° (common practice, no source). It stands on the edge that it is turned about, else on its bottom edge.',
              )}
              {...text('lean')}
            />
          </div>
        ) : null}
      </div>
    </fieldset>
  )
}

const STAGES: Readonly<Record<FactorStage, string>> = {
  release: 'Leaves the mould',
  turn: 'Turned about its edge',
  hang: 'Hangs upright',
  store: 'Stored',
  travel: 'On the trailer',
  erect: 'Set at the site',
}

function FactorFields(): ReactElement {
  const { draft, act } = useDraft()
  return (
    <fieldset className="part">
      <legend>Load factors on own weight</legend>
      <p className="field-note factor-note">
        Empty: the code family’s, or a higher one that an engineer enters; of what lies still, 1. A factor
        below the family’s fails and does not count; where the family has none, the drawing’s alone decides
        nothing.
      </p>
      <div className="fields">
        {FACTOR_STAGES.map((stage) => (
          <TypedField
            key={stage}
            label={STAGES[stage]}
            field={`handling.factors.${stage}`}
            value={draft.handling.factors[stage]}
            onText={(typed) => act(setHandling, { of: 'factors', field: stage, text: typed })}
          />
        ))}
      </div>
    </fieldset>
  )
}
