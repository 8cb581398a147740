import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { severalCranes } from '../../codes/au/qld-mobile-crane-code/several-cranes.ts'
import { modeFactor } from '../../codes/eu/en818-4-1996/mode-factor.ts'
import { replay } from '../../working/replay.ts'
import type { Worked } from '../../working/worked.ts'
import { craneLoad } from './crane-load.ts'
import { turning, turningForce, twoHooks } from './turning.ts'

const FACE = { load: 67.5, thickness: 150, centre: 3000, pick: 4200, on: 'face' } as const
const EDGE = { ...FACE, pick: 6000, on: 'edge' } as const

function value<T>(found: Worked<T>): T {
  if (!found.known) throw new Error(found.gaps.join('; '))
  return found.value
}

describe('turning about an edge', () => {
  it('hook and edge are in balance about the corner, at every angle (seed shown on failure)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 84, noNaN: true }),
        fc.integer({ min: 80, max: 300 }),
        fc.integer({ min: 3100, max: 6000 }),
        fc.boolean(),
        (angle, thickness, pick, onFace) => {
          const on = onFace ? 'face' : 'edge'
          const found = value(turningForce({ load: 67.5, thickness, centre: 3000, pick, on, angle }))
          if (found.free) return
          const radians = (angle * Math.PI) / 180
          const above = onFace ? thickness : thickness / 2
          const arm = pick * Math.cos(radians) - above * Math.sin(radians)
          const weight = 3000 * Math.cos(radians) - (thickness / 2) * Math.sin(radians)
          expect((found.force * arm) / (67.5 * weight)).toBeCloseTo(1, 9)
          expect(Math.hypot(found.normal, found.along)).toBeCloseTo(found.force, 9)
          expect(found.force).toBeLessThanOrEqual(67.5)
        },
      ),
    )
  })

  it('never more on the hook than the load; a face insert’s shear comes up to all of it', () => {
    const { cases, worst, leaves, balance } = value(turning(FACE))
    for (const { force } of cases) expect(force).toBeLessThanOrEqual(67.5)
    expect(worst.along.along).toBe(67.5)
    expect(leaves).toBeLessThan(balance)
    expect(cases.at(-1)).toEqual({ angle: 90, force: 67.5, normal: 0, along: 67.5, free: true })
  })

  it('picked at its edge it comes to its balance on the ground, and is not known beyond', () => {
    const { leaves, balance, worst } = value(turning(EDGE))
    expect(leaves).toBeNull()
    expect(worst.normal.angle).toBe(0)
    expect(worst.normal.normal).toBeCloseTo(33.75, 9)
    const past = turningForce({ ...EDGE, angle: balance + 0.1 })
    expect(past.known ? '' : past.gaps.join()).toContain('fall through')
    expect(turningForce({ ...EDGE, angle: balance - 0.1 }).known).toBe(true)
  })

  it('picked this side of the centre of gravity the edge leaves the ground at once', () => {
    expect(value(turning({ ...FACE, pick: 2000 })).leaves).toBe(0)
    expect(value(turningForce({ ...FACE, pick: 2000, angle: 0 }))).toMatchObject({ free: true, force: 67.5 })
  })

  it.each([
    ['load', { load: 0 }],
    ['thickness', { thickness: Number.NaN }],
    ['centre of gravity', { centre: -1 }],
    ['picks', { pick: Number.POSITIVE_INFINITY }],
  ])('refuses an impossible %s', (name, change) => {
    for (const found of [turning({ ...FACE, ...change }), turningForce({ ...FACE, ...change, angle: 10 })]) {
      expect(found.known ? '' : found.gaps.join()).toContain(name)
    }
  })

  it('refuses an angle beyond upright, hooks in the wrong order, a line that would push', () => {
    expect(turningForce({ ...FACE, angle: 90.1 }).known).toBe(false)
    expect(turningForce({ ...FACE, angle: Number.NaN }).known).toBe(false)
    const hooks = { load: 67.5, thickness: 150, centre: 3000, head: 6000, foot: 1200, angle: 20 }
    expect(twoHooks({ ...hooks, angle: -1 }).known).toBe(false)
    expect(twoHooks({ ...hooks, foot: 6500 }).known).toBe(false)
    expect(twoHooks({ ...hooks, foot: 3600 }).known).toBe(false)
    expect(twoHooks({ ...hooks, foot: Number.NaN }).known).toBe(false)
  })
})

describe('cranes and slings', () => {
  it('refuse what is missing', () => {
    expect(severalCranes({ share: 0, cranes: 2 }).known).toBe(false)
    expect(severalCranes({ share: 10, cranes: 2.5 }).known).toBe(false)
    expect(craneLoad({ panel: 100, block: -1, slings: 0, beam: 0 }).known).toBe(false)
    expect(craneLoad({ panel: Number.NaN, block: 0, slings: 0, beam: 0 }).known).toBe(false)
    expect(modeFactor({ legs: 2, angle: Number.NaN }).known).toBe(false)
  })
})

it('every printed formula gives its printed result', () => {
  const all: Worked<unknown>[] = [
    ...[0, 30, 75, 90].flatMap((angle) => [
      turningForce({ ...FACE, angle }),
      twoHooks({ load: 67.5, thickness: 150, centre: 3000, head: 6000, foot: 1200, angle }),
    ]),
    turningForce({ ...EDGE, angle: 20 }),
    turning(FACE),
    turning(EDGE),
    severalCranes({ share: 3375, cranes: 3 }),
    craneLoad({ panel: 7087.5, block: 450, slings: 150, beam: 120 }),
    modeFactor({ legs: 4, angle: 30 }),
  ]
  for (const found of all) {
    if (!found.known) throw new Error(found.gaps.join('; '))
    for (const step of found.working) {
      const again = replay(step)
      if (again === null) continue
      const size = Math.max(1e-9, Math.abs(step.result as number))
      expect(Math.abs(again - (step.result as number)) / size, step.formula).toBeLessThan(1e-9)
    }
  }
})
