import type { Plan } from '@castwright/engine/plan'
import { tightText } from '@castwright/engine/pour'
import type { ReactElement } from 'react'

/** Insertions with little room, each with its reason; nothing where all have room. */
export function TightList({ pour }: { readonly pour: Plan['pour'] }): ReactElement | null {
  if (pour.tight.length === 0) return null
  return (
    <details className="walk-tight">
      <summary>{pour.tight.length} insertions have little room</summary>
      <p className="field-note">
        Put the head into the gap named, and look there: planned from the bars as laid out, seen from above.
        The head stays off the cage.
      </p>
      <ul>
        {pour.tight.map((one) => (
          <li key={`${one.at} ${one.insertion}`}>{tightText(one)}</li>
        ))}
      </ul>
    </details>
  )
}
