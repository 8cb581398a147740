import { type ReactElement, useId } from 'react'
import { useWidth } from '../day/day-picture.tsx'
import { fixed } from '../look/index.ts'
import { ticksOf } from './ticks.ts'

export interface ChartLine {
  readonly name: string
  readonly look: 'main' | 'second' | 'third' | 'air'
  readonly points: readonly (readonly [x: number, y: number])[]
}

export interface ChartDot {
  readonly x: number
  readonly y: number
  readonly text: string
  /** A rule fired there: drawn as a filled square. */
  readonly signal?: boolean
}

export interface TimeChartProps {
  readonly title: string
  /** Unit of the values. */
  readonly unit: string
  readonly lines: readonly ChartLine[]
  /** Upper and lower edge, left to right. */
  readonly band?: readonly (readonly [x: number, low: number, high: number])[]
  readonly dots?: readonly ChartDot[]
  /** Level lines with their words. */
  readonly levels?: readonly { readonly y: number; readonly text: string }[]
  /** A time that matters: now, or when something is met. */
  readonly marks?: readonly { readonly x: number; readonly text: string; readonly look: 'now' | 'met' }[]
  readonly xText: (x: number) => string
  /** Least span of the values. */
  readonly from?: number
  /** px */
  readonly height?: number
  /** Places to mark between the ends; those too near to an end's words are left out. */
  readonly xTicks?: (from: number, to: number) => readonly { readonly x: number; readonly text: string }[]
}

const HEIGHT = 340
const TOP = 46
const LEFT = 58

/** Values against time, drawn to be read at arm's length: few ticks, heavy lines, words at their ends. */
export function TimeChart(props: TimeChartProps): ReactElement {
  const {
    title,
    unit,
    lines,
    band = [],
    dots = [],
    levels = [],
    marks = [],
    xText,
    from,
    height = HEIGHT,
    xTicks,
  } = props
  const bottom = height - 44
  const [box, width] = useWidth()
  const id = useId()
  const xs = [
    ...lines.flatMap(({ points }) => points.map(([x]) => x)),
    ...dots.map(({ x }) => x),
    ...marks.map(({ x }) => x),
  ]
  const ys = [
    ...lines.flatMap(({ points }) => points.map(([, y]) => y)),
    ...band.flatMap(([, low, high]) => [low, high]),
    ...dots.map(({ y }) => y),
    ...levels.map(({ y }) => y),
    ...(from === undefined ? [] : [from]),
  ].filter(Number.isFinite)
  const [x0, x1] = [Math.min(...xs), Math.max(...xs)]
  const ticks = ticksOf(Math.min(...ys), Math.max(...ys))
  const [y0, y1] = [ticks[0] ?? 0, ticks.at(-1) ?? 1]
  const right = Math.max(width - 16, LEFT + 120)
  const x = (value: number): number => LEFT + ((value - x0) / Math.max(x1 - x0, 1e-9)) * (right - LEFT)
  const y = (value: number): number => bottom - ((value - y0) / Math.max(y1 - y0, 1e-9)) * (bottom - TOP)
  const between = roomFor(xTicks?.(x0, x1) ?? [], x, { left: LEFT, right })
  // A value that is no number breaks the line.
  const path = (points: readonly (readonly [number, number])[]): string =>
    points
      .map(([px, py], at) => {
        if (!Number.isFinite(py)) return ''
        const on = at > 0 && Number.isFinite(points[at - 1]?.[1])
        return `${on ? 'L' : 'M'}${x(px).toFixed(1)} ${y(py).toFixed(1)}`
      })
      .join('')
  const edges = [
    ...band.map(([px, , high]) => [px, high] as const),
    ...[...band].reverse().map(([px, low]) => [px, low] as const),
  ]
  return (
    <figure className="time-chart">
      <div ref={box}>
        {width === 0 || xs.length === 0 ? null : (
          <svg width={width} height={height} role="img" aria-labelledby={id}>
            <title id={id}>{title}</title>
            <text className="time-chart-unit" x="4" y="22">
              {unit}
            </text>
            {ticks.map((tick) => (
              <g key={tick}>
                <line className="time-chart-rule" x1={LEFT} x2={right} y1={y(tick)} y2={y(tick)} />
                <text className="time-chart-tick" x={LEFT - 8} y={y(tick) + 6} textAnchor="end">
                  {fixed(tick, Number.isInteger(tick) ? 0 : 1)}
                </text>
              </g>
            ))}
            {between.map(({ x: at, text }) => (
              <g key={`${at} ${text}`}>
                <line className="time-chart-rule" x1={x(at)} x2={x(at)} y1={TOP} y2={bottom} />
                <text className="time-chart-tick" x={x(at)} y={bottom + 22} textAnchor="middle">
                  {text}
                </text>
              </g>
            ))}
            {edges.length > 2 ? <path className="time-chart-band" d={`${path(edges)}Z`} /> : null}
            {levels.map(({ y: at, text }) => (
              <line key={text} className="time-chart-level" x1={LEFT} x2={right} y1={y(at)} y2={y(at)} />
            ))}
            {lines.map(({ name, look, points }) => (
              <path key={name} className={`time-chart-line time-chart-${look}`} d={path(points)} />
            ))}
            {dots.map(({ x: px, y: py, text, signal }) =>
              signal ? (
                <rect
                  key={`${px} ${py} ${text}`}
                  className="time-chart-signal"
                  x={x(px) - 6}
                  y={y(py) - 6}
                  width="12"
                  height="12"
                >
                  <title>{text}</title>
                </rect>
              ) : (
                <circle
                  key={`${px} ${py} ${text}`}
                  className="time-chart-dot"
                  cx={x(px)}
                  cy={y(py)}
                  r={dots.length > 30 ? 4 : 6}
                >
                  <title>{text}</title>
                </circle>
              ),
            )}
            {levels.map(({ y: at, text }) => (
              <text key={text} className="time-chart-word" x={LEFT + 10} y={y(at) - 6}>
                {text}
              </text>
            ))}
            {marks.map(({ x: at, text, look }) => (
              <g key={text}>
                <line
                  className={`time-chart-mark time-chart-${look}`}
                  x1={x(at)}
                  x2={x(at)}
                  y1={TOP - 14}
                  y2={bottom}
                />
                <text
                  className="time-chart-word"
                  x={x(at)}
                  y={look === 'now' ? height - 8 : 26}
                  textAnchor={x(at) > (LEFT + right) / 2 ? 'end' : 'start'}
                >
                  {text}
                </text>
              </g>
            ))}
            <text className="time-chart-tick" x={LEFT} y={bottom + 22}>
              {xText(x0)}
            </text>
            <text className="time-chart-tick" x={right} y={bottom + 22} textAnchor="end">
              {xText(x1)}
            </text>
          </svg>
        )}
      </div>
      <figcaption>
        <ul className="time-chart-legend">
          {lines.map(({ name, look }) => (
            <li key={name}>
              <svg width="28" height="12" aria-hidden="true">
                <line className={`time-chart-line time-chart-${look}`} x1="0" x2="28" y1="6" y2="6" />
              </svg>{' '}
              {name}
            </li>
          ))}
          {dots.some(({ signal }) => !signal) ? (
            <li>
              <svg width="16" height="16" aria-hidden="true">
                <circle className="time-chart-dot" cx="8" cy="8" r="6" />
              </svg>{' '}
              results
            </li>
          ) : null}
          {dots.some(({ signal }) => signal) ? (
            <li>
              <svg width="16" height="16" aria-hidden="true">
                <rect className="time-chart-signal" x="2" y="2" width="12" height="12" />
              </svg>{' '}
              a rule fired
            </li>
          ) : null}
        </ul>
      </figcaption>
    </figure>
  )
}

/** Room that words at the ends take, and that words between them want, px. */
const END = 128
const APART = 58

/** Ticks that stand clear of the words at the ends and of one another. */
function roomFor<T extends { readonly x: number }>(
  ticks: readonly T[],
  x: (value: number) => number,
  { left, right }: { readonly left: number; readonly right: number },
): readonly T[] {
  const kept: T[] = []
  for (const tick of ticks) {
    const at = x(tick.x)
    const last = kept.at(-1)
    if (at < left + END || at > right - END) continue
    if (last === undefined || at - x(last.x) >= APART) kept.push(tick)
  }
  return kept
}
