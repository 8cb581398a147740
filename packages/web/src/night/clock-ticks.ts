import { wallOf } from '@castwright/engine/yard'

export interface ClockTick {
  /** Hours from mixing. */
  readonly hour: number
  readonly text: string
  /** Midnight in the yard: a day begins. */
  readonly midnight: boolean
}

const HOUR = 3_600_000

/** Full hours on the yard's clock between two hours from mixing, at most so many: every 3, 6, 12 or 24 h. */
export function clockTicks({
  mixed,
  from,
  to,
  zone,
  most,
}: {
  /** ms since 1970 */
  readonly mixed: number
  readonly from: number
  readonly to: number
  readonly zone: string
  readonly most: number
}): ClockTick[] {
  const ticks: ClockTick[] = []
  const first = Math.ceil((mixed + from * HOUR) / HOUR) * HOUR
  for (let at = first; at <= mixed + to * HOUR; at += HOUR) {
    const clock = Math.round((wallOf(at, zone) % (24 * HOUR)) / HOUR)
    if (clock % 3 !== 0) continue
    ticks.push({
      hour: (at - mixed) / HOUR,
      text: `${String(clock % 24).padStart(2, '0')}:00`,
      midnight: clock % 24 === 0,
    })
  }
  for (const every of [3, 6, 12, 24]) {
    const kept = ticks.filter(({ text }) => Number(text.slice(0, 2)) % every === 0)
    if (kept.length <= most || every === 24) return kept
  }
  return ticks
}

/** Heights of labels pushed apart so that none covers another: as near to where they belong as that allows, within a range. */
export function spread(wanted: readonly number[], gap: number, low: number, high: number): number[] {
  const order = wanted.map((y, at) => ({ y, at })).sort((a, b) => a.y - b.y)
  const placed: number[] = []
  for (const { y } of order) placed.push(Math.max(y, (placed.at(-1) ?? low - gap) + gap))
  let limit = high
  for (let i = placed.length - 1; i >= 0; i -= 1) {
    placed[i] = Math.min(placed[i] ?? 0, limit)
    limit = (placed[i] ?? 0) - gap
  }
  const found = new Array<number>(wanted.length)
  for (const [i, { at }] of order.entries()) found[at] = placed[i] ?? 0
  return found
}
