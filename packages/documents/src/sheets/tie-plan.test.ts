import { codeFamily } from '@castwright/engine/codes'
import { parseDrawing } from '@castwright/engine/panel'
import { plan } from '@castwright/engine/plan'
import { emptyPanelFacts } from '@castwright/engine/steps'
import { parseYard } from '@castwright/engine/yard'
import { expect, it } from 'vitest'
import { makeSheet } from './make-sheet.ts'
import type { SheetInput } from './sheet.ts'

const GRADE = 'B500B'

function inputOf(more: Record<string, unknown> = {}, family: 'eu' | 'us' = 'eu'): SheetInput {
  const drawing = parseDrawing({
    format: 'castwright.drawing/1',
    mark: 'W7',
    outline: [
      [0, 0],
      [9000, 0],
      [9000, 3000],
      [0, 3000],
    ],
    thickness: 180,
    openings: [
      {
        mark: 'D1',
        outline: [
          [900, 0],
          [1900, 0],
          [1900, 2100],
          [900, 2100],
        ],
      },
    ],
    concrete: { strength: 40, aggregate: 16 },
    cover: { mould: 30, top: 35, edge: 40 },
    steel: [
      { layer: 'mould', direction: 'x', diameter: 12, grade: GRADE, spacing: 200 },
      { layer: 'mould', direction: 'y', diameter: 10, grade: GRADE, spacing: 200 },
      { layer: 'top', direction: 'y', diameter: 10, grade: GRADE, spacing: 250 },
      { layer: 'top', direction: 'x', diameter: 12, grade: GRADE, spacing: 200 },
      { bar: 'U1', diameter: 10, grade: GRADE, role: 'stirrup', legs: [400, 110, 400], count: 12 },
      { bar: 'L1', diameter: 16, grade: GRADE, legs: [900, 450], count: 4 },
    ],
    ...more,
  })
  const yard = parseYard({
    format: 'castwright.yard/1',
    name: 'Kettle Lane',
    code: 'eu',
    timezone: 'Europe/London',
    stock: [10, 12, 16].map((diameter) => ({ diameter, grade: GRADE, lengths: [6000] })),
  })
  return {
    plan: plan({ drawing, yard, family: codeFamily(family) }),
    drawing,
    facts: { ...emptyPanelFacts({ job: 'Saltmarsh Library', mark: drawing.mark }), drawing, revision: 'B' },
    yard: { yard: null, gear: {}, limits: {} },
    yardName: 'Kettle Lane',
    timezone: 'UTC',
    size: 'a4',
    made: '2026-05-12T09:00:00.000Z',
    address: 'https://yard.example',
  }
}

it.each(['tie-plan', 'bar-tags', 'steel-schedule'] as const)(
  '%s of a panel with laps, an opening and bent bars is the same when made again',
  async (name) => {
    const [first, second] = [await makeSheet(name, inputOf()), await makeSheet(name, inputOf())]
    expect(Buffer.from(first).toString('latin1').startsWith('%PDF-')).toBe(true)
    expect(Buffer.from(first).equals(Buffer.from(second))).toBe(true)
    const { KEEP_SHEETS } = process.env
    if (KEEP_SHEETS !== undefined) {
      const { writeFileSync } = await import('node:fs')
      writeFileSync(`${KEEP_SHEETS}/${name}.pdf`, first)
    }
  },
)

it('eight tags fit on a page', async () => {
  const pages = (bytes: Uint8Array): number =>
    Buffer.from(bytes)
      .toString('latin1')
      .match(/\/Type \/Page\b/g)?.length ?? 0
  const many = Array.from({ length: 14 }, (_, i) => ({
    bar: `B${i}`,
    diameter: 12,
    grade: GRADE,
    legs: [500 + i, 300],
    count: 2,
  }))
  const [few, more] = [
    await makeSheet('bar-tags', inputOf()),
    await makeSheet('bar-tags', inputOf({ steel: many })),
  ]
  // Twelve lines and fourteen, two across, four rows a page.
  expect(pages(few)).toBe(2)
  expect(pages(more)).toBe(2)
  const one = inputOf({ steel: many.slice(0, 8) })
  expect(pages(await makeSheet('bar-tags', one))).toBe(1)
})
