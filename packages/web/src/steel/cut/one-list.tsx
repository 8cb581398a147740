import type { CutBar, SteelCutList } from '@castwright/engine/steel'
import { type ReactElement, useState } from 'react'
import { Button, Notice, Sheet } from '../../look/index.ts'
import { useActing } from '../../panel/acting.ts'
import { mayDo } from '../../panel/entitled.ts'
import { usePerson, useRecord, useYardState } from '../../record/index.ts'
import { issueCutPlan } from './acts/issue-cut-plan.ts'
import { BarPicture } from './bar-picture.tsx'
import { piecesText } from './piece-text.ts'
import { useCut } from './use-cut.ts'

/** A search ends after so many seconds with the best that it has. */
const WITHIN = 10

/** One diameter and grade: the search, the best plan so far, and handing it to the shear. */
export function OneList({
  of,
  replaces,
}: {
  readonly of: SteelCutList
  /** The plan at the shear whose rest this is. */
  readonly replaces?: string
}): ReactElement {
  const cut = useCut()
  const { found, why, busy, stopped } = cut
  const { list } = of
  const net = list.pieces.reduce((sum, { length, count }) => sum + length * count, 0)
  const pieces = list.pieces.reduce((sum, { count }) => sum + count, 0)
  return (
    <Sheet
      title={`${of.diameter} mm ${of.grade}`}
      note={`${pieces} pieces, ${metres(net)} m net, from ${list.stock.map(({ length }) => `${metres(length)} m`).join(', ')}`}
    >
      <div className="row no-print">
        {busy ? (
          <Button onClick={cut.stop}>Stop and keep the best so far</Button>
        ) : (
          <Button look="main" onClick={() => cut.start({ list, within: WITHIN })}>
            Plan the cuts
          </Button>
        )}
      </div>
      {why === null ? null : (
        <Notice kind="unknown" title="No plan found">
          {why}
        </Notice>
      )}
      {found === null ? (
        <p role="status">{busy ? 'Searching …' : ''}</p>
      ) : (
        <>
          <p role="status" className="cut-sum">
            <strong className="number">{metres(found.stockLength)} m</strong> of stock in{' '}
            {found.bars.reduce((sum, { count }) => sum + count, 0)} bars,{' '}
            {percent(1 - net / found.stockLength)} left over. {standing(found, busy, stopped)}
          </p>
          {found.tooManyWays ? (
            <Notice kind="unknown" title="More ways of cutting than wanted">
              No plan with so few ways was found; this one has the fewest.
            </Notice>
          ) : null}
          <Issue of={of} bars={found.bars} busy={busy} {...(replaces === undefined ? {} : { replaces })} />
          <BarList bars={found.bars} />
        </>
      )}
    </Sheet>
  )
}

function Issue({
  of: { diameter, grade, list },
  bars,
  busy: searching,
  replaces,
}: {
  readonly of: SteelCutList
  readonly bars: readonly CutBar[]
  readonly busy: boolean
  readonly replaces?: string
}): ReactElement | null {
  const { yard } = useYardState()
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const name = yard.yard?.name
  if (name === undefined || searching || !mayDo(person.role, 'cut-plan')) return null
  const hand = (): void => {
    const { kerf = 0, keep = null } = list
    const input = {
      yard: name,
      diameter,
      grade,
      kerf,
      keep,
      bars,
      ...(replaces === undefined ? {} : { replaces }),
    }
    void run(() => record.add(issueCutPlan.draft(input)))
  }
  return (
    <div className="row no-print">
      <Button look="main" disabled={busy} onClick={hand}>
        {replaces === undefined ? issueCutPlan.label : 'Hand the new plan to the shear'}
      </Button>
      {fault === null ? null : (
        <p role="alert" className="check-fault">
          {fault}
        </p>
      )}
    </div>
  )
}

function standing(
  { proven, stockLength, lowerBound }: { proven: boolean | null; stockLength: number; lowerBound: number },
  busy: boolean,
  stopped: boolean,
): string {
  if (proven === true) return 'Proven: no plan takes less.'
  const far = `No plan takes less than ${metres(lowerBound)} m: at most ${percent(stockLength / lowerBound - 1)} could still be saved.`
  if (busy) return `Best so far. ${far}`
  return stopped ? `Stopped by hand, best so far. ${far}` : far
}

/** Different ways of cutting that are drawn at first. */
const FIRST = 30

function BarList({ bars }: { readonly bars: readonly CutBar[] }): ReactElement {
  const [all, setAll] = useState(false)
  const longest = Math.max(...bars.map(({ stock }) => stock))
  const shown = all ? bars : bars.slice(0, FIRST)
  return (
    <>
      <ol className="cut-list">
        {shown.map((bar) => (
          <li
            key={`${bar.stock} ${bar.pieces.map(({ length, count, mark, panel }) => `${count}×${length}${mark}${panel}`).join()}`}
          >
            <span className="cut-count">
              <strong>{bar.count} ×</strong> {metres(bar.stock)} m
            </span>
            <BarPicture bar={bar} longest={longest} />
            <span className="cut-words">
              {piecesText(bar.pieces)}; {Math.round(bar.offcut)} mm left
            </span>
          </li>
        ))}
      </ol>
      {shown.length < bars.length ? (
        <Button onClick={() => setAll(true)}>Show all {bars.length} ways of cutting</Button>
      ) : null}
    </>
  )
}

function metres(mm: number): string {
  return (mm / 1000).toFixed(2).replace(/\.?0+$/, '')
}

function percent(part: number): string {
  return `${(100 * part).toFixed(part < 0.01 ? 3 : 1)} %`
}
