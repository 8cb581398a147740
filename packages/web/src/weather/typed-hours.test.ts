import { describe, expect, it } from 'vitest'
import { typedHours } from './typed-hours.ts'

const at = (text: string): number => Date.parse(`2026-09-16T${text}:00.000Z`)
const row = (text: string, air: number | null, wind: number | null = null) => ({
  at: at(text),
  air,
  wind,
  humidity: null,
})

describe('typed hours', () => {
  it('are filled hour by hour, straight between what was typed', () => {
    const found = typedHours([row('22:00', 8), row('18:30', 15, 10)])
    if (typeof found === 'string') throw new Error(found)
    expect(found.map(({ at: when }) => new Date(when).toISOString().slice(11, 16))).toEqual([
      '18:30',
      '19:00',
      '20:00',
      '21:00',
      '22:00',
    ])
    // By hand: 7 K in 3.5 h are 2 K an hour.
    expect(found.map(({ air }) => air)).toEqual([15, 14, 12, 10, 8])
    expect(found.map(({ wind }) => wind)).toEqual([10, null, null, null, null])
  })

  it('say what is wrong', () => {
    expect(typedHours([row('18:00', 1)])).toMatch(/two times/)
    expect(typedHours([row('18:00', 1), row('18:00', 2)])).toMatch(/twice/)
    expect(typedHours([row('01:00', 1), row('18:00', 2)])).toMatch(/12 h apart/)
  })
})
