import { describe, expect, it } from 'vitest'
import { codeFamily } from '../codes/index.ts'
import { parseDrawing } from '../panel/drawing.ts'
import { replay } from '../working/replay.ts'
import { type MeasuredMouldInput, measuredMould } from './measured-mould.ts'

const drawing = parseDrawing({
  format: 'castwright.drawing/1',
  mark: 'W1',
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 3000],
    [0, 3000],
  ],
  thickness: 150,
  concrete: { strength: 40 },
})
const DIAGONAL = Math.hypot(6000, 3000)
const TAPED = {
  'side:1': 6000,
  'side:2': 3000,
  'side:3': 6000,
  'side:4': 3000,
  'diagonal:1-3': DIAGONAL,
  'diagonal:2-4': DIAGONAL,
}
const HEIGHTS = [150, 151, 150, 149]

const judged = (change: Partial<MeasuredMouldInput> = {}) =>
  measuredMould({ drawing, taped: TAPED, heights: HEIGHTS, family: codeFamily('eu'), ...change })
const verdicts = (mould: ReturnType<typeof judged>) =>
  [mould.readings, mould.corners, mould.square, ...mould.cast].map((check) => check?.verdict)

describe('a mould judged as a whole', () => {
  it('passes as drawn', () => {
    expect(verdicts(judged())).toEqual(['pass', 'pass', 'pass', 'pass', 'pass', 'pass', 'pass'])
    expect(judged().unlimited).toBeNull()
  })

  // Computed, second method: 6000 × 3000 sheared by 5 has diagonals of 6712.676 and 6703.732, 8.944 apart; its angle by atan.
  it('finds the skew of a sheared mould from its lengths', () => {
    const sheared = {
      ...TAPED,
      'side:2': Math.hypot(3000, 5),
      'side:4': Math.hypot(3000, 5),
      'diagonal:1-3': 6712.676,
      'diagonal:2-4': 6703.732,
    }
    const mould = judged({ taped: sheared })
    expect(mould.shape?.skewDegrees).toBeCloseTo((Math.atan(5 / 3000) * 180) / Math.PI, 4)
    expect(mould.square?.demand).toBeCloseTo(8.944, 2)
    expect(mould.square?.verdict).toBe('pass')
    expect(mould.readings.demand).toBeLessThan(0.01)
  })

  it('says which corner to push which way by how much', () => {
    const [x, y] = [6008, 2993]
    const mould = judged({
      taped: {
        ...TAPED,
        'side:2': Math.hypot(8, 2993),
        'side:3': Math.hypot(x, 7),
        'diagonal:1-3': Math.hypot(x, y),
      },
    })
    expect(mould.readings.verdict).toBe('pass')
    expect(mould.corners.verdict).toBe('fail')
    expect(mould.corners.demand).toBeCloseTo(Math.hypot(8, 7), 1)
    expect(mould.corners.note).toContain(
      'Corner 3 is out by 11 mm: push it 7 mm along side 2 away from corner 2, 8 mm along side 3 towards corner 4.',
    )
  })

  it('names the length that does not fit, and does not judge the shape on it', () => {
    const mould = judged({ taped: { ...TAPED, 'side:3': 6020 } })
    expect(mould.readings.verdict).toBe('fail')
    expect(mould.readings.note).toBe('Side 3 reads 20 mm longer than the others give. Tape it again.')
    expect(mould.corners).toMatchObject({
      verdict: 'unknown',
      unknown: ['taped lengths that fit each other'],
    })
    expect(mould.cast.map(({ verdict }) => verdict)).toEqual(['unknown', 'unknown', 'pass', 'unknown'])
  })

  it('is not known until every length is taped, and names those that are missing', () => {
    const { 'side:2': _, 'diagonal:2-4': __, ...rest } = TAPED
    const mould = judged({ taped: rest })
    expect(mould.shape).toBeNull()
    expect(mould.readings.unknown).toEqual(['Side 2', 'Corner 2 to corner 4, straight'])
    expect(mould.corners.verdict).toBe('unknown')
    expect(judged({ taped: { ...TAPED, 'side:1': 0 } }).readings.unknown).toEqual(['Side 1'])
    expect(judged({ taped: { ...TAPED, 'side:1': Number.NaN } }).readings.verdict).toBe('unknown')
  })

  // EN 13369:2013, 4.3.1.1 (from memory): length 6 m ± 16 mm; section 150 mm +10, −5.
  it('shows a panel out of its as-built tolerance before it is cast', () => {
    const long = { ...TAPED, 'side:1': 6017, 'side:3': 6017 }
    const both = Math.hypot(6017, 3000)
    const mould = judged({ taped: { ...long, 'diagonal:1-3': both, 'diagonal:2-4': both } })
    expect(mould.cast[0]).toMatchObject({ id: 'mould-cast:length', verdict: 'fail', limit: 16 })
    expect(mould.cast[0]?.demand).toBeCloseTo(17, 6)
    const thin = judged({ heights: [150, 150, 144, 150] }).cast[2]
    expect(thin).toMatchObject({ id: 'mould-cast:thickness', verdict: 'fail', demand: -6, limit: -5 })
  })

  it('asks for heights at four places, and still reads the one worst height of older records', () => {
    expect(judged({ heights: [150, 150] }).cast[2]?.verdict).toBe('unknown')
    expect(judged({ heights: [] }).cast[2]?.verdict).toBe('unknown')
    expect(judged({ heights: [], worstHeight: 153 }).cast[2]).toMatchObject({ verdict: 'pass', demand: 3 })
  })

  it('is not known where the family confirms no as-built tolerance, until an engineer enters one', () => {
    const nz = judged({ family: codeFamily('nz') })
    expect(nz.cast).toEqual([])
    expect(nz.unlimited?.verdict).toBe('unknown')
    expect(nz.unlimited?.unknown).toHaveLength(4)
    const by = { id: 'p', name: 'Ada Roe', role: 'engineer' } as const
    const entered = { entry: 'e', value: 8, unit: 'mm', standard: 'Works rule', edition: '2026', by }
    const ruled = judged({ family: codeFamily('nz'), limits: { 'quality.length': entered } })
    expect(ruled.cast.map(({ id, verdict }) => [id, verdict])).toEqual([['mould-cast:length', 'pass']])
    expect(ruled.unlimited?.unknown).toHaveLength(3)
  })

  it('has no set-up tolerance for corners beside a side of more than 10 m, and says so', () => {
    const long = parseDrawing({
      ...drawing,
      outline: [
        [0, 0],
        [11_000, 0],
        [11_000, 3000],
        [0, 3000],
      ],
    })
    const across = Math.hypot(11_000, 3000)
    const taped = { 'side:1': 11_000, 'side:2': 3000, 'side:3': 11_000, 'side:4': 3000 }
    const mould = judged({
      drawing: long,
      taped: { ...taped, 'diagonal:1-3': across, 'diagonal:2-4': across },
    })
    expect(mould.corners.unknown).toEqual(['corners: no confirmed set-up tolerance beyond 10 m'])
    expect(mould.cast.every(({ verdict }) => verdict === 'pass')).toBe(true)
  })

  it('every step replays', () => {
    const mould = judged({ taped: { ...TAPED, 'side:3': 6003, 'diagonal:1-3': 6711 } })
    for (const check of [mould.readings, mould.corners, mould.square, ...mould.cast])
      for (const step of check?.working ?? []) {
        const again = replay(step)
        if (again !== null) expect(again).toBeCloseTo(Number(step.result), 9)
      }
  })
})
