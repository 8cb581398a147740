import { describe, expect, it } from 'vitest'
import type { YardAgent } from '../yard/yard.ts'
import { chooseAgent, sheetRate } from './agent-choice.ts'
import { filmThickness } from './release-agent.ts'

const cream: YardAgent = {
  mark: 'C',
  kind: 'water-in-oil cream',
  rates: [
    { face: 'ply', rate: 18 },
    { face: 'steel', rate: 25 },
  ],
}
const thin: YardAgent = {
  mark: 'R',
  kind: 'reactive',
  rates: [{ face: 'steel', rate: 42 }],
  dryingMinutes: 10,
}
const oil: YardAgent = { mark: 'N', kind: 'neat oil', rates: [{ face: 'steel', rate: 22 }] }

describe('release agent for a mould face', () => {
  it('takes the product’s sheet before the table', () => {
    expect(chooseAgent('steel, tilting', ['3'], [thin])).toMatchObject({
      agent: 'R',
      rate: 42,
      dryingMinutes: 10,
      source: { status: 'entered' },
    })
    expect(chooseAgent('steel', ['1'], [])).toMatchObject({ agent: null, rate: 30 })
  })

  // Common practice, no source: a water-in-oil cream is not used on steel.
  it('does not put a cream on steel, and says why', () => {
    const found = chooseAgent('steel', ['1'], [cream])
    expect(found).toMatchObject({ agent: null, rate: null })
    expect(found.against).toEqual(['C: a water-in-oil cream does not go on steel'])
    expect(chooseAgent('coated plywood', ['4'], [cream]).agent).toBe('C')
  })

  it('takes a reacting film before neat oil, and neat oil only with its caution', () => {
    expect(chooseAgent('steel', ['1'], [oil, thin]).agent).toBe('R')
    expect(chooseAgent('steel', ['1'], [oil])).toMatchObject({
      agent: 'N',
      caution: 'Neat oil leaves blowholes on faces that are seen.',
    })
  })

  it('is not known where products are listed and none has a rate for the face', () => {
    expect(chooseAgent('rubber', ['9'], [thin])).toMatchObject({ agent: null, rate: null })
  })

  it('reads the longest face word that fits', () => {
    const two: YardAgent = {
      ...thin,
      rates: [
        { face: 'steel', rate: 42 },
        { face: 'steel, tilting', rate: 38 },
      ],
    }
    expect(sheetRate(two, 'Steel, tilting')).toBe(38)
  })

  // Computed, second method: 1 L over 40 m² stands 10⁻³ m³ / 40 m² high.
  it.each([
    [40, 25],
    [20, 50],
  ])('%i m²/L is a film of %i µm', (rate, film) => expect(filmThickness(rate)).toBeCloseTo(film, 9))
})
