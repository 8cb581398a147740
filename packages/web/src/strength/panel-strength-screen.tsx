import './strength.css'
import type { Plan } from '@castwright/engine/plan'
import { faultsOfLog, type PanelFacts } from '@castwright/engine/steps'
import type { Mix } from '@castwright/engine/yard'
import { Link, useParams } from '@tanstack/react-router'
import { type ReactElement, useMemo } from 'react'
import { fixed, Notice, Sheet, useTitle } from '../look/index.ts'
import { NightPart } from '../night/night-part.tsx'
import { whenText } from '../panel/when.ts'
import { type PanelNight, useNight, useNow, usePanel, usePlan, useYardState } from '../record/index.ts'
import { ChanceSheet } from './chance-sheet.tsx'
import { CoverSheet } from './cover-sheet.tsx'
import { hourTicks } from './hour-ticks.ts'
import { RestsOn } from './rests-on.tsx'
import { StrengthFrame } from './strength-frame.tsx'
import { type StrengthInput, type StrengthLine, strengthLine } from './strength-line.ts'
import { metText } from './strength-screen.tsx'
import type { StrengthWork } from './strength-work.ts'
import { type ChartLine, TimeChart, type TimeChartProps } from './time-chart.tsx'
import { useStrengthWork } from './use-strength-work.ts'

const HOUR = 3_600_000
const LOOKS = ['main', 'second', 'third'] as const

/** One panel's night: strength with its band and results, and the temperatures that it stands on. */
export function PanelStrengthScreen(): ReactElement {
  const { job, mark } = useParams({ from: '/rooms/strength/$job/$mark' })
  useTitle(`Strength of ${mark}`)
  const facts = usePanel(job, mark)
  const plan = usePlan(job, mark)
  return (
    <StrengthFrame page={null}>
      <h2>
        {mark}, {job}
      </h2>
      {facts === null || facts.cast === null ? (
        <Notice kind="unknown" title="Not cast yet">
          {facts === null ? 'The record has no such panel.' : 'Its strength is followed from the pour on.'}
        </Notice>
      ) : plan.status === 'ready' ? (
        <Night key={`${job}/${mark}`} facts={facts} plan={plan.plan} />
      ) : (
        <p role="status">{plan.status === 'none' ? 'No plan: nothing can be computed.' : 'Computing …'}</p>
      )}
    </StrengthFrame>
  )
}

function Night({ facts, plan }: { readonly facts: PanelFacts; readonly plan: Plan }): ReactElement | null {
  const { yard, weather } = useYardState()
  const now = useNow(60_000)
  const night = useNight(facts, plan)
  const asked = useMemo<StrengthInput>(
    () => ({
      facts,
      plan: { cure: plan.cure, lift: plan.lift, pour: plan.pour },
      yard,
      now: now.getTime(),
    }),
    [facts, plan, yard, now],
  )
  const alone = useMemo(() => strengthLine(asked), [asked])
  const mix = yard.yard?.mixes?.find(({ mark }) => mark === facts.cast?.mix)
  const open = useOpenLine(asked, mix)
  const line = open.line ?? alone
  if (line === null || facts.cast === null) return null
  const mixed = Date.parse(facts.cast.at)
  const zone = yard.yard?.timezone ?? 'UTC'
  const when = (hour: number): string => whenText(new Date(mixed + hour * HOUR).toISOString(), zone, now)
  const ticks = (from: number, to: number) => hourTicks(mixed, zone, from, to)
  const air = weather
    .map((reading) => [(Date.parse(reading.at) - mixed) / HOUR, reading.air] as const)
    .filter(
      (reading): reading is readonly [number, number] =>
        reading[1] !== null && reading[0] >= 0 && reading[0] <= line.age,
    )
  return (
    <>
      <dl className="strength-facts">
        <Fact word="Age" value={`${fixed(line.age, 1)} h`} />
        <Fact
          word={line.now?.low == null ? 'Expected now' : 'Low edge now'}
          value={line.now === null ? 'not known' : `${fixed(line.now.low ?? line.now.strength, 1)} MPa`}
        />
        <Fact word="Wanted" value={line.wanted === null ? 'not known' : `${fixed(line.wanted, 1)} MPa`} />
        <Fact word="First lift at the earliest" value={metText(line, zone, now)} />
      </dl>
      <Sheet
        title="Strength"
        note={`Expected strength and its 90 % band, along ${line.cure.temperature === 'logged' ? 'this pour’s own temperatures' : 'the planned temperature, since nothing is logged'}. An estimate for this mix: the hold waits for results.`}
      >
        <StrengthChart facts={facts} line={line} night={night} when={when} ticks={ticks} />
        {open.words.map((word) => (
          <p key={word}>{word}</p>
        ))}
        {[...new Set([...line.cure.unknown, ...line.first.open])].map((gap) => (
          <p key={gap}>Not known: {gap}</p>
        ))}
        <RestsOn facts={facts} line={line} when={when} />
        <p className="field-note">
          The earliest first lift goes by the mix’s own curve, lowered by results and never raised: the hold
          does the same, and waits for results of this pour.
        </p>
      </Sheet>
      <ChanceSheet facts={facts} line={line} when={when} ticks={ticks} />
      <NightPart facts={facts} night={night} />
      <Sheet
        title="Temperatures"
        note="Hours as logged in this pour; air as the weather log of the yard has it."
      >
        {facts.temperatures.length === 0 ? (
          <p>
            No log yet. Bring one in on the{' '}
            <Link
              to="/panel/$job/$mark"
              params={{ job: facts.job, mark: facts.mark }}
              search={{ step: 'cure' }}
            >
              cure card
            </Link>
            .
          </p>
        ) : (
          <TimeChart
            title={`Temperatures of ${facts.mark}`}
            unit="°C"
            lines={[
              ...facts.temperatures.map(
                ({ channel, readings }, at): ChartLine => ({
                  name: channel,
                  look: /air/i.test(channel) ? 'air' : (LOOKS[at % LOOKS.length] ?? 'main'),
                  points: readings,
                }),
              ),
              ...(air.length > 1
                ? [{ name: 'air, by the weather log', look: 'air' as const, points: air }]
                : []),
            ]}
            xText={when}
            xTicks={ticks}
          />
        )}
      </Sheet>
      <LogFaults facts={facts} when={when} />
      <Results facts={facts} />
      {mix === undefined ? null : <CoverSheet key={mix.mark} mix={mix} />}
    </>
  )
}

/** For a mix that has neither curve nor tests: the line by open tests of mixes like it, found in a worker. */
function useOpenLine(
  line: StrengthInput,
  mix: Mix | undefined,
): { readonly line: StrengthLine | null; readonly words: readonly string[] } {
  const bare =
    mix !== undefined && mix.curve === undefined && (mix.tests?.length ?? 0) === 0 ? mix : undefined
  const work = useMemo<StrengthWork | null>(
    () => (bare?.proportions === undefined ? null : { kind: 'open', line, mix: bare }),
    [line, bare],
  )
  const answer = useStrengthWork(work)
  if (bare === undefined) return { line: null, words: [] }
  if (work === null)
    return {
      line: null,
      words: [
        `Mix ${bare.mark} has neither curve nor tests. With its proportions in the yard’s file open tests of like mixes stand in.`,
      ],
    }
  if (answer === null) return { line: null, words: ['Asking the open tests …'] }
  if (answer.kind !== 'open') return { line: null, words: answer.kind === 'fault' ? [answer.fault] : [] }
  const { found } = answer
  return {
    line: found.line,
    words: found.far
      ? [...found.warnings, 'The open tests say nothing of such a mix.']
      : [
          `Mix ${bare.mark} has neither curve nor tests: the curve is what open tests of mixes like it let expect, from one day on. It times no lift.`,
          ...found.warnings,
        ],
  }
}

/** What a person must look at in the logs of this pour; nothing of it is mended. */
function LogFaults({
  facts,
  when,
}: {
  readonly facts: PanelFacts
  readonly when: (hour: number) => string
}): ReactElement | null {
  const faults = useMemo(
    () =>
      facts.temperatures.flatMap((log) =>
        faultsOfLog(log, facts.temperatures).map((fault) => ({ log, fault })),
      ),
    [facts.temperatures],
  )
  if (faults.length === 0) return null
  return (
    <Sheet
      title={
        faults.length === 1
          ? 'One thing to look at in the log'
          : `${faults.length} things to look at in the logs`
      }
      note="Found, shown and left as they were read: strength is computed along them. If they are wrong, so is it."
    >
      <ul className="plain-list">
        {faults.slice(0, 40).map(({ log, fault }) => (
          <li key={`${log.entry} ${fault.kind} ${fault.hours.join()}`}>
            <strong>{log.channel}</strong>, {when(fault.hours[0])}: {fault.text}
          </li>
        ))}
      </ul>
    </Sheet>
  )
}

function Fact({ word, value }: { readonly word: string; readonly value: string }): ReactElement {
  return (
    <div>
      <dt>{word}</dt>
      <dd>{value}</dd>
    </div>
  )
}

function StrengthChart({
  facts,
  line,
  night,
  when,
  ticks,
}: {
  readonly facts: PanelFacts
  readonly line: StrengthLine
  readonly night: PanelNight
  readonly when: (hour: number) => string
  readonly ticks: NonNullable<TimeChartProps['xTicks']>
}): ReactElement {
  const met = line.met === null || facts.cast === null ? null : (line.met - Date.parse(facts.cast.at)) / HOUR
  const until = Math.max(24, line.age + 6, (met ?? 0) * 1.2)
  const curve = line.cure.curve.filter(([hour]) => hour <= until)
  if (curve.length < 2) return <p>No curve: {line.cure.unknown[0] ?? 'the mix has none'}.</p>
  return (
    <TimeChart
      title={`Strength of ${facts.mark} from mixing on`}
      unit="MPa"
      from={0}
      lines={[
        { name: 'expected', look: 'main', points: curve.map(([hour, strength]) => [hour, strength]) },
        ...nightLine(night, line, until),
      ]}
      band={curve.flatMap(([hour, , low, high]) =>
        low === null || high === null ? [] : [[hour, low, high] as const],
      )}
      dots={facts.specimens.map(({ specimen, age, strength }) => ({
        x: age,
        y: strength,
        text: `${specimen}: ${strength} MPa at ${fixed(age, 1)} h`,
      }))}
      levels={line.wanted === null ? [] : [{ y: line.wanted, text: `${fixed(line.wanted, 1)} MPa wanted` }]}
      marks={[
        ...(line.age < until ? [{ x: line.age, text: 'now', look: 'now' as const }] : []),
        ...(met !== null && met < until
          ? [{ x: met, text: `${when(met)} first lift`, look: 'met' as const }]
          : []),
      ]}
      xText={when}
      xTicks={ticks}
    />
  )
}

/** Expected strength by the computed night: from the last logged hour on where there is a log. */
function nightLine({ state }: PanelNight, { cure }: StrengthLine, until: number): readonly ChartLine[] {
  if (state.status !== 'ready') return []
  const from = cure.loggedTo ?? 0
  const points = state.night.strength.curve
    .filter(([hour]) => hour >= from && hour <= until)
    .map(([hour, strength]) => [hour, strength] as const)
  return points.length < 2 ? [] : [{ name: 'by the computed night', look: 'second', points }]
}

function Results({ facts }: { readonly facts: PanelFacts }): ReactElement {
  return (
    <Sheet title="Results of this pour">
      {facts.specimens.length === 0 ? (
        <p>None yet. Cylinders, cubes and probes are entered on the cure card.</p>
      ) : (
        <ul className="plain-list">
          {facts.specimens.map(({ entry, specimen, kind, age, strength, cured, by }) => (
            <li key={entry}>
              <strong>{fixed(strength, 1)} MPa</strong>, {kind} {specimen}, {fixed(age, 1)} h,{' '}
              {curedText(kind, cured)}, by {by.name}
            </li>
          ))}
        </ul>
      )}
    </Sheet>
  )
}

function curedText(kind: string, cured: 'panel' | 'standard' | undefined): string {
  if (kind === 'probe') return 'in the panel'
  if (cured === undefined) return 'cured with the panel (assumed)'
  return cured === 'panel' ? 'cured with the panel' : 'cured by the standard'
}
