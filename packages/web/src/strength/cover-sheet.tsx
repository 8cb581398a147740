import { type Cover, coverOfPours, HELD_OUT_FOUND, LEAST_COVER } from '@castwright/engine/cure'
import { concreteLogs, type PanelFacts } from '@castwright/engine/steps'
import type { Mix } from '@castwright/engine/yard'
import { type ReactElement, useMemo } from 'react'
import { fixed, Sheet, SourceLine } from '../look/index.ts'
import { useYardState } from '../record/index.ts'
import { resultsOf } from './strength-line.ts'
import type { StrengthWork } from './strength-work.ts'
import { useStrengthWork } from './use-strength-work.ts'

/** Pours that are looked at: the last ones. */
const MOST = 400

/** How often a 90 % band held what came: in this yard's own record, of the mix's own tests, and in the open data. */
export function CoverSheet({ mix }: { readonly mix: Mix }): ReactElement {
  const { panels, yard } = useYardState()
  const pours = useMemo(() => {
    const past = [...panels.values()]
      .filter(({ cast, specimens }) => cast?.mix === mix.mark && specimens.length > 0)
      .sort((a, b) => ((a.cast?.at ?? '') < (b.cast?.at ?? '') ? 1 : -1))
      .slice(0, MOST)
    return coverOfPours({ mix, pours: past.map((facts) => pastPour(facts, yard)) })
  }, [panels, yard, mix])
  const work = useMemo<StrengthWork | null>(
    () => ((mix.tests?.length ?? 0) >= LEAST_COVER ? { kind: 'cover', mix } : null),
    [mix],
  )
  const own = useStrengthWork(work)
  const { held, halfWidth, mixes, folds, deals, learnedAnew, source } = HELD_OUT_FOUND
  return (
    <Sheet
      title="How often such a band held"
      note="A 90 % band should hold nine results of ten. What it did hold is measured, each time without the result that it is held against."
    >
      <ul className="cover-list">
        <li>
          <CoverLine
            what={`Pours of ${mix.mark} in this record, along their own logs`}
            cover={pours}
            none="No pour of this mix has a log and a result yet."
          />
        </li>
        {work === null ? null : (
          <li>
            {own === null ? (
              <p role="status">Holding the mix’s own tests against its band …</p>
            ) : own.kind === 'cover' ? (
              <CoverLine
                what={`The ${mix.tests?.length} own tests of ${mix.mark}, each left out in turn`}
                cover={own.found}
                none="None of them is spanned by the others."
              />
            ) : (
              <p>Not known: {own.kind === 'fault' ? own.fault : 'no answer'}.</p>
            )}
          </li>
        )}
        <li>
          <p>
            <strong>{fixed(100 * held, 1)} %</strong> of the 28-day results of {mixes} mixes of the open data,
            told from tests up to 7 days and proportions, whole mixes held out ({deals} deals of {folds}{' '}
            folds); half-width {fixed(halfWidth, 1)} MPa. With the model learned anew without them{' '}
            {fixed(100 * learnedAnew.held[1], 1)} to {fixed(100 * learnedAnew.held[0], 1)} %.
          </p>
          <p className="field-note">
            Measured once, not computed here. <SourceLine source={source} />
          </p>
        </li>
      </ul>
    </Sheet>
  )
}

function pastPour(facts: PanelFacts, yard: Parameters<typeof resultsOf>[1]) {
  // The coldest channel speaks for the pour, as it does for the lift.
  const logs = [...concreteLogs(facts.temperatures)].sort((a, b) => mean(a.readings) - mean(b.readings))
  return { readings: logs[0]?.readings ?? [], cylinders: resultsOf(facts, yard).cylinders }
}

function mean(readings: readonly (readonly [number, number])[]): number {
  return readings.reduce((sum, [, celsius]) => sum + celsius, 0) / Math.max(1, readings.length)
}

function CoverLine({
  what,
  cover,
  none,
}: {
  readonly what: string
  readonly cover: Cover
  readonly none: string
}): ReactElement {
  const { count, held, below, halfWidth, from, to, left } = cover
  if (count === 0)
    return (
      <p>
        {what}: not known. {none}
      </p>
    )
  return (
    <>
      <p>
        <strong>
          {held} of {count}
        </strong>{' '}
        held: {what}. {below === 0 ? 'None' : below} under the low edge; half-width {fixed(halfWidth, 1)} MPa.
      </p>
      <p className="field-note">
        {from === null || to === null
          ? `Fewer than ${LEAST_COVER}: too few to say how often it holds.`
          : `In the long run between ${Math.floor(100 * from)} and ${Math.ceil(100 * to)} % (90 % interval).`}
        {left === 0 ? '' : ` ${left} more had no band to be held against.`}
      </p>
    </>
  )
}
