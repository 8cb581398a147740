import { describe, expect, it } from 'vitest'
import { emptyPanelFacts } from './empty-facts.ts'
import { recorded } from './example-facts.ts'
import type { PanelFacts, Recorded } from './facts.ts'
import { leftRows } from './left-row.ts'
import { planInputOf } from './plan-input.ts'

const said = (value: unknown, revision = 'B'): Recorded => recorded(value, { revision })

function facts(values: Readonly<Record<string, Recorded>>): PanelFacts {
  const empty = emptyPanelFacts({ job: 'J', mark: 'W1' })
  return {
    ...empty,
    revision: 'B',
    steps: { ...empty.steps, place: { ...empty.steps.place, values } },
  }
}

describe('the longest wait that walks recorded', () => {
  it('is the worst of all zones and devices; over 15 min it fails and names the zone', () => {
    const [row] = leftRows(
      facts({
        'left:0-1500:a': said(4.2),
        'left:1500-3000:a': said(15.1),
        'left:1500-3000:b': said(18),
      }),
    )
    expect(row).toMatchObject({ id: 'left-too-long:18', verdict: 'fail', demand: 18, limit: 15 })
    expect(row?.note).toContain('1500-3000 mm')
    expect(row?.note).not.toContain('0-1500,')
    expect(row?.rests).toHaveLength(3)
  })

  it('of exactly 15 min passes', () => {
    expect(leftRows(facts({ 'left:0-1500:a': said(15) }))[0]?.verdict).toBe('pass')
  })

  it('is no row where nobody recorded a walk, nor from an older revision', () => {
    expect(leftRows(facts({ 'zone:0-1500': said(true) }))).toEqual([])
    expect(leftRows(facts({ 'left:0-1500:a': said(40, 'A') }))).toEqual([])
  })
})

describe('input of a plan from the record', () => {
  const drawing = { code: 'eu', mark: 'W1' } as unknown as NonNullable<PanelFacts['drawing']>
  const yard = { yard: null, limits: {} }

  it('takes stand and heads of the revision in force alone', () => {
    const now = facts({ stand: said({ x: 1, y: 2 }), vibrators: said({ V56: 2 }, 'A') })
    expect(planInputOf({ ...now, drawing }, yard)?.placing).toEqual({
      stand: [1, 2],
      vibrators: null,
      faults: [],
    })
  })

  it('is none without a drawing or a code family', () => {
    expect(planInputOf(facts({}), yard)).toBeNull()
    expect(planInputOf({ ...facts({}), drawing: { ...drawing, code: undefined } }, yard)).toBeNull()
  })
})
