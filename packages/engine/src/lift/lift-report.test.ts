import { describe, expect, it } from 'vitest'
import { parseDrawing } from '../panel/drawing.ts'
import { panelOf } from '../panel/panel.ts'
import type { Point } from '../panel/point.ts'
import { InputError } from '../working/issue.ts'
import { replay } from '../working/replay.ts'
import { type LiftReportInput, liftReport } from './lift-report.ts'
import { casting, liftYard } from './reference-panels.ts'

const HOLE = {
  mark: 'O1',
  outline: [
    [3000, 600],
    [4200, 600],
    [4200, 2100],
    [3000, 2100],
  ],
}

const faces = (...at: Point[]) => at.map((point, i) => ({ mark: `${i + 1}`, at: point, kind: 'face' }))

function report(change: object = {}, input: Partial<LiftReportInput> = {}) {
  return liftReport({ panel: casting(change), yard: null, ...input })
}

function box(width: number, height: number): Point[] {
  return [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ]
}

describe('a flat lift', () => {
  const probes: readonly Point[] = [
    [3600, 300],
    [1243, 621],
    [3000, 600],
  ]

  it('has a working that replays, for rigid, equalised, three, six and proposed inserts', () => {
    const reports = [
      report({ openings: [HOLE] }, { probes, factor: 1.3 }),
      report({}, { yard: liftYard() }),
      report({ inserts: faces([1000, 600], [5000, 600], [3000, 2400]) }),
      report({
        inserts: faces([900, 600], [3000, 500], [5100, 600], [900, 2400], [3000, 2500], [5100, 2400]),
      }),
      report({ inserts: undefined, openings: [HOLE] }),
    ]
    let replayed = 0
    for (const { working, unknown } of reports) {
      expect(unknown).toEqual([])
      for (const step of working) {
        const again = replay(step)
        if (again === null) continue
        replayed += 1
        const result = Number(step.result)
        expect(Math.abs(again - result), `${step.symbol} = ${step.formula}`).toBeLessThanOrEqual(
          1e-9 * Math.max(Math.abs(result), 1e-9),
        )
      }
    }
    expect(replayed).toBeGreaterThan(60)
  })

  it('balances: loads sum to the weight with its factor, about its centre of gravity', () => {
    const { inserts, weight, centre } = report({ openings: [HOLE] }, { factor: 1.3 })
    const sum = (of: (at: Point) => number) =>
      inserts.reduce((all, { at, load }) => all + (load ?? Number.NaN) * of(at), 0)
    expect(sum(() => 1) / (1.3 * weight)).toBeCloseTo(1, 9)
    expect(sum(([x]) => x) / (1.3 * weight)).toBeCloseTo(centre[0], 4)
    expect(sum(([, y]) => y) / (1.3 * weight)).toBeCloseTo(centre[1], 4)
  })

  it('says where thin-plate theory is stretched: thickness over the least span above a tenth', () => {
    expect(report({ thickness: 150 }).notes).toEqual([])
    expect(report({ thickness: 400 }).notes[0]).toMatch(/thin-plate theory leaves out/)
  })

  it('doubles with the factor; the modulus is in the deflection alone', () => {
    const [once, twice] = [1, 2].map((factor) => report({ openings: [HOLE] }, { probes, factor }))
    const stiff = report({ openings: [HOLE] }, { probes, modulus: 60_000 })
    expect(twice!.peak.stress! / once!.peak.stress!).toBeCloseTo(2, 9)
    expect(stiff.peak.stress! / once!.peak.stress!).toBeCloseTo(1, 7)
    expect(once!.probes[0]!.deflection! / stiff.probes[0]!.deflection!).toBeCloseTo(2, 7)
    expect(stiff.inserts[0]!.load! / once!.inserts[0]!.load!).toBeCloseTo(1, 8)
  })

  it('peaks nowhere below what an average or a probe reads', () => {
    const { peak, averages, probes: read } = report({ openings: [HOLE] }, { probes })
    for (const { stress } of [...averages, ...read]) expect(stress!).toBeLessThanOrEqual(peak.stress!)
    expect(averages.map(({ of }) => of)).toEqual([
      'support',
      'support',
      'support',
      'support',
      'corner',
      'corner',
      'corner',
      'corner',
    ])
    expect(read.map(({ averaged }) => averaged)).toEqual([false, true, true])
  })

  it('knows nothing of equalised legs that would not hang level', () => {
    const inserts = faces([1243, 621], [4300, 621], [4300, 2379], [1243, 2379])
    const found = report({ inserts }, { yard: liftYard() })
    expect(found.verdict).toBe('unknown')
    expect(found.unknown[0]).toMatch(/equalised legs off the centre of gravity/)
    expect(found.peak).toMatchObject({ at: null, stress: null, error: null })
  })

  it('proposes nothing for a sliver, and says so', () => {
    const panel = panelOf(
      parseDrawing({
        format: 'castwright.drawing/1',
        mark: 'S1',
        outline: box(6000, 30),
        thickness: 150,
        concrete: { strength: 40 },
      }),
    )
    const found = liftReport({ panel, yard: null })
    expect(found.verdict).toBe('unknown')
    expect(found.inserts).toEqual([])
    expect(found.unknown.length).toBeGreaterThan(1)
  })

  it('lifts a grille of three hundred openings in balance', () => {
    const openings = Array.from({ length: 300 }, (_, i) => {
      const [x, y] = [150 + 390 * (i % 30), 150 + 290 * Math.floor(i / 30)]
      return { mark: `O${i}`, outline: box(200, 150).map(([u, v]) => [x + u, y + v]) }
    })
    const inserts = faces([2050, 750], [9750, 750], [2050, 2480], [9750, 2480])
    const { inserts: found, weight, peak } = report({ outline: box(12_000, 3050), openings, inserts })
    expect(found.reduce((sum, { load }) => sum + load!, 0) / weight).toBeCloseTo(1, 8)
    expect(peak.stress).toBeGreaterThan(0)
  }, 60_000)

  it.each<[string, object, RegExp]>([
    [
      'in an opening',
      { openings: [HOLE], inserts: faces([3600, 1200], [500, 500], [500, 2500]) },
      /inserts\[0\]\.at/,
    ],
    ['on an edge', { inserts: faces([3600, 0], [500, 500], [500, 2500]) }, /inserts\[0\]\.at/],
    ['three in one line', { inserts: faces([500, 500], [1500, 500], [2500, 500]) }, /in one line/],
    [
      'two at one point',
      { inserts: faces([500, 500], [5500, 500], [5500, 2500], [500, 500]) },
      /inserts\[3\]\.at: found 4 at the point of 1/,
    ],
  ])('refuses inserts %s', (_, change, message) => {
    expect(() => report(change)).toThrow(InputError)
    expect(() => report(change)).toThrow(message)
  })
})
