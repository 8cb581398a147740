import type { BandedWindow, FinishNow } from '@castwright/engine/steps'
import { type ReactElement, useId } from 'react'
import { useWidth } from '../day/day-picture.tsx'
import { textWidth } from '../day/text-lanes.ts'

export interface FinishStripProps {
  readonly found: FinishNow
  /** Hours from mixing. */
  readonly now: number
  readonly clock: (hour: number) => string
}

const HEIGHT = 168
const BLOCKS = { top: 56, bottom: 104 } as const
const BAND = { top: 110, bottom: 122 } as const
const TICKS = 146
const SIDE = 14
const TYPE = 16

/** A short word for a block; the list below says the whole. */
const SHORT: Readonly<Record<string, string>> = { screed: 'screed', wait: 'wait', close: 'close' }

function shortOf({ id }: BandedWindow): string {
  return SHORT[id] ?? (id === 'pass:1' ? 'pan' : 'blades')
}

/** The windows of a surface in time: blocks with their numbers in the list, the sheen, initial set with its band, the line of now. */
export function FinishStrip({ found, now, clock }: FinishStripProps): ReactElement | null {
  const [box, width] = useWidth()
  const id = useId()
  const { windows, sheen, initialSet } = found
  const [first, last] = [windows[0], windows.at(-1)]
  if (first === undefined || last === undefined) return null
  const from = Math.min(first.from, 0.4)
  const to = Math.max(last.to, initialSet?.high ?? 0, now < last.to + 1.5 ? now : 0) + 0.1
  const right = Math.max(width - SIDE, SIDE + 120)
  const x = (hour: number): number => SIDE + ((hour - from) / (to - from)) * (right - SIDE)
  const nowX = now >= from && now <= to ? x(now) : null
  const sheenX = typeof sheen === 'number' && sheen >= from && sheen <= to ? x(sheen) : null
  const every = Math.max(1, Math.ceil((to - from) / Math.max(2, Math.floor((right - SIDE) / 74))))
  const ticks = wholeHours(from, to, every, clock)
  return (
    <div ref={box} className="finish-strip">
      {width === 0 ? null : (
        <svg width={width} height={HEIGHT} role="img" aria-labelledby={id}>
          <title id={id}>
            {`The finish in time: ${windows.map((window) => `${window.what} from ${clock(window.from)}`).join(', ')}, initial set ${clock(last.to)}. The list below says the same.`}
          </title>
          <defs>
            <pattern id={`${id}-wait`} width="9" height="9" patternUnits="userSpaceOnUse">
              <rect width="9" height="9" fill="var(--sheet)" />
              <path d="M0 9L9 0" stroke="var(--hair)" strokeWidth="2" />
            </pattern>
          </defs>
          {windows.map((window, at) => {
            const left = x(window.from)
            const wide = Math.max(2, x(window.to) - left)
            const word = `${at + 1} ${shortOf(window)}`
            const fits = textWidth(word, TYPE, true) <= wide - 8
            const now = nowX !== null && nowX >= left && nowX < left + wide
            return (
              <g key={window.id}>
                <rect
                  className={`finish-block finish-${window.id.startsWith('pass') ? 'pass' : window.id} ${now ? 'finish-here' : ''}`}
                  {...(window.id === 'wait' ? { fill: `url(#${id}-wait)` } : {})}
                  x={left}
                  y={BLOCKS.top}
                  width={wide}
                  height={BLOCKS.bottom - BLOCKS.top}
                />
                {wide < 14 ? null : (
                  <text
                    className={`finish-word ${window.id.startsWith('pass') ? 'finish-word-on' : ''}`}
                    x={left + wide / 2}
                    y={(BLOCKS.top + BLOCKS.bottom) / 2 + 6}
                    textAnchor="middle"
                  >
                    {fits ? word : at + 1}
                  </text>
                )}
              </g>
            )
          })}
          {initialSet === null ? null : (
            <>
              <rect
                className="finish-set-band"
                x={x(initialSet.low)}
                y={BAND.top}
                width={Math.max(3, x(initialSet.high) - x(initialSet.low))}
                height={BAND.bottom - BAND.top}
              />
              <line
                className="finish-set"
                x1={x(initialSet.hour)}
                x2={x(initialSet.hour)}
                y1={BLOCKS.bottom}
                y2={BAND.bottom}
              />
            </>
          )}
          {nowX === null ? null : (
            <>
              <line className="finish-now" x1={nowX} x2={nowX} y1="22" y2={BAND.bottom + 4} />
              <Anchored
                className="finish-note finish-note-now"
                x={nowX}
                y={17}
                text={`now ${clock(now)}`}
                right={right}
              />
            </>
          )}
          {sheenX === null ? null : (
            <>
              <path className="finish-drop" d={`M${sheenX} ${BLOCKS.top - 3}l-6 -10h12z`} />
              <Anchored
                className="finish-note"
                x={sheenX}
                y={BLOCKS.top - 18}
                text={`sheen gone ${clock(sheen as number)}`}
                right={right}
              />
            </>
          )}
          {ticks.map(([hour, text]) => (
            <text key={text} className="finish-tick" x={x(hour)} y={TICKS} textAnchor="middle">
              {text}
            </text>
          ))}
        </svg>
      )}
      <p className="finish-key">
        <svg width="26" height="12" aria-hidden="true">
          <rect className="finish-set-band" width="26" height="12" />
        </svg>{' '}
        {initialSet === null
          ? 'initial set not known'
          : `initial set, ${clock(initialSet.low)} to ${clock(initialSet.high)}`}
      </p>
    </div>
  )
}

function Anchored({
  x,
  y,
  text,
  right,
  className,
}: {
  readonly x: number
  readonly y: number
  readonly text: string
  readonly right: number
  readonly className: string
}): ReactElement {
  const half = textWidth(text, TYPE, true) / 2
  const at = Math.min(Math.max(x, SIDE + half - 8), right - half + 8)
  return (
    <text className={className} x={at} y={y} textAnchor="middle">
      {text}
    </text>
  )
}

/** Whole hours of the wall between two hours from mixing, with their words; found by the minutes of the clock itself. */
function wholeHours(
  from: number,
  to: number,
  every: number,
  clock: (hour: number) => string,
): readonly (readonly [hour: number, text: string])[] {
  const past = Number(clock(0).slice(-2)) / 60
  const ticks: [number, string][] = []
  // Half a word's width stays free at either end.
  const rim = (to - from) * 0.06
  for (let hour = Math.ceil(from + rim + past) - past; hour <= to - rim; hour += every)
    ticks.push([hour, clock(hour)])
  return ticks
}
