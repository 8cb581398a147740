import type { ReactElement } from 'react'
import { SelectField } from '../look/index.ts'
import { SHAPE_WORDS, shapeOf } from './walk-picture.tsx'

/** Which of several vibrators this device follows; nothing where one is at work. */
export function HeadsHeld({
  heads,
  held,
  onHeld,
}: {
  /** Marks of the heads at work. */
  readonly heads: readonly string[]
  readonly held: number | null
  readonly onHeld: (vibrator: number | null) => void
}): ReactElement | null {
  if (heads.length < 2) return null
  const numbered = heads.map((mark, i) => ({ mark, number: i + 1 }))
  return (
    <div className="walk-held">
      <SelectField
        label="This device follows"
        value={String(held ?? 0)}
        onChange={(event) => {
          const chosen = Number(event.currentTarget.value)
          onHeld(chosen === 0 ? null : chosen)
        }}
      >
        <option value="0">all vibrators</option>
        {numbered.map(({ mark, number }) => (
          <option key={number} value={number}>
            {`vibrator ${number}, ${mark}`}
          </option>
        ))}
      </SelectField>
      <ul className="walk-shapes">
        {numbered.map(({ mark, number }) => (
          <li key={number}>
            <svg width="24" height="24" aria-hidden="true">
              <path className="walk-reached" d={shapeOf(number, [12, 12], 7)} />
            </svg>
            {`${number}: ${mark}, ${SHAPE_WORDS[(number - 1) % SHAPE_WORDS.length]}`}
          </li>
        ))}
      </ul>
    </div>
  )
}
