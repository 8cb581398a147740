import type { ReactElement } from 'react'
import { Button, Field } from '../look/index.ts'
import type { RingAt } from './acts/act.ts'
import { addCorner } from './acts/add-corner.ts'
import { removeCorner } from './acts/remove-corner.ts'
import { setCorner } from './acts/set-corner.ts'
import type { DraftCorner } from './draft.ts'
import { useDraft } from './draft-context.ts'

export interface CornerTableProps {
  /** Read before each corner's number: `Outline`. */
  readonly name: string
  readonly ring: RingAt
  readonly corners: readonly DraftCorner[]
  /** Path of the corners, as faults name it: `openings[0].outline`. */
  readonly path: string
}

/** Corners one by one: x to the right, y up, mm. */
export function CornerTable({ name, ring, corners, path }: CornerTableProps): ReactElement {
  const { act, fault, left } = useDraft()
  const whole = fault(path)
  return (
    <div className="corners">
      <ol>
        {corners.map((corner, index) => {
          const field = `${path}[${index}]`
          const wrong = fault(`${field}.x`) ?? fault(`${field}.y`)
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a corner is its place in the ring
            <li key={index}>
              <span className="corner-number" aria-hidden="true">
                {index + 1}
              </span>
              {(['x', 'y'] as const).map((axis) => (
                <Field
                  key={axis}
                  label={
                    <>
                      <span className="only-read">
                        {name}, corner {index + 1},{' '}
                      </span>
                      {axis}
                    </>
                  }
                  inputMode="decimal"
                  autoComplete="off"
                  value={corner[axis]}
                  {...(fault(`${field}.${axis}`) === null ? {} : { 'aria-invalid': true })}
                  onBlur={() => left(`${field}.${axis}`)}
                  onChange={(event) =>
                    act(setCorner, { ring, corner: index, axis, text: event.currentTarget.value })
                  }
                />
              ))}
              <Button
                onClick={() => act(addCorner, { ring, after: index })}
                title="Add a corner after this one"
              >
                +<span className="only-read"> corner after {index + 1}</span>
              </Button>
              <Button onClick={() => act(removeCorner, { ring, corner: index })} title={removeCorner.label}>
                −<span className="only-read"> remove corner {index + 1}</span>
              </Button>
              {wrong === null ? null : (
                <p role="alert" className="check-fault corner-fault">
                  {wrong}
                </p>
              )}
            </li>
          )
        })}
      </ol>
      {whole === null ? null : (
        <p role="alert" className="check-fault">
          {whole}
        </p>
      )}
      {corners.length === 0 ? (
        <Button onClick={() => act(addCorner, { ring, after: -1 })}>{addCorner.label}</Button>
      ) : null}
    </div>
  )
}
