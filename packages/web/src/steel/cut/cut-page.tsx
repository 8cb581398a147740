import { type CutBar, jobCutLists, type NotCut, type SteelCutList } from '@castwright/engine/steel'
import { stepIsDone } from '@castwright/engine/steps'
import { type ReactElement, useMemo, useState } from 'react'
import { Button, Caution, Notice, NumberField, readNumber, SelectField, Sheet } from '../../look/index.ts'
import { usePlans, useYardState } from '../../record/index.ts'
import { SteelFrame } from '../steel-frame.tsx'
import { BarPicture } from './bar-picture.tsx'
import { useCut } from './use-cut.ts'

/** Panels that are planned, and cut together, at most. */
const MOST = 60
const WITHIN = 10

/** Bars of panels that are still to be cut, from the yard's stock: one plan a diameter and grade. */
export function CutPage(): ReactElement {
  const { panels, yard } = useYardState()
  const [which, setWhich] = useState('all')
  const [kerf, setKerf] = useState('0')
  const open = useMemo(
    () =>
      [...panels.values()]
        .filter((facts) => facts.drawing !== null && !stepIsDone('cut-bend', facts))
        .slice(0, MOST),
    [panels],
  )
  const chosen = useMemo(
    () => (which === 'all' ? open : open.filter(({ job, mark }) => `${job}/${mark}` === which)),
    [open, which],
  )
  const plans = usePlans(chosen)
  const lost = readNumber(kerf)
  const job = useMemo(
    () =>
      jobCutLists({
        panels: plans.flatMap((state, index) => {
          const panel = chosen[index]?.mark
          return state.status === 'ready' && panel !== undefined
            ? [{ panel, bars: state.plan.steel.bars }]
            : []
        }),
        stock: yard.yard?.stock ?? [],
        kerf: lost !== null && lost >= 0 ? lost : 0,
      }),
    [plans, chosen, yard.yard, lost],
  )
  const computing = plans.filter(({ status }) => status === 'computing').length
  const unplanned = plans.filter(({ status }) => status === 'none').length
  return (
    <SteelFrame page="Cut">
      <Sheet
        title="Panels still to be cut"
        note="Cut lengths along the true centreline, to a whole millimetre. The drawing and the engineer’s schedule outrank them."
      >
        <div className="row steel-choice">
          <SelectField label="Panels" value={which} onChange={(event) => setWhich(event.currentTarget.value)}>
            <option value="all">all {open.length} together</option>
            {open.map(({ job, mark }) => (
              <option key={`${job}/${mark}`} value={`${job}/${mark}`}>
                {mark}, {job}
              </option>
            ))}
          </SelectField>
          <NumberField
            label="Lost at each cut"
            unit="mm"
            value={kerf}
            onText={setKerf}
            note="A shear loses none, a saw 2 to 4 mm."
            fault={lost === null || lost < 0 ? 'A number from 0.' : null}
          />
        </div>
        <p role="status">
          {computing > 0 ? `${computing} of ${chosen.length} panels: computing their bars …` : ''}
          {unplanned > 0 ? ` ${unplanned} panels have no plan and are left out.` : ''}
          {computing === 0 && open.length === 0 ? 'No panel waits for its bars.' : ''}
        </p>
      </Sheet>
      {computing > 0 || lost === null || lost < 0 ? null : (
        <>
          {job.lists.map((each) => (
            <OneList key={JSON.stringify(each)} of={each} />
          ))}
          <Left notCut={job.notCut} />
        </>
      )}
      <Caution
        order="Cut only accepted bundles."
        text="What is rolled on the bar decides, not the docket. A piece cut too short is never lapped out without the engineer."
      />
    </SteelFrame>
  )
}

/** Bars that no list holds, in words. */
function Left({ notCut }: { readonly notCut: readonly NotCut[] }): ReactElement | null {
  if (notCut.length === 0) return null
  return (
    <Notice kind="unknown" title={`${notCut.length} bar marks cannot be cut from the yard’s stock`}>
      {notCut
        .slice(0, 20)
        .map(
          ({ panel, mark, reason, longest }) =>
            `${panel} ${mark}: ${reason}${longest === null ? '' : ` (${longest} mm)`}`,
        )
        .join('; ')}
      {notCut.length > 20 ? `; and ${notCut.length - 20} more` : ''}
    </Notice>
  )
}

function OneList({ of }: { readonly of: SteelCutList }): ReactElement {
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
          <BarList bars={found.bars} />
        </>
      )}
    </Sheet>
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

/** Example: `2 × 880 (N05 MY1)`. */
function pieceText({ length, count, mark, panel }: CutBar['pieces'][number]): string {
  const name = [panel, mark].filter((each) => each !== undefined).join(' ')
  return `${count} × ${length}${name === '' ? '' : ` (${name})`}`
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
              {bar.pieces.map(pieceText).join(', ')}; {Math.round(bar.offcut)} mm left
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
