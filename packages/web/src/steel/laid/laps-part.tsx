import { lapPicture, lengthText } from '@castwright/documents/picture'
import type { PlacedLap } from '@castwright/engine/steel'
import { type ReactElement, useMemo, useState } from 'react'
import { Sheet } from '../../look/index.ts'
import { PictureView } from '../../panel/picture-view.tsx'
import type { LaidProps } from './laid-page.tsx'

/** Laps of one mat and length, with the places where they lie. */
interface LapGroup {
  readonly key: string
  readonly first: PlacedLap
  readonly count: number
  /** Middles along the bars, mm, each once. */
  readonly places: readonly number[]
  /** Largest share lapped at one section, percent; null where none is counted. */
  readonly share: number | null
}

function groupsOf(laps: readonly PlacedLap[]): LapGroup[] {
  const groups = new Map<string, PlacedLap[]>()
  for (const lap of laps) {
    const key = `${lap.mark} ${lap.length}`
    groups.set(key, [...(groups.get(key) ?? []), lap])
  }
  return [...groups].flatMap(([key, members]) => {
    const [first] = members
    if (first === undefined) return []
    const along = members.map(({ at, direction }) => Math.round(at[direction === 'x' ? 0 : 1]))
    const shares = members.flatMap(({ share }) => (share === null ? [] : [share]))
    return [
      {
        key,
        first,
        count: members.length,
        places: [...new Set(along)].sort((a, b) => a - b),
        share: shares.length === 0 ? null : Math.max(...shares),
      },
    ]
  })
}

const MOST_PLACES = 8

/** Every kind of lap, how long, where, how many at one section, and one drawn to scale. */
export function LapsPart({ plan }: LaidProps): ReactElement {
  const { laps } = plan.steel
  const groups = useMemo(() => groupsOf(laps), [laps])
  const [chosen, setChosen] = useState('')
  const group = groups.find(({ key }) => key === chosen) ?? groups[0]
  if (group === undefined) {
    return (
      <Sheet
        title="Laps"
        note="No bar of this panel is lapped: each is cut in one length, or its stock is not known."
      />
    )
  }
  return (
    <Sheet
      title="Laps"
      note="Tied at both ends, in contact. A lap shorter than this is for the engineer to decide."
    >
      <div className="stack">
        <div className="scroll-x">
          <table>
            <thead>
              <tr>
                <th scope="col">mat or bar</th>
                <th scope="col" className="figure">
                  length, mm
                </th>
                <th scope="col" className="figure">
                  how many
                </th>
                <th scope="col">from</th>
                <th scope="col" className="figure">
                  at one section
                </th>
              </tr>
            </thead>
            <tbody>
              {groups.map((one) => (
                <tr key={one.key}>
                  <th scope="row">
                    <button
                      type="button"
                      className="laid-choice"
                      aria-pressed={one.key === group.key}
                      onClick={() => setChosen(one.key)}
                    >
                      {one.first.mark}, {lengthText(one.first.diameter)} mm
                    </button>
                  </th>
                  <td className="figure">{lengthText(one.first.length)}</td>
                  <td className="figure">{one.count}</td>
                  <td>{one.first.by === 'drawing' ? 'the drawing' : 'the code'}</td>
                  <td className="figure">
                    {one.share === null ? 'not counted' : `${Math.ceil(one.share - 1e-9)} %`}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        <PictureView height={150} layOut={(frame) => lapPicture({ lap: group.first, frame })} />
        <p className="small">
          Middles along {group.first.direction} at {group.places.slice(0, MOST_PLACES).join(', ')}
          {group.places.length > MOST_PLACES ? ` and ${group.places.length - MOST_PLACES} more` : ''} mm.
        </p>
      </div>
    </Sheet>
  )
}
