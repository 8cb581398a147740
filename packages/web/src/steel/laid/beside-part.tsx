import { lengthText, type ShownPair, steelSection } from '@castwright/documents/picture'
import type { BesidePair, Corner, SteelPlan } from '@castwright/engine/steel'
import { type ReactElement, useMemo, useState } from 'react'
import { Explain, fixed, Sheet, VerdictMark } from '../../look/index.ts'
import { PictureView } from '../../panel/picture-view.tsx'
import type { LaidProps } from './laid-page.tsx'

/** Pairs of two lines of the schedule, the worst first. */
interface PairGroup {
  readonly key: string
  readonly first: BesidePair
  readonly count: number
}

function groupsOf(pairs: readonly BesidePair[]): PairGroup[] {
  const groups = new Map<string, PairGroup>()
  for (const pair of pairs) {
    const key = [...pair.marks].sort().join(' ')
    const group = groups.get(key)
    groups.set(key, { key, first: group?.first ?? pair, count: (group?.count ?? 0) + 1 })
  }
  return [...groups.values()]
}

/** Rows of the table before the rest is only counted. */
const MOST_ROWS = 12

/** Bars that run side by side too near, each kind of pair with its worst place in section, and those that are tied in contact. */
export function BesidePart({ drawing, plan }: LaidProps): ReactElement | null {
  const { steel } = plan
  const check = steel.checks.find(({ id }) => id === 'side-by-side')
  const crowded = useMemo(() => groupsOf(steel.crowded), [steel.crowded])
  const contacts = useMemo(() => groupsOf(steel.contacts), [steel.contacts])
  const [chosen, setChosen] = useState('')
  if (check === undefined) return null
  const groups = [...crowded, ...contacts]
  const group = groups.find(({ key }) => key === chosen) ?? groups[0]
  return (
    <Sheet
      title="Side by side"
      note="Bars that run the same way are clear of each other, or in contact and tied. A gap in between does not fill."
    >
      <div className="stack">
        <div className="row">
          <VerdictMark verdict={check.verdict} size={20} withWord />
          <span>{verdictText(check.verdict, steel, check.unknown ?? [])}</span>
          <Explain about={check.what} working={check.working} source={check.source} />
        </div>
        {group === undefined ? null : (
          <>
            <PairTable
              groups={groups.slice(0, MOST_ROWS)}
              chosen={group.key}
              onChoose={setChosen}
              more={groups.length - MOST_ROWS}
            />
            <PairPicture
              drawing={drawing}
              steel={steel}
              pair={{ ...group.first, isFault: steel.crowded.includes(group.first) }}
            />
          </>
        )}
      </div>
    </Sheet>
  )
}

function verdictText(
  verdict: 'pass' | 'fail' | 'unknown',
  { crowded, contacts }: Pick<SteelPlan, 'crowded' | 'contacts'>,
  missing: readonly string[],
): string {
  const tied = contacts.length === 0 ? '' : `; ${pairs(contacts.length)} in contact, to be tied`
  if (crowded.length > 0) return `${pairs(crowded.length)} neither clear nor tied in contact${tied}.`
  if (verdict === 'unknown') return `Not known: ${missing.join('; ')}.`
  return `No pair is too near${tied}.`
}

function pairs(count: number): string {
  return `${count} ${count === 1 ? 'pair' : 'pairs'}`
}

function PairTable({
  groups,
  chosen,
  onChoose,
  more,
}: {
  readonly groups: readonly PairGroup[]
  readonly chosen: string
  readonly onChoose: (key: string) => void
  readonly more: number
}): ReactElement {
  return (
    <>
      <div className="scroll-x">
        <table>
          <thead>
            <tr>
              <th scope="col">bars</th>
              <th scope="col" className="figure">
                pairs
              </th>
              <th scope="col" className="figure">
                clear, mm
              </th>
              <th scope="col" className="figure">
                asked, mm
              </th>
              <th scope="col" className="figure">
                over, mm
              </th>
              <th scope="col">near</th>
            </tr>
          </thead>
          <tbody>
            {groups.map(({ key, first, count }) => (
              <tr key={key}>
                <th scope="row">
                  <button
                    type="button"
                    className="laid-choice"
                    aria-pressed={key === chosen}
                    onClick={() => onChoose(key)}
                  >
                    {first.marks.join(' and ')}
                  </button>
                </th>
                <td className="figure">{count}</td>
                <td className="figure">{first.inContact ? 'contact' : fixed(first.clear, 1)}</td>
                <td className="figure">{first.asked > 0 ? lengthText(first.asked) : 'not known'}</td>
                <td className="figure">{lengthText(first.length)}</td>
                <td>{placeText(first.at)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {more > 0 ? (
        <p className="small">
          {more} more {more === 1 ? 'kind' : 'kinds'} of pair, less near or in contact.
        </p>
      ) : null}
    </>
  )
}

function placeText([x, y]: Corner): string {
  return `x ${Math.round(x)}, y ${Math.round(y)}`
}

/** Cut across the two bars where they are near. */
function PairPicture({
  drawing,
  steel,
  pair,
}: Pick<LaidProps, 'drawing'> & {
  readonly steel: SteelPlan
  readonly pair: ShownPair
}): ReactElement {
  const along = acrossOf(pair, steel)
  if (along === null) return <p className="small">The two bars stand upright: no section cuts across them.</p>
  return (
    <PictureView
      height={320}
      layOut={(frame) => {
        const picture = steelSection({ drawing, steel, frame, along, pair })
        if (picture === null) throw new Error('a pair without heights: pairs are of bars with heights only')
        return picture
      }}
    />
  )
}

/** The axis that the two bars run across most; null where they stand upright. */
function acrossOf({ bars: [id], at }: BesidePair, { placed }: SteelPlan): 'x' | 'y' | null {
  const centreline = placed.find((bar) => bar.id === id)?.centreline ?? []
  let nearest: { readonly away: number; readonly run: readonly [number, number] } | null = null
  for (const [i, to] of centreline.slice(1).entries()) {
    const from = centreline[i] as Corner
    const run = [Math.abs(to[0] - from[0]), Math.abs(to[1] - from[1])] as const
    const away = [0, 1, 2].reduce((sum, axis) => {
      const [low, high] = [from[axis as 0], to[axis as 0]].sort((a, b) => a - b) as [number, number]
      const place = at[axis as 0]
      return sum + Math.max(0, low - place, place - high)
    }, 0)
    if (nearest === null || away < nearest.away) nearest = { away, run }
  }
  if (nearest === null || Math.max(...nearest.run) === 0) return null
  return nearest.run[0] >= nearest.run[1] ? 'y' : 'x'
}
