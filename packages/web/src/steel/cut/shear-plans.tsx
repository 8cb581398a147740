import { codeFamily } from '@castwright/engine/codes'
import type { CutBar } from '@castwright/engine/steel'
import {
  barLength,
  barsLeft,
  type CutPlanFacts,
  isOpenPlan,
  leftAfterCut,
  restOfPlan,
} from '@castwright/record'
import { useSearch } from '@tanstack/react-router'
import { type ReactElement, useState } from 'react'
import { Button, CheckField, Notice, NumberField, SelectField, Sheet } from '../../look/index.ts'
import { useActing } from '../../panel/acting.ts'
import { mayDo } from '../../panel/entitled.ts'
import { KeptWord } from '../../panel/kept-word.tsx'
import { usePerson, useRecord, useYardState } from '../../record/index.ts'
import { recordCut } from './acts/record-cut.ts'
import { BarPicture } from './bar-picture.tsx'
import { CutsSoFar } from './cuts-so-far.tsx'
import { piecesText } from './piece-text.ts'
import { RestPlan } from './rest-plan.tsx'
import { cuttable, rackPieces } from './what-is-there.ts'

/** Plans that lie at the shear, line by line: what is cut is ticked off here. */
export function ShearPlans(): ReactElement | null {
  const { steel } = useYardState()
  const { plan: wanted } = useSearch({ from: '/rooms/steel' })
  const open = steel.plans
    .filter(isOpenPlan)
    .sort((a, b) => Number(b.entry === wanted) - Number(a.entry === wanted))
  if (open.length === 0) return null
  return (
    <>
      {open.map((plan) => (
        <ShearPlan key={plan.entry} facts={plan} />
      ))}
    </>
  )
}

function ShearPlan({ facts }: { readonly facts: CutPlanFacts }): ReactElement {
  const { plan, cut, by, entry } = facts
  const owed = restOfPlan(facts)
  const left = plan.lines.reduce((sum, { count }, at) => sum + Math.max(0, count - (cut[at] ?? 0)), 0)
  const longest = Math.max(...plan.lines.map(({ stock }) => stock))
  const wrong = facts.cuts.reduce(
    (sum, { cut: { lost = [], bars } }) => sum + bars * lost.reduce((pieces, { count }) => pieces + count, 0),
    0,
  )
  return (
    <Sheet
      title={`At the shear: ${plan.diameter} mm ${plan.grade}`}
      note={`Handed over by ${by.name}. ${left} bars left to cut, ${owed.reduce((sum, { count }) => sum + count, 0)} pieces owed.`}
    >
      <div className="stack">
        <div className="row no-print">
          <KeptWord entry={entry} />
          <a className="button" href={`/api/steel/plans/${entry}/sheet`} target="_blank" rel="noreferrer">
            Cutting sheet
          </a>
        </div>
        {wrong > 0 ? (
          <Notice
            kind="unknown"
            title={wrong === 1 ? '1 piece came out wrong' : `${wrong} pieces came out wrong`}
          >
            The bars that are left do not make them good: plan the rest again.
          </Notice>
        ) : null}
        <ol className="cut-list">
          {plan.lines.map((line, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a line's place is its name
            <li key={at} className="shear-line">
              <span className="cut-count">
                <strong>
                  {cut[at] ?? 0} of {line.count}
                </strong>{' '}
                cut
              </span>
              <BarPicture bar={asBar(line)} longest={longest} />
              <span className="cut-words">
                {line.stock} mm{line.rack ? ' from the rack' : ''}: {piecesText(line.pieces)};{' '}
                {Math.round(line.offcut)} mm left
              </span>
              {(cut[at] ?? 0) < line.count ? <LineForm facts={facts} at={at} /> : null}
            </li>
          ))}
        </ol>
        <CutsSoFar cuts={facts.cuts} />
        {owed.length > 0 && (wrong > 0 || cut.some((bars) => bars > 0)) ? <RestPlan facts={facts} /> : null}
      </div>
    </Sheet>
  )
}

function asBar({ stock, count, pieces, offcut }: CutPlanFacts['plan']['lines'][number]): CutBar {
  return { stock, count, pieces: pieces.map(({ length, count: of }) => ({ length, count: of })), offcut }
}

function LineForm({ facts, at }: { readonly facts: CutPlanFacts; readonly at: number }): ReactElement | null {
  const person = usePerson()
  const [shown, setShown] = useState(false)
  if (!mayDo(person.role, 'cut')) return null
  return shown ? (
    <LineFields facts={facts} at={at} onDone={() => setShown(false)} />
  ) : (
    <div className="shear-form">
      <Button onClick={() => setShown(true)}>
        Tick off<span className="only-read"> line {at + 1}</span>
      </Button>
    </div>
  )
}

/** Where the bars came from, how many, what went wrong, and where the offcut lies. */
function LineFields({
  facts,
  at,
  onDone,
}: {
  readonly facts: CutPlanFacts
  readonly at: number
  readonly onDone: () => void
}): ReactElement | null {
  const { plan, cut } = facts
  const line = plan.lines[at]
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const sources = useSources(facts, at)
  const left = (line?.count ?? 0) - (cut[at] ?? 0)
  const [from, setFrom] = useState('')
  const [bars, setBars] = useState('')
  const [lost, setLost] = useState<Readonly<Record<number, string>>>({})
  const [kept, setKept] = useState<boolean | null>(null)
  const [pressed, setPressed] = useState(false)
  if (line === undefined) return null
  const number = Number(bars === '' ? left : bars)
  const wrongs = line.pieces.map((_, index) => Number(lost[index] ?? 0))
  const anyWrong = wrongs.some((count) => count > 0)
  const worth = plan.keep !== null && leftAfterCut(plan, line) >= plan.keep
  const keep = kept ?? worth
  const source = sources.find(({ key }) => key === from)
  const most = Math.min(left, source?.most ?? left)
  const faults = {
    from: source === undefined ? 'Say which bars were cut.' : null,
    bars: !Number.isInteger(number) || number < 1 || number > most ? `1 to ${most}.` : null,
    lost: wrongs.some(
      (count, index) => !Number.isInteger(count) || count < 0 || count > (line.pieces[index]?.count ?? 0),
    )
      ? 'At most as many as one bar holds.'
      : null,
  }
  const save = (): void => {
    setPressed(true)
    if (source === undefined || faults.bars !== null || faults.lost !== null) return
    void run(() =>
      record.add(
        recordCut.draft({
          plan: facts,
          line: at + 1,
          from: source.from,
          bars: number,
          lost: wrongs,
          kept: keep,
        }),
      ),
    ).then((done) => done && onDone())
  }
  return (
    <div className="shear-form stack">
      {sources.length === 0 ? (
        <Notice kind="unknown" title="Nothing to cut from">
          {line.rack
            ? 'No offcut of this length lies in the rack by the record.'
            : `No accepted bundle of ${plan.diameter} mm ${plan.grade} with bars of ${line.stock} mm is on record. Nothing is cut from a bundle that is not accepted.`}
        </Notice>
      ) : null}
      <div className="row steel-choice">
        <SelectField
          label={line.rack ? 'Offcuts taken' : 'Bundle'}
          value={from}
          fault={pressed ? faults.from : null}
          onChange={(event) => setFrom(event.currentTarget.value)}
        >
          <option value="">choose</option>
          {sources.map(({ key, words }) => (
            <option key={key} value={key}>
              {words}
            </option>
          ))}
        </SelectField>
        <NumberField
          label="Bars cut"
          value={bars === '' ? String(left) : bars}
          fault={pressed ? faults.bars : null}
          onText={setBars}
        />
      </div>
      <details>
        <summary>Something came out wrong</summary>
        <p>Of each of these bars. Where only one went wrong, record that bar alone.</p>
        <div className="row steel-choice">
          {line.pieces.map((piece, index) => (
            <NumberField
              key={`${piece.length} ${piece.mark} ${piece.panel}`}
              label={`Wrong of ${piecesText([piece])}`}
              value={lost[index] ?? '0'}
              fault={pressed ? faults.lost : null}
              onText={(text) => setLost({ ...lost, [index]: text })}
            />
          ))}
        </div>
        {anyWrong ? <p>Those pieces are owed again, and the bars are marked as scrap.</p> : null}
      </details>
      {line.offcut > 0 ? (
        <CheckField
          label={`The offcut of ${Math.round(leftAfterCut(plan, line))} mm lies in the rack`}
          checked={keep}
          onChange={(event) => setKept(event.currentTarget.checked)}
        />
      ) : null}
      {fault === null ? null : (
        <p role="alert" className="check-fault">
          {fault}
        </p>
      )}
      <div className="row">
        <Button look="main" disabled={busy} onClick={save}>
          {recordCut.label}
        </Button>
        <Button look="plain" onClick={onDone}>
          leave it
        </Button>
      </div>
    </div>
  )
}

interface Source {
  readonly key: string
  readonly words: string
  /** Bars that it still has; null where nobody counted them. */
  readonly most: number | null
  readonly from: { readonly bundle: string } | { readonly rack: string }
}

function useSources({ plan }: CutPlanFacts, at: number): Source[] {
  const { steel, yard } = useYardState()
  const line = plan.lines[at]
  const code = yard.yard?.code
  if (line === undefined || code === undefined) return []
  if (line.rack) {
    return rackPieces(steel, { ...plan, length: line.stock }).map(({ entry, length, count, bundle }) => ({
      key: entry,
      words: `${count} of ${Math.round(length)} mm, ${bundle === null ? 'of unknown origin' : `from ${bundle}`}`,
      most: count,
      from: { rack: entry },
    }))
  }
  return cuttable(steel, codeFamily(code).steel, plan)
    .filter((facts) => {
      const length = barLength(facts)
      return length === null || length >= line.stock - 0.5
    })
    .map((facts) => {
      const count = barsLeft(facts)
      return {
        key: facts.id,
        words: `${facts.id}${count === null ? ', not counted' : `, ${count} bars left`}`,
        most: count,
        from: { bundle: facts.id },
      }
    })
}
