import { settingRate } from '../setting.ts'
import type { SetShare } from './set-share.ts'
import { FLOAT_OPENS, FLOAT_OPENS_LATEST } from './signs.ts'

export type FinishWindowId = 'screed' | 'wait' | `pass:${number}` | 'close'

/** One piece of work on the surface; hours from mixing. */
export interface FinishWindow {
  readonly id: FinishWindowId
  readonly from: number
  readonly to: number
  /** What to do, and the sign to look for. */
  readonly what: string
  readonly sign: string
}

/** Hour at which the sheen goes; that it stays until the window shuts; or that nobody can say. */
export type Sheen = number | 'stays' | 'not known'

export interface WindowsInput {
  readonly set: SetShare
  /** When the concrete lay in the mould, hours from mixing. */
  readonly placed: number
  readonly sheen: Sheen
  readonly passes: number
  /** Initial set at the reference, h; °C; J/mol. */
  readonly initial: number
  readonly reference: number
  readonly activation: number
}

/** Between two passes, and for screed and bull float, h at 20 °C: 20 to 40 min is usual. */
export const PASS_HOURS = 0.5
const AT_TWENTY = 20

/**
 * Windows of a surface in order of time, none before the one ahead of it; null where the temperatures end before initial set.
 *
 * Floating opens when the sheen is gone, not before 0.55 and not after 0.65 of the way to initial set; the passes follow each
 * other by 30 min at 20 °C, scaled with the speed of setting, closer where they would not fit before initial set, which shuts it.
 */
export function finishWindows(input: WindowsInput): readonly FinishWindow[] | null {
  const { set, placed, sheen, passes, initial, reference, activation } = input
  const [earliest, latest, closes] = [set.hourOf(FLOAT_OPENS), set.hourOf(FLOAT_OPENS_LATEST), set.hourOf(1)]
  if (earliest === null || latest === null || closes === null) return null
  const gone = sheen === 'stays' ? latest : sheen === 'not known' ? earliest : sheen
  // More water than dries off: at 0.65 it is drawn off, since the concrete under it does not wait.
  const wet = sheen === 'stays' || gone > latest
  const opens = Math.max(placed, Math.min(latest, Math.max(earliest, gone)))
  const shut = Math.max(closes, opens)
  const begun = Math.min(1, set.shareAt(opens))
  const turn = (PASS_HOURS * settingRate(AT_TWENTY, reference, activation)) / initial
  const step = Math.min(turn, (1 - begun) / passes)
  const hour = (share: number): number =>
    Math.min(shut, Math.max(opens, set.hourOf(Math.min(1, share)) ?? shut))
  const screeded = set.hourOf(set.shareAt(placed) + turn) ?? opens
  const windows: FinishWindow[] = [
    {
      id: 'screed',
      from: placed,
      to: Math.min(opens, Math.max(placed, screeded)),
      what: 'Screed and bull float',
      sign: 'At once, before bleed water shows.',
    },
  ]
  windows.push({
    id: 'wait',
    from: windows[0]?.to ?? placed,
    to: opens,
    what: 'Wait',
    sign: wet
      ? 'The sheen is not expected to go by itself: draw the water off, never work it in.'
      : 'Leave it alone until the sheen is gone.',
  })
  for (let pass = 0; pass < passes; pass += 1)
    windows.push({
      id: `pass:${pass + 1}`,
      from: pass === 0 ? opens : hour(begun + pass * step),
      to: hour(begun + (pass + 1) * step),
      what: pass === 0 ? 'Power float, pan' : `Power float, blades, pass ${pass + 1}`,
      sign:
        pass === 0
          ? 'No sheen, boot print 6 mm or less.'
          : pass + 1 === passes
            ? 'Boot print hardly seen, 1 mm or less; the hand leaves no paste.'
            : 'Boot print about 3 mm.',
    })
  windows.push({
    id: 'close',
    from: windows.at(-1)?.to ?? opens,
    to: shut,
    what: 'Last touches, then the cover',
    sign: 'A heel that leaves no mark: too late to float.',
  })
  return windows
}
