import type { StressField } from '@castwright/engine/lift'
import type { ReactElement } from 'react'
import { bandShade, bandWords } from './band-path.ts'

/** What the bands mean: from pale to dark, each with its number; the same numbers stand on the lines between them. */
export function StressLegend({ field }: { readonly field: StressField | null }): ReactElement {
  const bands = field?.bands ?? []
  return (
    <div className="stress-legend">
      <span>Tension, MPa</span>
      <ol>
        {bandWords(bands).map((words, i) => (
          <li key={words}>
            <i
              style={{
                background: `color-mix(in srgb, var(--accent) ${bandShade(i, bands.length)}%, var(--sheet))`,
              }}
            />
            {words}
          </li>
        ))}
      </ol>
    </div>
  )
}
