import { type NightCase, type NightChange, nightCase } from '@castwright/engine/cure/night'
import type { Plan } from '@castwright/engine/plan'
import { type PanelFacts, stripHour } from '@castwright/engine/steps'
import type { Worked } from '@castwright/engine/working'
import type { YardState } from '@castwright/record'
import { useMemo, useRef, useSyncExternalStore } from 'react'
import { useNow, useRoom, useYardState } from './hooks.ts'
import type { NightState, Nights } from './nights.ts'

export interface PanelNight {
  /** What it is computed from; null where it is not known, and then `state` says why. */
  readonly of: NightCase | null
  readonly state: NightState
}

const QUARTER = 15 * 60_000
const COMPUTING: NightState = { status: 'computing' }

/** The computed night of a panel; computed anew only when record, weather or the quarter of an hour changed. */
export function useNight(facts: PanelFacts | null, plan: Plan | null): PanelNight {
  const list = useMemo(() => [{ facts, plan }], [facts, plan])
  return useNights(list)[0] ?? { of: null, state: COMPUTING }
}

/** The same of several panels, in their order. */
export function useNights(
  panels: readonly { readonly facts: PanelFacts | null; readonly plan: Plan | null }[],
): readonly PanelNight[] {
  const { nights } = useRoom()
  const version = useSyncExternalStore(nights.subscribe, nights.version)
  const state = useYardState()
  const quarter = Math.floor(useNow(60_000).getTime() / QUARTER) * QUARTER
  const cases = useMemo(
    () =>
      panels.map(({ facts, plan }) =>
        facts === null || plan === null ? null : caseOf({ facts, plan, state, now: quarter }),
      ),
    [panels, state, quarter],
  )
  const before = useRef<ReadonlyMap<string, NightState>>(new Map())
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new version means that answers came in
  return useMemo(() => {
    const seen = new Map<string, NightState>()
    const found = cases.map((of, at): PanelNight => {
      const facts = panels[at]?.facts
      const name = facts ? `${facts.job}/${facts.mark}` : ''
      const now = stateOf(of, nights)
      // While a changed night is computed the one before it stays on the screen.
      const shown = now.status === 'computing' ? (before.current.get(name) ?? now) : now
      if (shown.status === 'ready') seen.set(name, shown)
      return { of: of?.known ? of.value : null, state: shown }
    })
    before.current = seen
    return found
  }, [cases, panels, nights, version])
}

/** A night with something tried on it; null where nothing is tried. */
export function useTriedNight(of: NightCase | null, change: NightChange | null): NightState | null {
  const { nights } = useRoom()
  useSyncExternalStore(nights.subscribe, nights.version)
  return of === null || change === null ? null : nights.night(of, change)
}

function stateOf(of: Worked<NightCase> | null, nights: Nights): NightState {
  if (of === null) return COMPUTING
  return of.known ? nights.night(of.value) : { status: 'none', gaps: of.gaps }
}

function caseOf({
  facts,
  plan,
  state,
  now,
}: {
  readonly facts: PanelFacts
  readonly plan: Plan
  readonly state: YardState
  readonly now: number
}): Worked<NightCase> {
  const at = new Date(now).toISOString()
  const wanted = facts.cast === null ? null : stripHour({ plan, facts, yard: state.yard, now: at }).strength
  return nightCase({
    plan,
    facts,
    yard: state.yard,
    weather: state.weather,
    forecast: state.forecast,
    wanted,
    now: at,
  })
}
