import type { NightNow } from '@castwright/engine/cure/night'
import { type ReactElement, useId } from 'react'
import { useWidth } from '../day/day-picture.tsx'
import { fixed } from '../look/index.ts'
import { ticksOf } from '../strength/ticks.ts'
import { clockTicks, spread } from './clock-ticks.ts'
import { type HourText, nightSentence } from './night-words.ts'

type Points = readonly (readonly [hour: number, celsius: number])[]

export interface NightChartProps {
  readonly mark: string
  readonly night: NightNow
  /** As recorded and planned, where the night on show is one that is tried. */
  readonly before?: NightNow | null
  readonly logs: readonly { readonly channel: string; readonly readings: Points }[]
  /** ms since 1970 */
  readonly mixed: number
  /** Hours from mixing to now. */
  readonly age: number
  readonly zone: string
  readonly when: HourText
}

const HEIGHT = 380
const TOP = 40
const BOTTOM = HEIGHT - 92
const LEFT = 44
const NAMES = 76
/** Most clock times under the chart for each 100 px. */
const PER_100 = 1.8

interface Line {
  readonly name: string
  readonly look: 'core' | 'face' | 'under' | 'air' | 'before'
  readonly points: Points
}

/** Core, faces and air of a night, straight where the weather was logged and dashed from where it is forecast. */
export function NightChart(props: NightChartProps): ReactElement {
  const { mark, night, before = null, logs, mixed, age, zone, when } = props
  const [box, width] = useWidth()
  const id = useId()
  const { hours, forecastFrom, cover } = night
  const lines = linesOf(night, before)
  const levels = levelsOf(night)
  const dots = logs.flatMap(({ readings }) => readings.filter(([hour]) => hour <= hours))
  const values = [...lines.flatMap(({ points }) => points), ...dots].map(([, celsius]) => celsius)
  // A limit far above the night is not drawn: it would press the night flat.
  const [least, most] = [Math.min(...values), Math.max(...values)]
  const near = levels.filter(({ celsius }) => celsius < most + 12 && celsius > least - 12)
  const all = [...values, ...near.map(({ celsius }) => celsius)]
  const ticks = ticksOf(Math.min(...all), Math.max(...all))
  const [y0, y1] = [ticks[0] ?? 0, ticks.at(-1) ?? 1]
  const right = Math.max(width - NAMES, LEFT + 160)
  const x = (hour: number): number => LEFT + (Math.min(Math.max(hour, 0), hours) / hours) * (right - LEFT)
  const y = (celsius: number): number => BOTTOM - ((celsius - y0) / Math.max(y1 - y0, 1e-9)) * (BOTTOM - TOP)
  const names = spread(
    lines.map(({ points }) => y(points.at(-1)?.[1] ?? 0)),
    18,
    TOP,
    BOTTOM,
  )
  const fore = forecastFrom === null ? null : Math.min(forecastFrom, hours)
  const clocks = clockTicks({ mixed, from: 0, to: hours, zone, most: (PER_100 * (right - LEFT)) / 100 })
  const nowX = age > 0 && age < hours ? x(age) : null
  return (
    <figure className="night-chart">
      <div ref={box}>
        {width === 0 ? null : (
          <svg width={width} height={HEIGHT} role="img" aria-labelledby={id}>
            <title
              id={id}
            >{`Temperatures of ${mark} through the night. ${nightSentence(night, when, age)}`}</title>
            {fore === null ? null : (
              <>
                <rect
                  className="night-forecast"
                  x={x(fore)}
                  y={TOP}
                  width={right - x(fore)}
                  height={BOTTOM - TOP}
                />
                <text className="night-word" x={Math.min(x(fore) + 6, right - 66)} y={TOP - 8}>
                  forecast
                </text>
              </>
            )}
            <text className="night-tick" x="2" y={TOP - 8}>
              °C
            </text>
            {ticks.map((tick) => (
              <g key={tick}>
                <line className="night-rule" x1={LEFT} x2={right} y1={y(tick)} y2={y(tick)} />
                <text className="night-tick" x={LEFT - 6} y={y(tick) + 5} textAnchor="end">
                  {fixed(tick, Number.isInteger(tick) ? 0 : 1)}
                </text>
              </g>
            ))}
            {near.map(({ celsius, text }) => (
              <g key={text}>
                <line className="night-level" x1={LEFT} x2={right} y1={y(celsius)} y2={y(celsius)} />
                <text className="night-word" x={LEFT + 6} y={y(celsius) - 5}>
                  {text}
                </text>
              </g>
            ))}
            {clocks.map(({ hour, text, midnight }) => (
              <g key={hour}>
                <line
                  className={midnight ? 'night-midnight' : 'night-rule'}
                  x1={x(hour)}
                  x2={x(hour)}
                  y1={BOTTOM}
                  y2={BOTTOM + 6}
                />
                <text className="night-tick" x={x(hour)} y={BOTTOM + 24} textAnchor="middle">
                  {text}
                </text>
              </g>
            ))}
            {lines.map(({ name, look, points }) =>
              parts(points, fore).map(({ dashed, d }) => (
                <path
                  key={`${name} ${dashed}`}
                  className={`night-line night-${look}${dashed ? ' night-dashed' : ''}`}
                  d={d
                    .map(([h, c], at) => `${at === 0 ? 'M' : 'L'}${x(h).toFixed(1)} ${y(c).toFixed(1)}`)
                    .join('')}
                />
              )),
            )}
            {dots.map(([hour, celsius]) => (
              <circle
                key={`${hour} ${celsius}`}
                className="night-dot"
                cx={x(hour)}
                cy={y(celsius)}
                r={dots.length > 60 ? 2.5 : 4}
              />
            ))}
            {lines.map(({ name, look }, at) => (
              <text
                key={name}
                className={`night-name night-name-${look}`}
                x={right + 6}
                y={(names[at] ?? 0) + 5}
              >
                {name}
              </text>
            ))}
            {nowX === null ? null : (
              <>
                <line className="night-now" x1={nowX} x2={nowX} y1={TOP - 4} y2={BOTTOM + 34} />
                <text
                  className="night-word"
                  x={nowX + (nowX > right - 60 ? -5 : 5)}
                  y={BOTTOM - 6}
                  textAnchor={nowX > right - 60 ? 'end' : 'start'}
                >
                  now
                </text>
              </>
            )}
            <CoverBar cover={cover} hours={hours} x={x} when={when} left={LEFT} />
          </svg>
        )}
      </div>
      <figcaption>
        <Legend
          night={night}
          dots={dots.length > 0}
          tried={before !== null}
          far={levels.length > near.length ? levels.filter((level) => !near.includes(level)) : []}
        />
      </figcaption>
    </figure>
  )
}

function linesOf({ curves, air }: NightNow, before: NightNow | null): Line[] {
  const line = (column: 'core' | 'top' | 'bottom'): Points =>
    curves.times.map((time, at) => [time, curves[column][at] ?? Number.NaN] as const)
  const end = curves.times.at(-1) ?? 0
  const was: Line[] =
    before === null
      ? []
      : [
          {
            name: 'as is',
            look: 'before',
            points: before.curves.times.map((time, at) => [time, before.curves.coldest[at] ?? 0] as const),
          },
        ]
  return [
    { name: 'air', look: 'air', points: within(air, end) },
    { name: 'bottom', look: 'under', points: line('bottom') },
    { name: 'top face', look: 'face', points: line('top') },
    { name: 'core', look: 'core', points: line('core') },
    ...was,
  ]
}

/** Points from mixing to the end, the ends put in straight. */
function within(points: Points, end: number): Points {
  const at = (hour: number): readonly [number, number][] => {
    const next = points.findIndex(([h]) => h >= hour)
    const [b, a] = [points[next], points[next - 1]]
    if (b === undefined) return []
    if (a === undefined || b[0] === hour) return [[hour, b[1]]]
    return [[hour, a[1] + ((b[1] - a[1]) * (hour - a[0])) / (b[0] - a[0])]]
  }
  return [...at(0), ...points.filter(([h]) => h > 0 && h < end), ...at(end)]
}

function levelsOf({ checks }: NightNow): { readonly celsius: number; readonly text: string }[] {
  const limit = (id: string, word: string) => {
    const found = checks.find((check) => check.id === id)?.limit
    return typeof found === 'number' ? [{ celsius: found, text: `${word} ${fixed(found, 0)} °C` }] : []
  }
  return [...limit('night-peak', 'at most'), ...limit('night-least', 'at least')]
}

function parts(points: Points, fore: number | null): { readonly dashed: boolean; readonly d: Points }[] {
  if (fore === null) return [{ dashed: false, d: points }]
  const cut = points.findIndex(([hour]) => hour >= fore - 1e-9)
  if (cut < 0) return [{ dashed: false, d: points }]
  const [logged, foretold] = [points.slice(0, cut + 1), points.slice(cut)]
  return [
    ...(logged.length > 1 ? [{ dashed: false, d: logged }] : []),
    ...(foretold.length > 1 ? [{ dashed: true, d: foretold }] : []),
  ]
}

const OFF_WORDS = { recorded: 'off', planned: 'off as planned', tried: 'off as tried' } as const

/** When the panel is covered: a bar under the clock, with the hour it comes off. */
function CoverBar({
  cover: { cover, on, off },
  hours,
  x,
  when,
  left,
}: {
  readonly cover: NightNow['cover']
  readonly hours: number
  readonly x: (hour: number) => number
  readonly when: HourText
  readonly left: number
}): ReactElement {
  const y = BOTTOM + 40
  if (cover === null || on === null || cover.resistance === 0)
    return (
      <text className="night-word" x={left} y={y + 14}>
        no cover
      </text>
    )
  const [from, to] = [x(on.hour), x(off?.hour ?? hours)]
  const shownOff = off !== null && off.hour < hours
  const roomy = shownOff && to - left > 250
  const how = off === null ? '' : OFF_WORDS[off.by]
  return (
    <>
      <rect className="night-cover" x={from} y={y} width={Math.max(to - from, 2)} height="16" />
      {shownOff ? <line className="night-off" x1={to} x2={to} y1={TOP} y2={y + 16} /> : null}
      <text className="night-word" x={roomy ? to : left} y={y + 36} textAnchor={roomy ? 'end' : 'start'}>
        {shownOff ? `cover ${how} ${when(off.hour)}` : 'covered to the end'}
      </text>
    </>
  )
}

function Legend({
  night,
  dots,
  tried,
  far,
}: {
  readonly night: NightNow
  readonly dots: boolean
  readonly tried: boolean
  readonly far: readonly { readonly text: string }[]
}): ReactElement {
  const words = [
    'Computed through the middle of the panel: at edges, corners and openings it is colder.',
    night.forecastFrom === null ? 'All by logged weather.' : 'Dashed: by the forecast.',
    dots ? 'Dots: as logged in the concrete.' : '',
    tried ? 'As is: the coldest place without what is tried.' : '',
    far.length > 0 ? `Beyond this picture: ${far.map(({ text }) => text).join(', ')}.` : '',
  ].filter((word) => word !== '')
  return <p className="field-note">{words.join(' ')}</p>
}
