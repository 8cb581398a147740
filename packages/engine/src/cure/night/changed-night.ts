import { InputError } from '../../working/issue.ts'
import { coverPoints, type NightCase } from './night-case.ts'
import { powerPoints } from './under-bed.ts'

/** What a person tries on a screen; nothing of it is recorded. */
export interface NightChange {
  /** Hour from mixing at which the cover comes off. */
  readonly coverOff?: number
  /** Resistance of the cover, m²K/W; 0 for none. */
  readonly resistance?: number
  /** Heating of the bed from one hour from mixing to another, W/m². */
  readonly power?: { readonly watts: number; readonly from: number; readonly until: number }
}

/**
 * The same night with another cover, another hour of uncovering, or a heated bed.
 *
 * @throws InputError where a number is impossible, or a bed that is held at a temperature would be heated.
 */
export function changedNight(of: NightCase, change: NightChange): NightCase {
  const { coverOff, resistance, power } = change
  const { input, cover } = of
  refuse(of, change)
  const next: NightCase['cover'] = {
    cover:
      resistance === undefined
        ? cover.cover
        : { mark: cover.cover?.mark ?? 'cover', resistance: Math.max(0, resistance) },
    // A panel that lay bare is covered from the start of what is tried.
    on: cover.on ?? (resistance === undefined ? null : { hour: of.age, by: 'tried' }),
    off: coverOff === undefined ? cover.off : { hour: coverOff, by: 'tried' },
  }
  return {
    ...of,
    cover: next,
    input: {
      ...input,
      top: { ...input.top, covers: coverPoints(next) },
      bottom: power === undefined ? input.bottom : { ...input.bottom, gain: powerPoints(power, input.hours) },
    },
  }
}

function refuse(of: NightCase, { coverOff, resistance, power }: NightChange): void {
  const { input, cover } = of
  const on = cover.on?.hour ?? of.age
  const issues = [
    ...(coverOff !== undefined && !(coverOff > on)
      ? [{ path: 'coverOff', found: `${coverOff} h`, expected: `after ${on} h, when it is laid` }]
      : []),
    ...(resistance !== undefined && !(resistance >= 0 && resistance <= 100)
      ? [{ path: 'resistance', found: `${resistance}`, expected: '0 to 100 m²K/W' }]
      : []),
    ...(power !== undefined && !(power.watts >= 0 && power.watts <= 5000)
      ? [{ path: 'power.watts', found: `${power.watts}`, expected: '0 to 5000 W/m²' }]
      : []),
    ...(power !== undefined && !(power.from >= 0 && power.until > power.from)
      ? [
          {
            path: 'power.until',
            found: `${power.from} to ${power.until} h`,
            expected: 'an hour after the first',
          },
        ]
      : []),
    ...(power !== undefined && input.bottom.temperature !== undefined
      ? [{ path: 'power', found: 'a bed that is held at a temperature', expected: 'a bed with a film below' }]
      : []),
  ]
  if (issues.length > 0) throw new InputError(issues)
}
