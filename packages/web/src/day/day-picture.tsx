import { Link } from '@tanstack/react-router'
import { type ReactElement, useEffect, useId, useRef, useState } from 'react'
import type { BedDay, DayBlock } from './bed-day.ts'
import { type DrawnRow, drawRow, ROW, type RowFrame, WORK, xOf } from './bed-row.ts'
import { clockText, type DayWindow } from './day-window.ts'
import { textWidth } from './text-lanes.ts'

export interface DayPictureProps {
  readonly rows: readonly BedDay[]
  readonly window: DayWindow
  readonly now: number
  readonly zone: string
}

const HEAD = 44
const GUTTER = 132
const HOUR = 3_600_000

/** A row a bed, 05:00 to 05:00. Drawn at the size it has on the screen, so that its words keep theirs. */
export function DayPicture({ rows, window, now, zone }: DayPictureProps): ReactElement {
  const [box, width] = useWidth()
  const id = useId()
  const clock = (at: number): string => clockText(at, zone)
  const sides = { window, left: GUTTER + 8, right: Math.max(width - 24, GUTTER + 300) }
  const nowX = now >= window.from && now <= window.to ? xOf(now, sides) : null
  const frame: RowFrame = { ...sides, clock, nowX }
  const height = HEAD + rows.length * ROW.height
  return (
    <div className="day-picture" ref={box}>
      {width === 0 ? null : (
        <svg width={width} height={height} aria-labelledby={`${id}-title`}>
          <title id={`${id}-title`}>
            The day by bed, {clock(window.from)} to {clock(window.to)}. The list below says the same in words.
          </title>
          <Patterns />
          <Hours frame={frame} height={height} nowX={nowX} />
          {rows.map((row, index) => (
            <g key={row.bed} transform={`translate(0 ${HEAD + index * ROW.height})`}>
              <line className="day-rule" x1="0" x2={width} y1="0" y2="0" />
              <text className="day-bed" x="16" y="40">
                {fit(/^\d+$/.test(row.bed) ? `Bed ${row.bed}` : row.bed, GUTTER - 24, 18)}
              </text>
              <text className="day-note" x="16" y="64">
                {fit(row.note, GUTTER - 24, 14)}
              </text>
              <Row drawn={drawRow(row, frame)} clock={clock} />
            </g>
          ))}
          {nowX === null ? null : <NowLine x={nowX} height={height} text={clock(now)} />}
        </svg>
      )}
    </div>
  )
}

function Row({
  drawn,
  clock,
}: {
  readonly drawn: DrawnRow
  readonly clock: (at: number) => string
}): ReactElement {
  return (
    <>
      {drawn.curves.map(({ curve, line, band, wantedY, from, to }) => (
        <g key={`${curve.panel.job}/${curve.panel.mark}`} className={curve.cast ? undefined : 'day-planned'}>
          {band === null ? null : <path className="day-band" d={band} />}
          {wantedY === null ? null : (
            <line className="day-wanted" x1={from} x2={to} y1={wantedY} y2={wantedY} />
          )}
          <path className="day-curve" d={line} />
        </g>
      ))}
      {drawn.blocks.map((block) => (
        <Link
          key={`${block.panel.job}/${block.panel.mark} ${block.kind}`}
          to="/panel/$job/$mark"
          params={block.panel}
          search={{ step: stepOf(block) }}
          aria-label={`${WORK[block.kind]} ${block.panel.mark}, ${clock(block.from)} to ${clock(block.to)}, ${block.done ? 'done' : block.by === 'readings' ? 'by readings' : 'planned'}`}
        >
          <rect
            className={`day-block day-${block.kind} ${block.done ? '' : 'day-to-come'}`}
            x={block.x}
            y={ROW.top}
            width={block.width}
            height={ROW.bottom - ROW.top}
          />
          {block.lines.length > 0 && block.kind === 'set' ? (
            <rect
              className="day-plate"
              x={block.x + 5}
              y={ROW.top + 5}
              width={
                Math.max(
                  ...block.lines.map((line, index) =>
                    textWidth(line, index === 0 ? ROW.text : ROW.small, index === 0),
                  ),
                ) + 6
              }
              height={block.lines.length * 19 + 5}
            />
          ) : null}
          {block.lines.map((line, index) => (
            <text
              key={line}
              className={`day-word ${index === 0 ? 'day-word-first' : ''} day-word-${block.kind}`}
              x={block.x + 8}
              y={ROW.top + 21 + index * 19}
            >
              {line}
            </text>
          ))}
        </Link>
      ))}
      {drawn.curves.map(({ curve, metX }) =>
        metX === null ? null : (
          <g key={`${curve.panel.job}/${curve.panel.mark}`}>
            <line className="day-pennant-pole" x1={metX} x2={metX} y1={ROW.top - 4} y2={ROW.bottom} />
            <path className="day-pennant" d={`M${metX - 7} ${ROW.top - 4}h14l-7 10z`} />
          </g>
        ),
      )}
      {drawn.labels.map((label) => (
        <text
          key={label.key}
          className={label.bold ? 'day-label day-label-bold' : 'day-label'}
          x={label.x}
          y={16 + label.lane * ROW.lane}
        >
          {label.text}
        </text>
      ))}
    </>
  )
}

export function stepOf(block: Pick<DayBlock, 'kind'>): 'set' | 'place' | 'finish' | 'strip' {
  return block.kind === 'pour' ? 'place' : block.kind
}

function Hours({
  frame,
  height,
  nowX,
}: {
  readonly frame: RowFrame
  readonly height: number
  readonly nowX: number | null
}): ReactElement {
  const { window, clock } = frame
  const hours = Array.from({ length: Math.round((window.to - window.from) / HOUR) + 1 }, (_, hour) => hour)
  const wide = frame.right - frame.left > 900
  return (
    <>
      {hours.map((hour) => {
        const at = window.from + hour * HOUR
        const x = xOf(at, frame)
        const named = hour % (wide ? 3 : 6) === 0
        const hidden = nowX !== null && Math.abs(nowX - x) < 62
        return (
          <g key={at}>
            <line
              className={named ? 'day-hour' : 'day-hour day-hour-thin'}
              x1={x}
              x2={x}
              y1={HEAD - 6}
              y2={height}
            />
            {named && !hidden ? (
              <text className="day-time" x={x} y={HEAD - 16} textAnchor="middle">
                {clock(at)}
              </text>
            ) : null}
          </g>
        )
      })}
    </>
  )
}

function NowLine({
  x,
  height,
  text,
}: {
  readonly x: number
  readonly height: number
  readonly text: string
}): ReactElement {
  return (
    <g>
      <line className="day-now" x1={x} x2={x} y1={HEAD - 8} y2={height} />
      <rect className="day-now-flag" x={x - 32} y={HEAD - 36} width="64" height="28" />
      <text className="day-now-text" x={x} y={HEAD - 16} textAnchor="middle">
        {text}
      </text>
    </g>
  )
}

export function Patterns(): ReactElement {
  return (
    <defs>
      <pattern
        id="day-hatch"
        width="8"
        height="8"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <rect width="8" height="8" fill="var(--wash)" />
        <line x1="0" y1="0" x2="0" y2="8" stroke="var(--quiet)" strokeWidth="2.4" />
      </pattern>
      <pattern id="day-dots" width="9" height="9" patternUnits="userSpaceOnUse">
        <rect width="9" height="9" fill="var(--accent-wash)" />
        <circle cx="4.5" cy="4.5" r="1.9" fill="var(--accent)" />
      </pattern>
    </defs>
  )
}

/** The text, or as much of it as fits with an ellipsis; the whole stands in the list. */
function fit(text: string, width: number, size: number): string {
  if (textWidth(text, size) <= width) return text
  const letters = Math.max(1, Math.floor((width - size) / (size * 0.565)))
  return `${[...text].slice(0, letters).join('')}…`
}

/** Width of an element, px, followed as it changes. */
export function useWidth(): readonly [React.RefObject<HTMLDivElement | null>, number] {
  const box = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState(0)
  useEffect(() => {
    if (box.current === null) return
    const observer = new ResizeObserver(([entry]) => setWidth(Math.floor(entry?.contentRect.width ?? 0)))
    observer.observe(box.current)
    return () => observer.disconnect()
  }, [])
  return [box, width]
}
