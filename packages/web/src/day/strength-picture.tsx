import { type ReactElement, useId } from 'react'
import { fixed } from '../look/index.ts'
import type { DayCurve } from './bed-day.ts'
import { useWidth } from './day-picture.tsx'
import type { DayWindow } from './day-window.ts'

export interface StrengthPictureProps {
  readonly curve: DayCurve
  readonly window: DayWindow
  readonly now: number
  readonly clock: (at: number) => string
}

const HEIGHT = 190
const BOX = { top: 34, bottom: 150, left: 44 } as const

/** Strength of one panel against time with its 90 % band and the wanted strength; for a phone's width. */
export function StrengthPicture({ curve, window, now, clock }: StrengthPictureProps): ReactElement {
  const [box, width] = useWidth()
  const id = useId()
  const right = Math.max(width - 12, BOX.left + 100)
  const [from, to] = [curve.points[0]?.at ?? window.from, curve.points.at(-1)?.at ?? window.to]
  const most =
    Math.max(curve.wanted ?? 0, ...curve.points.map((point) => point.high ?? point.strength), 1) * 1.05
  const x = (at: number): number => BOX.left + ((at - from) / (to - from)) * (right - BOX.left)
  const y = (strength: number): number => BOX.bottom - (Math.max(0, strength) / most) * (BOX.bottom - BOX.top)
  const at = (time: number, strength: number): string => `${x(time).toFixed(1)} ${y(strength).toFixed(1)}`
  const high = curve.points.map((point) => at(point.at, point.high ?? point.strength))
  const low = curve.points.map((point) => at(point.at, point.low ?? point.strength)).reverse()
  const metX = curve.met === null ? null : x(curve.met)
  const nowX = now > from && now < to ? x(now) : null
  const metRight = metX !== null && metX > (BOX.left + right) / 2
  const summary = `${curve.panel.mark}: ${
    curve.met === null
      ? 'the hour at which the low edge meets the wanted strength is not in this picture'
      : `low edge meets ${fixed(curve.wanted, 1)} MPa at ${clock(curve.met)}, by ${curve.temperature} temperature`
  }.`
  return (
    <figure className="strength-picture">
      <div ref={box}>
        {width === 0 ? null : (
          <svg width={width} height={HEIGHT} role="img" aria-labelledby={id}>
            <title id={id}>{summary}</title>
            <path className="day-band" d={`M${[...high, ...low].join('L')}Z`} />
            <line className="day-rule" x1={BOX.left} x2={right} y1={BOX.bottom} y2={BOX.bottom} />
            {curve.wanted === null ? null : (
              <>
                <line
                  className="day-wanted"
                  x1={BOX.left}
                  x2={right}
                  y1={y(curve.wanted)}
                  y2={y(curve.wanted)}
                />
                <text className="day-time" x={BOX.left - 6} y={y(curve.wanted) + 5} textAnchor="end">
                  {fixed(curve.wanted, 0)}
                </text>
              </>
            )}
            <text className="day-time" x={BOX.left - 6} y={BOX.bottom} textAnchor="end">
              0
            </text>
            <text className="day-time" x="0" y="16">
              MPa
            </text>
            <path
              className="day-curve"
              d={`M${curve.points.map((point) => at(point.at, point.strength)).join('L')}`}
            />
            {metX === null || curve.met === null ? null : (
              <>
                <line className="day-pennant-pole" x1={metX} x2={metX} y1={BOX.top - 10} y2={BOX.bottom} />
                <path className="day-pennant" d={`M${metX - 7} ${BOX.top - 12}h14l-7 10z`} />
                <text
                  className="day-label day-label-bold"
                  x={metRight ? metX - 12 : metX + 12}
                  y="16"
                  textAnchor={metRight ? 'end' : 'start'}
                >
                  {clock(curve.met)} low edge
                </text>
              </>
            )}
            {nowX === null ? null : (
              <line className="day-now" x1={nowX} x2={nowX} y1={BOX.top - 6} y2={BOX.bottom + 6} />
            )}
            <text className="day-time" x={BOX.left} y={HEIGHT - 16}>
              {clock(from)}
            </text>
            <text className="day-time" x={right} y={HEIGHT - 16} textAnchor="end">
              {clock(to)}
            </text>
            {nowX !== null && nowX > BOX.left + 90 && nowX < right - 90 ? (
              <text className="day-time day-label-bold" x={nowX} y={HEIGHT - 16} textAnchor="middle">
                now
              </text>
            ) : null}
          </svg>
        )}
      </div>
      <figcaption>{summary}</figcaption>
    </figure>
  )
}
