import { demoYard } from '@castwright/demo'
import { codeFamily } from '@castwright/engine/codes'
import { type Drawing, panelOf, parseDrawing } from '@castwright/engine/panel'
import { planSteel } from '@castwright/engine/steel'
import { type BenchLine, median, seconds } from './line.ts'

/** A wall with a door and windows, mats in both layers, U-bars, trimmers with diagonals, starters and ties; sizes in mm. */
function wall(mark: string, length: number, height: number): Drawing {
  const grade = 'B500B'
  const wide = Math.max(1, Math.floor(length / 3000))
  const box = (left: number, bottom: number, width: number, high: number) => [
    [left, bottom],
    [left + width, bottom],
    [left + width, bottom + high],
    [left, bottom + high],
  ]
  return parseDrawing({
    format: 'castwright.drawing/1',
    mark,
    outline: box(0, 0, length, height),
    thickness: 200,
    openings: Array.from({ length: wide }, (_, i) => ({
      mark: `O${i + 1}`,
      outline: box(((i + 0.5) * length) / wide - 500, height * 0.3, 1000, height * 0.4),
    })),
    concrete: { strength: 40, aggregate: 16 },
    cover: { mould: 30, top: 30, edge: 30 },
    steel: [
      ...(['mould', 'top'] as const).flatMap((layer) =>
        (['x', 'y'] as const).map((direction) => ({ layer, direction, diameter: 12, grade, spacing: 200 })),
      ),
      { edge: 'all', form: 'u', diameter: 10, grade, spacing: 200, leg: 400 },
      {
        trim: 'all',
        layer: 'both',
        diameter: 12,
        grade,
        count: 2,
        beyond: 400,
        diagonals: { diameter: 12, grade, length: 1000, count: 1 },
      },
      { starters: 'top', layer: 'mould', diameter: 12, grade, spacing: 300, embed: 500, project: 600 },
      {
        ties: [
          [400, height - 300],
          [length - 400, height - 300],
        ],
        spacing: 200,
        diameter: 8,
        grade,
        width: 200,
      },
    ],
  })
}

/** Layout and schedule of a job: bars, laps, heights, clashes, checks; and how the time grows with the size of a panel. */
export function layout(short: boolean): BenchLine[] {
  const count = short ? 100 : 1000
  const yard = demoYard()
  const family = codeFamily('eu')
  const lay = (drawing: Drawing) => planSteel({ panel: panelOf(drawing), yard, family })
  // Every panel another size, so that nothing can be remembered.
  const drawings = Array.from({ length: count }, (_, i) =>
    wall(`W${i}`, 3000 + ((i * 37) % 900) * 10 + i / 100, 2600 + ((i * 17) % 140) * 10),
  )
  for (const drawing of drawings.slice(0, 20)) lay(drawing)
  let bars = 0
  const times = drawings.map((drawing) =>
    seconds(() => {
      bars += lay(drawing).placed.length
    }),
  )
  const whole = times.reduce((sum, time) => sum + time, 0)
  const grown = [1, 2, 4].map((times) => wall(`G${times}`, 3000 * times, 3000))
  const sizes = grown.map((drawing) => {
    const plan = lay(drawing)
    const time = median(Array.from({ length: short ? 5 : 15 }, () => seconds(() => lay(drawing))))
    return { bars: plan.placed.length, time }
  })
  const ratio = (i: number, of: 'bars' | 'time') =>
    (sizes[i]?.[of] ?? Number.NaN) / (sizes[i - 1]?.[of] ?? Number.NaN)
  return [
    {
      what: `layout and schedule of ${count} panels`,
      value: `${(count / whole).toFixed(0)} panels/s`,
      beside: `${Math.round(bars / count)} bars a panel, ${(bars / whole).toFixed(0)} bars/s; median ${(median(times) * 1000).toFixed(1)} ms, worst ${(Math.max(...times) * 1000).toFixed(1)} ms`,
    },
    {
      what: 'growth, panel twice as long, 3 to 6 to 12 m',
      value: `${ratio(1, 'time').toFixed(2)}, ${ratio(2, 'time').toFixed(2)}`,
      beside: `times the time, at ${ratio(1, 'bars').toFixed(2)}, ${ratio(2, 'bars').toFixed(2)} times the bars; ${sizes.map(({ time }) => (time * 1000).toFixed(1)).join(', ')} ms`,
    },
  ]
}
