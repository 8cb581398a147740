import { shapePicture } from '@castwright/documents/picture'
import { type ReactElement, useState } from 'react'
import { fixed, Sheet } from '../../look/index.ts'
import { PictureView } from '../../panel/picture-view.tsx'
import type { LaidProps } from './laid-page.tsx'

/** Every line of the schedule; one mark chosen is drawn as it is bent. */
export function SchedulePart({ plan }: LaidProps): ReactElement {
  const { bars } = plan.steel
  const [chosen, setChosen] = useState('')
  const bar = bars.find(({ mark }) => mark === chosen) ?? bars[0]
  if (bar === undefined) return <Sheet title="Schedule" note="No bars." />
  return (
    <Sheet title="Schedule" note="Cut lengths along the centreline, legs outside, to a whole millimetre.">
      <div className="stack">
        <div className="scroll-x">
          <table>
            <thead>
              <tr>
                <th scope="col">mark</th>
                <th scope="col">bar</th>
                <th scope="col" className="figure">
                  count
                </th>
                <th scope="col" className="figure">
                  cut, mm
                </th>
                <th scope="col">shape</th>
                <th scope="col" className="figure">
                  inside, mm
                </th>
                <th scope="col" className="figure">
                  kg
                </th>
              </tr>
            </thead>
            <tbody>
              {bars.map((one) => (
                <tr key={one.mark}>
                  <th scope="row">
                    <button
                      type="button"
                      className="laid-choice"
                      aria-pressed={one.mark === bar.mark}
                      onClick={() => setChosen(one.mark)}
                    >
                      {one.mark}
                    </button>
                  </th>
                  <td>
                    {one.diameter} {one.grade}
                  </td>
                  <td className="figure">{one.count}</td>
                  <td className="figure">{Math.round(one.cutLength)}</td>
                  <td>{one.shape}</td>
                  <td className="figure">{one.turns.length === 0 ? '' : fixed(one.inside, 0)}</td>
                  <td className="figure">{fixed(one.mass, 1)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        <PictureView height={200} layOut={(frame) => shapePicture({ bar, frame })} />
        <p className="small">
          {bar.mark}: {bar.count} × {bar.diameter} mm {bar.grade}, {bar.shape},{' '}
          {bar.legs.map((leg) => Math.round(leg)).join(' + ')} mm.
        </p>
      </div>
    </Sheet>
  )
}
