import { LEAST_SCREEN_TEXT, NARROW } from './layout.ts'
import type { Frame, KeyLine, Picture, Shape } from './picture.ts'
import { textWidth } from './text-width.ts'
import { centredText, leftText, wordLines } from './words.ts'

/** One condition of the lift and since when, or from when on, it holds. */
export interface HourRow {
  readonly name: string
  /** Earliest instant at which it holds, ms; null where it is not known or is never reached. */
  readonly from: number | null
  /** Instead of an hour. Example: `not known: scatter of the mix`, `at no strength`. */
  readonly words?: string
  /** It governs: the last of all to hold. */
  readonly governs?: boolean
}

export interface HoursPictureInput {
  readonly rows: readonly HourRow[]
  /** Instants, ms. */
  readonly now: number
  readonly start: number
  readonly end: number
  /** An instant under the picture, as the yard's clock shows it. Example: `10:40`; with the day where the picture spans several. */
  readonly clock: (instant: number) => string
  /** An instant in words, with its day where that is not the day of now. Example: `13 May, 10:40`. */
  readonly when: (instant: number) => string
  readonly frame: Frame
}

const HOUR = 3_600_000
/** Hours between the lines of the clock. */
const TICKS = [1, 2, 3, 4, 6, 8, 12, 24, 48, 72, 168] as const

/** "When is it met?": a bar for each condition from its earliest hour on, dots before it, and the line of now. */
export function hoursPicture(input: HoursPictureInput): Picture {
  const { rows, now, start, end, clock, when, frame } = input
  const text = frame.paper === undefined ? Math.max(LEAST_SCREEN_TEXT, frame.text) : frame.text
  const narrow = frame.paper === undefined && frame.width < NARROW
  const names = narrow
    ? 0
    : Math.min(frame.width * 0.42, Math.max(0, ...rows.map((row) => textWidth(nameOf(row, when), text))))
  const left = names === 0 ? text * 1.6 : names + text * 1.2
  const right = frame.width - text * 1.8
  const span = Math.max(end - start, HOUR)
  const x = (instant: number): number =>
    left + (Math.min(Math.max(instant, start), end) - start) * ((right - left) / span)
  const shapes: Shape[] = []
  const bars: Shape[] = []
  let y = text * 2
  for (const row of rows) {
    const lines = wordLines(nameOf(row, when), text, narrow ? frame.width - text : names + 1)
    const high = lines.length * text * 1.35
    const bar = narrow ? y + high + text * 0.45 : y + high / 2
    lines.forEach((line, i) => {
      shapes.push(
        leftText({
          role: 'label',
          text: line,
          size: text,
          x: text * 0.5,
          y: y + text * 1.35 * (i + 0.5),
          ...(row.governs === true ? { bold: true } : {}),
          ...(narrow ? { backed: true } : {}),
        }),
      )
    })
    bars.push(...barShapes(row, { x, left, right, y: bar, text, start, end }))
    y = narrow ? bar + text * 1.1 : y + high + text * 0.6
  }
  if (rows.length === 0) {
    shapes.push(
      leftText({
        role: 'label',
        text: 'No condition is known.',
        size: text,
        x: text / 2,
        y: y + text * 0.5,
        backed: true,
      }),
    )
    y += text * 1.5
  }
  const bottom = y + text * 0.2
  const [grid, numbers] = gridShapes({
    start,
    end,
    x,
    clock,
    text,
    top: text * 1.9,
    bottom,
    right: frame.width,
  })
  const line: Shape[] =
    now < start || now > end
      ? []
      : [
          {
            kind: 'line',
            role: 'now',
            points: [
              [x(now), text * 1.7],
              [x(now), bottom],
            ],
          },
        ]
  const said = `now, ${when(now)}`
  const half = textWidth(said, text) / 2
  return {
    width: frame.width,
    height: bottom + text * 1.9,
    scale: 1,
    ratio: null,
    origin: [0, 0],
    shapes: [
      ...grid,
      ...bars,
      ...line,
      ...shapes,
      ...numbers,
      centredText({
        role: 'now',
        text: said,
        size: text,
        x: Math.min(frame.width - half - 1, Math.max(half + 1, x(now))),
        y: text * 0.85,
        bold: true,
      }),
    ],
    title: `When each condition is met. Now ${when(now)}. ${rows.map((row) => nameOf(row, when)).join('. ')}.`,
    key: KEY,
    notes: [],
  }
}

const KEY: readonly KeyLine[] = [
  { role: 'met', text: 'met, by the low edge of the strength' },
  { role: 'wait', text: 'not met yet, or not known' },
  { role: 'now', text: 'now' },
]

function nameOf({ name, from, words }: HourRow, when: (instant: number) => string): string {
  return `${name}, ${words ?? (from === null ? 'not known' : `from ${when(from)}`)}`
}

interface BarPlace {
  readonly x: (instant: number) => number
  readonly left: number
  readonly right: number
  readonly y: number
  readonly text: number
  readonly start: number
  readonly end: number
}

function barShapes({ from }: HourRow, { x, left, right, y, text, start, end }: BarPlace): Shape[] {
  const reached = from !== null && from <= end
  const begin = reached ? x(from) : right
  const half = text * 0.22
  const shapes: Shape[] = []
  if (begin > left + 2) {
    shapes.push({
      kind: 'line',
      role: 'wait',
      points: [
        [left, y],
        [begin - (reached ? half * 3 : 0), y],
      ],
    })
  }
  if (!reached) return shapes
  const wing = text * 0.4
  const bar: Shape[] = [
    ...shapes,
    {
      kind: 'polygon',
      role: 'met',
      rings: [
        [
          [begin, y - half],
          [right, y - half],
          [right, y + half],
          [begin, y + half],
        ],
      ],
    },
  ]
  // Where it held before the picture begins there is no hour to point at.
  if (from < start) return bar
  const pennant: Shape = {
    kind: 'polygon',
    role: 'prop',
    rings: [
      [
        [begin - wing, y - half - wing],
        [begin + wing, y - half - wing],
        [begin, y - half],
      ],
    ],
  }
  return [...bar, pennant]
}

interface GridInput {
  readonly start: number
  readonly end: number
  readonly x: (instant: number) => number
  readonly clock: (instant: number) => string
  readonly text: number
  readonly top: number
  readonly bottom: number
  readonly right: number
}

function gridShapes({ start, end, x, clock, text, top, bottom, right }: GridInput): [Shape[], Shape[]] {
  const wide = textWidth(clock(end), text) + text
  const hours = (end - start) / HOUR
  const most = Math.max(2, Math.floor((x(end) - x(start)) / wide))
  const step = TICKS.find((ticks) => hours / ticks <= most) ?? Math.ceil(hours / most)
  const grid: Shape[] = []
  const numbers: Shape[] = []
  for (let k = 0; start + k * step * HOUR <= end + 1; k += 1) {
    const at = start + k * step * HOUR
    grid.push({
      kind: 'line',
      role: 'grid',
      points: [
        [x(at), top],
        [x(at), bottom],
      ],
    })
    const half = textWidth(clock(at), text) / 2
    if (x(at) + half > right || x(at) - half < 0) continue
    numbers.push(
      centredText({ role: 'grid', text: clock(at), size: text, x: x(at), y: bottom + text * 0.95 }),
    )
  }
  return [grid, numbers]
}
