import { describe, expect, it } from 'vitest'
import type { YardBed } from '../../yard/yard.ts'
import { underBed } from './under-bed.ts'

const bed = (part: Partial<YardBed>): YardBed => ({ mark: '1', length: 9000, width: 3000, ...part })

function bottomOf(part: Partial<YardBed>, hours = 24) {
  const found = underBed({ mark: '1', bed: bed(part), hours })
  if (!found.known) throw new Error(found.gaps.join())
  return found
}

describe('under a panel', () => {
  // U of one face, 1 / (Σ t/k + 1/h): 50 mm of 0.038 W/mK below a film of 10 is 0.706 W/m²K (computed, second method: by hand).
  it('insulation and film in series: 50 mm foam and a film of 10 are 0.706 W/m²K', () => {
    const { value, assumed } = bottomOf({ under: { layers: [], insulation: 0.05 / 0.038, film: 10 } })
    expect(value.film).toBeCloseTo(0.706, 3)
    expect(assumed).toBeUndefined()
  })

  it('a plate and sheltered air where nothing is given, plywood where the face says so', () => {
    expect(bottomOf({}).value).toMatchObject({ film: 7, layers: [{ thickness: 5, conductivity: 50 }] })
    expect(bottomOf({ face: 'coated plywood' }).value.layers?.[0]?.conductivity).toBe(0.13)
    expect(bottomOf({}).assumed?.map(({ field }) => field)).toEqual([
      'bed 1: face plate',
      'bed 1: film below',
    ])
    const none = underBed({ mark: null, bed: undefined, hours: 24 })
    expect(none.assumed?.map(({ field }) => field)).toContain('bed')
  })

  it('a bed held at a temperature, from mixing to the end of the run', () => {
    const under = { layers: [], temperature: [[4, 20] as [number, number], [6, 45] as [number, number]] }
    expect(bottomOf({ heated: true, under }).value.temperature).toEqual([
      [0, 20],
      [4, 20],
      [6, 45],
      [24, 45],
    ])
  })

  it('a bed heated between two hours', () => {
    const under = { layers: [], film: 7, power: { watts: 200, from: 4, until: 10 } }
    expect(bottomOf({ heated: true, under }).value.gain).toEqual([
      [0, 0],
      [4, 0],
      [4, 200],
      [10, 200],
      [10, 0],
      [25, 0],
    ])
  })
})
