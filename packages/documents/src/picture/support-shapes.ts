import type { StageSupport } from '@castwright/engine/lift'
import type { Point } from '@castwright/engine/panel'
import { ceilTo } from '@castwright/engine/working'
import { setText } from './labels.ts'
import type { Layout } from './layout.ts'
import type { MarkShapes } from './marks.ts'
import type { Shape } from './picture.ts'

/** A load rounded up to a tenth, or that it is not known. */
export function loadText(load: number | null): string {
  return load === null ? 'not known' : `${ceilTo(load, 0.1).toFixed(1)} kN`
}

/** Half of the breadth at which a timber is drawn, mm. */
const HALF_TIMBER = 50

/** Timbers and edges that the panel lies on, with their loads beside them. */
export function supportLines(layout: Layout, supports: readonly StageSupport[]): MarkShapes {
  const shapes: Shape[] = []
  const notes: string[] = []
  for (const { kind, mark, at, load } of supports) {
    const [from, to] = at
    if (kind === 'insert' || to === undefined) continue
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
    const length = Math.hypot(dx, dy) || 1
    const [nx, ny] = [(-dy / length) * HALF_TIMBER, (dx / length) * HALF_TIMBER]
    const ring: Point[] = [
      [from[0] + nx, from[1] + ny],
      [from[0] - nx, from[1] - ny],
      [to[0] - nx, to[1] - ny],
      [to[0] + nx, to[1] + ny],
    ]
    shapes.push({ kind: 'polygon', role: 'timber', rings: [ring.map(layout.at)], pattern: 'hatch' })
    const words = `${mark}, ${loadText(load)}`
    const label = { role: 'load', text: words, size: layout.text, backed: true } as const
    const along = [0.5, 0.25, 0.75, 0.12, 0.88, 0, 1].map((share) =>
      layout.at([from[0] + share * dx, from[1] + share * dy]),
    )
    const set = setText(layout.labels, label, along)
    if (set === null) notes.push(words)
    else shapes.push(set)
  }
  return { shapes, notes }
}
