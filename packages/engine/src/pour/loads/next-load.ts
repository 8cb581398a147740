import { jointMinutes } from '../load-times.ts'
import type { AirThen } from './air.ts'
import { counts, inOrder, type Load, volumeHere } from './load.ts'

/** Until when the next load must begin, so that the surface of the last one has not waited too long. */
export interface NextLoad {
  /** Load that ended last. */
  readonly after: Load
  /** When it ended, and until when the next must begin, UTC. */
  readonly ended: string
  readonly until: string
  readonly minutes: number
  readonly air: AirThen
  /** Concrete still to come, m³. */
  readonly short: number
}

/**
 * The next load of a pour that is not full yet: null where no load has ended, one is being discharged, the panel is full, or the air is not known (then `gap` says so).
 */
export function nextLoad({
  loads,
  net,
  air,
}: {
  readonly loads: readonly Load[]
  /** Concrete in the panel, m³. */
  readonly net: number
  readonly air: (at: string) => AirThen | null
}): { readonly next: NextLoad | null; readonly gap: string | null } {
  const counted = inOrder(loads).filter(counts)
  const sum = counted.reduce((all, load) => all + (volumeHere(load) ?? 0), 0)
  const short = net - sum
  const after = counted.filter(({ discharged }) => discharged !== undefined).at(-1)
  const running = counted.some(({ began, discharged }) => began !== undefined && discharged === undefined)
  if (after?.discharged === undefined || running) return { next: null, gap: null }
  const waiting = counted.some(({ discharged }) => discharged === undefined)
  if (short <= 1e-9 && !waiting) return { next: null, gap: null }
  const then = air(after.discharged)
  if (then === null) return { next: null, gap: 'air temperature: measured, logged or forecast' }
  const minutes = jointMinutes({ air: then.celsius, visible: true })
  const until = new Date(Date.parse(after.discharged) + minutes * 60_000).toISOString()
  return {
    next: { after, ended: after.discharged, until, minutes, air: then, short: Math.max(0, short) },
    gap: null,
  }
}
