import { codeFamily } from '@castwright/engine/codes'
import { jobCutLists, type NotCut } from '@castwright/engine/steel'
import { stepIsDone } from '@castwright/engine/steps'
import { barsPromised, piecesTaken } from '@castwright/record'
import { type ReactElement, useMemo, useState } from 'react'
import { Caution, CheckField, Notice, NumberField, readNumber, SelectField, Sheet } from '../../look/index.ts'
import { usePlans, useYardState } from '../../record/index.ts'
import { SteelFrame } from '../steel-frame.tsx'
import { OneList } from './one-list.tsx'
import { RackSheet } from './rack-sheet.tsx'
import { ShearPlans } from './shear-plans.tsx'
import { stillToCut } from './still-to-cut.ts'
import { countedBars, lessPromised, nominal, rackOffcuts } from './what-is-there.ts'

/** Panels that are planned, and cut together, at most. */
const MOST = 60

/** Bars of panels that are still to be cut, from the yard's stock: one plan a diameter and grade. */
export function CutPage(): ReactElement {
  const { panels, yard, steel } = useYardState()
  const [which, setWhich] = useState('all')
  const [kerf, setKerf] = useState('0')
  const [keep, setKeep] = useState('1000')
  const [together, setTogether] = useState('1')
  const [ways, setWays] = useState('')
  const [there, setThere] = useState(true)
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
  const lost = above(kerf, 0)
  const worth = keep.trim() === '' ? null : above(keep, 1)
  const atOnce = above(together, 1)
  const mostWays = ways.trim() === '' ? null : above(ways, 1)
  const code = yard.yard?.code
  const counted = useMemo(
    () => (code === undefined ? [] : countedBars(steel, codeFamily(code).steel)),
    [steel, code],
  )
  const promised = useMemo(() => barsPromised(steel.plans), [steel.plans])
  const job = useMemo(() => {
    const taken = piecesTaken(steel)
    const rules = code === undefined ? null : codeFamily(code).steel
    const sized = <T extends { readonly diameter: number }>(bars: readonly T[]): T[] =>
      bars.map((bar) => (rules === null ? bar : nominal(bar, rules)))
    return jobCutLists({
      panels: plans.flatMap((state, index) => {
        const facts = chosen[index]
        if (state.status !== 'ready' || facts === undefined) return []
        const panel = `${facts.job}/${facts.mark}`
        return [{ panel, bars: stillToCut(sized(state.plan.steel.bars), taken.get(panel)) }]
      }),
      stock: sized(yard.yard?.stock ?? []),
      offcuts: there ? sized(lessPromised(rackOffcuts(steel), promised, true)) : [],
      counted: there ? sized(lessPromised(counted, promised, false)) : [],
      kerf: lost ?? 0,
      ...(worth === null ? {} : { keep: worth }),
      ...(atOnce === null || atOnce < 2 ? {} : { together: Math.floor(atOnce) }),
      ...(mostWays === null ? {} : { patterns: Math.floor(mostWays) }),
    })
  }, [plans, chosen, yard.yard, code, steel, counted, promised, there, lost, worth, atOnce, mostWays])
  const computing = plans.filter(({ status }) => status === 'computing').length
  const unplanned = plans.filter(({ status }) => status === 'none').length
  const ready =
    computing === 0 &&
    lost !== null &&
    atOnce !== null &&
    (worth !== null || keep.trim() === '') &&
    (mostWays !== null || ways.trim() === '')
  return (
    <SteelFrame page="Cut">
      <ShearPlans />
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
            fault={lost === null ? 'A number from 0.' : null}
          />
          <NumberField
            label="Offcut worth keeping"
            unit="mm"
            value={keep}
            onText={setKeep}
            note="From this length on it goes to the rack; empty: none is kept."
            fault={keep.trim() !== '' && worth === null ? 'A length from 1 mm, or empty.' : null}
          />
          <NumberField
            label="Bars that the shear takes at once"
            value={together}
            onText={setTogether}
            fault={atOnce === null ? 'A number from 1.' : null}
          />
          <NumberField
            label="Ways of cutting at most"
            value={ways}
            onText={setWays}
            note="Fewer ways are quicker at the stop and may take more bars; empty: no limit."
            fault={ways.trim() !== '' && mostWays === null ? 'A number from 1, or empty.' : null}
          />
        </div>
        <CheckField
          label={`From what is there by the record: ${counted.reduce((sum, { count }) => sum + count, 0)} bars of accepted bundles, ${steel.rack.reduce((sum, { count }) => sum + count, 0)} offcuts in the rack`}
          checked={there}
          onChange={(event) => setThere(event.currentTarget.checked)}
        />
        <p className="field-note">
          Bars that plans at the shear still need are left to them. Steel of which no accepted bundle has
          counted bars left is planned from the lengths that the yard stocks. Pieces at the shear or cut
          already are not planned again.
        </p>
        <p role="status">
          {computing > 0 ? `${computing} of ${chosen.length} panels: computing their bars …` : ''}
          {unplanned > 0 ? ` ${unplanned} panels have no plan and are left out.` : ''}
          {computing === 0 && open.length === 0 ? 'No panel waits for its bars.' : ''}
        </p>
      </Sheet>
      {!ready ? null : (
        <>
          {job.lists.map((each) => (
            <OneList key={JSON.stringify(each)} of={each} />
          ))}
          <Left notCut={job.notCut} />
          {job.lists.length === 0 && job.notCut.length === 0 && open.length > 0 ? (
            <Notice title="Nothing left to plan">Every bar of these panels is at the shear or cut.</Notice>
          ) : null}
        </>
      )}
      <RackSheet />
      <Caution
        order="Cut only accepted bundles."
        text="What is rolled on the bar decides, not the docket. A piece cut too short is never lapped out without the engineer."
      />
    </SteelFrame>
  )
}

function above(text: string, least: number): number | null {
  const value = readNumber(text)
  return value !== null && value >= least ? value : null
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
