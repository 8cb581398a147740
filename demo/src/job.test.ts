import { covers, distanceToEdge, type Point, panelOf, parseDrawing } from '@castwright/engine/panel'
import { describe, expect, it } from 'vitest'
import { demoJob } from './job.ts'
import { PANEL_ROWS } from './panels.ts'
import { demoYard } from './yard.ts'

const yard = demoYard()
const job = demoJob()
const drawings = job.drawings.map((drawing) => parseDrawing(drawing))

describe('the invented job', () => {
  it('has forty panels of at least ten kinds, each mark once, each with a due day', () => {
    expect(drawings).toHaveLength(40)
    expect(new Set(drawings.map(({ mark }) => mark)).size).toBe(40)
    expect(new Set(PANEL_ROWS.map(({ kind }) => kind)).size).toBeGreaterThanOrEqual(10)
    expect(Object.keys(job.due ?? {})).toHaveLength(40)
  })

  it.each(drawings.map((drawing, index) => [drawing.mark, drawing, index] as const))(
    '%s fits its bed, hangs level and keeps its inserts off the edges',
    (_, drawing, index) => {
      const panel = panelOf(drawing)
      const bed = yard.beds?.[index % 4]
      expect(panel.length).toBeLessThanOrEqual(bed?.length ?? 0)
      expect(panel.width).toBeLessThanOrEqual(bed?.width ?? 0)
      const inserts = drawing.inserts ?? []
      const middle = inserts.reduce((sum, { at }) => sum + at[0], 0) / inserts.length
      expect(Math.abs(middle - panel.centre[0])).toBeLessThan(1)
      for (const insert of inserts) {
        const kind = yard.insertKinds?.find(({ mark }) => mark === insert.type)
        expect(kind?.kind).toBe(insert.kind)
        const scale = Math.sqrt((drawing.lifting?.strength ?? 0) / (kind?.ratedStrength ?? 1))
        expect(drawing.lifting?.load).toBeLessThanOrEqual((kind?.rated ?? 0) * Math.min(1, scale))
        if (insert.kind === 'edge') continue
        expect(covers(panel.region, insert.at as Point), insert.mark).toBe(true)
        expect(distanceToEdge(panel.region, insert.at as Point), insert.mark).toBeGreaterThanOrEqual(
          kind?.leastEdge ?? 0,
        )
      }
    },
  )
})
