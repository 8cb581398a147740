import type { BandedWindow, FinishNow } from '@castwright/engine/steps'
import { fixed } from '../look/index.ts'

/** A shift smaller than this is said to be none, minutes. */
const SMALL = 5

/** `40 min`, `1 h 28 min`. */
export function minutesText(minutes: number): string {
  const whole = Math.abs(Math.round(minutes))
  const [hours, rest] = [Math.floor(whole / 60), whole % 60]
  return hours === 0 ? `${rest} min` : rest === 0 ? `${hours} h` : `${hours} h ${rest} min`
}

/** How the window stands to the planned one, and why, in one sentence. `clock` turns hours from mixing into a time. */
export function shiftText(found: FinishNow, clock: (hour: number) => string): string {
  const { shift, shiftBySign, basis, celsius, reference, sign, sheen, finish } = found
  if (finish === null) return 'No window: not known.'
  if (found.windows.length === 0) return 'Planned: no readings yet.'
  if (shift === null) return 'By readings; nothing was planned to hold it against.'
  if (basis === 'plan') return 'Planned: nothing is measured yet, and no air is on record.'
  const bySign = shiftBySign ?? 0
  const reasons: string[] = []
  if (celsius !== null && reference !== null && Math.abs(celsius - reference) >= 1)
    reasons.push(
      `the concrete is ${fixed(celsius, 0)} °C${basis === 'air' ? ' as the air, not measured' : ''} (planned ${fixed(reference, 0)} °C)`,
    )
  if (typeof sheen === 'number' && Math.abs(sheen - finish.opens) < 0.02)
    reasons.push(`the sheen ${found.sheenSeen ? 'went' : 'goes'} only at ${clock(sheen)}`)
  const because = reasons.length === 0 ? '' : ` because ${reasons.join(' and ')}`
  const head =
    Math.abs(shift) < SMALL
      ? 'As planned, within 5 min.'
      : `Shifted ${minutesText(shift)} ${shift > 0 ? 'later' : 'earlier'} than planned${because}.`
  const wet =
    sheen === 'stays'
      ? ' The sheen is not expected to go by itself: draw the water off before the pan.'
      : typeof sheen === 'number' && sheen > finish.opens + 0.02
        ? ` The sheen is expected to stay until ${clock(sheen)}: draw the water off before the pan.`
        : ''
  if (sign === null) return `${head}${wet}`
  const what = sign.what === 'boot print' ? `boot print of ${sign.value} mm` : `${sign.value} MPa`
  const says =
    Math.abs(bySign) < SMALL
      ? 'agrees with the computed time'
      : `counts before the computed time: it sets ${minutesText(bySign)} ${bySign > 0 ? 'later' : 'earlier'}`
  return `${head}${wet} The ${what} seen at ${clock(sign.hour)} ${says}.`
}

/** What the times rest on, and the reading that they go on from. */
export function basisText({ basis, windows, reading }: FinishNow, clock: (hour: number) => string): string {
  if (windows.length === 0 || basis === 'plan') return 'planned'
  if (basis === 'air' || reading === null) return 'by the air: the concrete is not measured'
  return `by readings, the last ${fixed(reading.celsius, 1)} °C ${READ_WHERE[reading.from]} at ${clock(reading.hour)}`
}

const READ_WHERE: Readonly<Record<NonNullable<FinishNow['reading']>['from'], string>> = {
  truck: 'at the truck',
  log: 'in the log',
  surface: 'on the surface',
  air: 'of the air',
  plan: 'of the plan',
}

/** The window that an hour falls in; null before the first and after the last. */
export function windowAt(windows: readonly BandedWindow[], hour: number): BandedWindow | null {
  return windows.find(({ from, to }) => hour >= from && hour < to) ?? null
}

/** Drying against the line, with the scatter of the formulas and no more figures than it deserves. */
export function dryingText(drying: NonNullable<FinishNow['drying']>): string {
  const { rate, low, high, limit, against } = drying
  if (rate <= 0) return 'Nothing dries: water condenses on the surface. Do not work it in.'
  const span = `${rough(Math.max(0, low))} to ${rough(high)}`
  const line = `line of this mix, ${limit < 0.5 ? fixed(limit, 2) : fixed(limit, 1)}`
  if (against === 'under') return `From ${span} kg/m²/h: under the ${line}.`
  if (against === 'over') return `From ${span} kg/m²/h: over the ${line}. Act now.`
  return `From ${span} kg/m²/h: the ${line} lies inside that. Take care of it.`
}

/** One decimal above a tenth, else `under 0.1`: the formulas know no more. */
export function rough(value: number): string {
  return value < 0.1 ? 'under 0.1' : fixed(value, 1)
}
