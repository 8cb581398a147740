import { inflateSync } from 'node:zlib'
import { codeFamily, type FAMILIES } from '@castwright/engine/codes'
import { parseDrawing } from '@castwright/engine/panel'
import { plan } from '@castwright/engine/plan'
import { bendGauge } from '@castwright/engine/steel'
import { emptyPanelFacts } from '@castwright/engine/steps'
import { describe, expect, it } from 'vitest'
import { bendGaugeSheet } from './bend-gauge.ts'

const MM = 25.4 / 72

const drawing = parseDrawing({
  format: 'castwright.drawing/1',
  mark: 'W7',
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 3000],
    [0, 3000],
  ],
  thickness: 160,
  concrete: { strength: 40 },
})

function sheet(family: keyof typeof FAMILIES, size: 'a4' | 'letter'): Promise<Uint8Array> {
  return bendGaugeSheet({
    plan: plan({ drawing, yard: null, family: codeFamily(family) }),
    drawing,
    facts: { ...emptyPanelFacts({ job: 'J', mark: 'W7' }), drawing, revision: 'A' },
    yard: { yard: null, gear: {}, limits: {} },
    yardName: 'Yard',
    timezone: 'UTC',
    size,
    made: '2026-03-04T05:06:07.000Z',
    address: 'https://yard.example',
  })
}

/** What the pages are drawn with, as text. */
function drawn(bytes: Uint8Array): string {
  const file = Buffer.from(bytes)
  const parts: string[] = []
  for (let at = file.indexOf('stream\n'); at >= 0; at = file.indexOf('stream\n', at + 7)) {
    if (file.subarray(at - 3, at).toString('latin1') === 'end') continue
    try {
      parts.push(inflateSync(file.subarray(at + 7, file.indexOf('endstream', at))).toString('latin1'))
    } catch {
      // a font or another stream that is not drawing
    }
  }
  return parts.join('\n')
}

/** Diameters of all circles, mm: a point, then four curves. */
function circles(text: string): number[] {
  const number = String.raw`(-?[\d.]+)`
  const start = new RegExp(
    String.raw`${number} ${number} m\n(?:(?:-?[\d.]+ ){4}${number} ${number} c\n){2}`,
    'g',
  )
  return [...text.matchAll(start)].map((found) => Math.abs(Number(found[3]) - Number(found[1])) * MM)
}

describe('bend gauge on paper', () => {
  it.each([
    ['nz', 'a4'],
    ['eu', 'a4'],
    ['au', 'letter'],
    ['us', 'letter'],
  ] as const)(
    '%s on %s: every disc is drawn at its size, to a fiftieth of a millimetre',
    async (family, size) => {
      const found = circles(drawn(await sheet(family, size)))
      for (const { diameter } of bendGauge(codeFamily(family)).discs) {
        expect(
          Math.min(...found.map((each) => Math.abs(each - diameter))),
          `disc of ${diameter} mm`,
        ).toBeLessThan(0.02)
      }
    },
  )

  it('has a ruler of 100 mm and the frame of an ID-1 card, 85.60 × 53.98 mm (ISO/IEC 7810)', async () => {
    const text = drawn(await sheet('eu', 'a4'))
    const frames = [...text.matchAll(/(-?[\d.]+) (-?[\d.]+) (-?[\d.]+) (-?[\d.]+) re\n/g)].map((found) => [
      Number(found[3]) * MM,
      Number(found[4]) * MM,
    ])
    expect(
      frames.some(
        ([wide, high]) => Math.abs((wide ?? 0) - 85.6) < 0.01 && Math.abs((high ?? 0) - 53.98) < 0.01,
      ),
    ).toBe(true)
    const lines = [...text.matchAll(/(-?[\d.]+) (-?[\d.]+) m\n(-?[\d.]+) (-?[\d.]+) l\n/g)].map(
      (found) => Math.hypot(Number(found[3]) - Number(found[1]), Number(found[4]) - Number(found[2])) * MM,
    )
    expect(lines.some((length) => Math.abs(length - 100) < 0.01)).toBe(true)
  })
})
