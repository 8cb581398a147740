import { counts, type Load } from '@castwright/engine/pour/loads'
import type { PanelFacts } from '@castwright/engine/steps'
import type { Flag } from './flags.ts'

/** Two dockets of one number are one load where they were batched so near to each other; a supplier counts from 1 again some day, ms. */
const ONE_DAY = 86_400_000

interface Held {
  readonly panel: string
  readonly load: Load
}

/** One load that is counted for several panels as if each had all of it: the sum of what went where is more than the truck held. */
export function docketFlags(panels: readonly PanelFacts[]): Flag[] {
  const held = new Map<string, Held[]>()
  for (const { job, mark, dockets } of panels)
    for (const load of dockets) {
      if (!counts(load)) continue
      const list = held.get(load.number)
      if (list) list.push({ panel: `${job}/${mark}`, load })
      else held.set(load.number, [{ panel: `${job}/${mark}`, load }])
    }
  return [...held].flatMap(([number, all]) => (all.length < 2 ? [] : flagOf(number, all)))
}

function flagOf(number: string, all: readonly Held[]): Flag[] {
  const times = all.flatMap(({ load }) => load.batched ?? load.arrived ?? []).map((at) => Date.parse(at))
  if (Math.max(...times) - Math.min(...times) > ONE_DAY) return []
  const whole = Math.max(...all.map(({ load }) => load.volume ?? 0))
  const sum = all.reduce((total, { load }) => total + (load.used ?? load.volume ?? 0), 0)
  if (sum <= whole + 1e-6) return []
  const first = [...all].sort((a, b) => (a.panel < b.panel ? -1 : 1))[0]
  return [
    {
      kind: 'conflict',
      panel: first?.panel ?? null,
      device: null,
      entries: all.flatMap(({ load }) => load.entries).sort(),
      text: `deliver: docket ${number} is counted for ${all
        .map(({ panel }) => panel)
        .sort()
        .join(' and ')} with more than it held; say at each how much of it went in.`,
    },
  ]
}
