import { describe, expect, it } from 'vitest'
import { InputError } from '../working/issue.ts'
import { parseYard } from './yard.ts'

const yard = (part: object): object => ({
  format: 'castwright.yard/1',
  name: 'T',
  code: 'eu',
  timezone: 'UTC',
  ...part,
})
const bed = (under: object): object => yard({ beds: [{ mark: '1', length: 9000, width: 3000, under }] })

function issuesOf(value: object): string[] {
  try {
    parseYard(value)
    return []
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    return error.issues.map(({ path }) => path)
  }
}

describe('covers and what lies under a bed', () => {
  it('are read: a cover by resistance or by its layer, a bed held or heated', () => {
    expect(
      issuesOf(
        yard({
          covers: [
            { mark: 'mat', resistance: 0.5 },
            { mark: 'foam', thickness: 20, conductivity: 0.04 },
          ],
          covering: { cover: 'mat', off: '05:30' },
        }),
      ),
    ).toEqual([])
    expect(issuesOf(bed({ temperature: 40, layers: [] }))).toEqual([])
    expect(issuesOf(bed({ power: { watts: 200, from: 4, until: 10 }, film: 8, insulation: 1 }))).toEqual([])
  })

  it('are refused with the field named', () => {
    expect(issuesOf(yard({ covers: [{ mark: 'mat' }] }))).toEqual(['covers[0]'])
    expect(issuesOf(yard({ covers: [{ mark: 'mat', resistance: 1, thickness: 20 }] }))).toEqual(['covers[0]'])
    expect(issuesOf(yard({ covers: [{ mark: 'mat', thickness: 20 }] }))).toEqual(['covers[0]'])
    expect(issuesOf(yard({ covers: [], covering: { cover: 'mat' } }))).toEqual(['covering.cover'])
    expect(issuesOf(yard({ covering: { cover: 'mat', off: '5:30' } }))).toEqual(['covering.off'])
    expect(issuesOf(bed({ temperature: 40, power: { watts: 200, from: 4, until: 10 } }))).toEqual([
      'beds[0].under',
    ])
    expect(issuesOf(bed({ power: { watts: 200, from: 10, until: 4 } }))).toEqual([
      'beds[0].under.power.until',
    ])
    expect(
      issuesOf(
        bed({
          temperature: [
            [4, 20],
            [4, 40],
          ],
        }),
      ),
    ).toEqual(['beds[0].under.temperature[1]'])
  })
})
