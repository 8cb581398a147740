import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

const LOG = { 'night.csv': '\uFEFFhours,celsius\r\n0,10\r\n10,40\r\n' }

describe('castwright setting', () => {
  it('gives the initial set at one temperature', async () => {
    const ran = await cli(['setting', '--initial', '5', '--reference', '23', '--temperature', '15', '--json'])
    expect(ran.code).toBe(0)
    expect(ran.json().initialSet).toBeCloseTo(7.8497, 4)
    expect((ran.json().assumed as { field: string; value: number }[])[0]).toMatchObject({
      field: 'activation',
      value: 40000,
    })
    expect(ran.json()).not.toHaveProperty('final')
  })

  it('follows a log, byte-order mark and CRLF included, and the final set where asked', async () => {
    const ran = await cli(
      ['setting', 'night.csv', '--initial', '5', '--reference', '23', '--final', '7', '--json'],
      LOG,
    )
    expect(ran.code).toBe(0)
    expect(ran.json().initialSet).toBeCloseTo(6.0111, 4)
    expect(ran.json().final as number).toBeGreaterThan(6.5)
  })

  it('a log that ends before the set: not known', async () => {
    const ran = await cli(['setting', 'night.csv', '--initial', '30', '--reference', '23', '--json'], LOG)
    expect(ran.code).toBe(1)
    expect(ran.json()).toMatchObject({ initialSet: null })
    expect(String(ran.json().unknown)).toContain('the log ends before')
  })

  it('shows the working', async () => {
    const ran = await cli(['setting', '--initial', '5', '--reference', '23', '--temperature=-5', '--explain'])
    expect(ran.code).toBe(0)
    expect(ran.out).toContain('t_r / exp(')
  })

  it.each<[string, string[], string]>([
    ['no initial set', ['--reference', '23', '--temperature', '15'], '--initial'],
    ['an initial set of 0', ['--initial', '0', '--reference', '23', '--temperature', '15'], '--initial'],
    ['no reference', ['--initial', '5', '--temperature', '15'], '--reference'],
    ['neither log nor temperature', ['--initial', '5', '--reference', '23'], '--temperature'],
    ['both', ['night.csv', '--initial', '5', '--reference', '23', '--temperature', '15'], '--temperature'],
    ['a log of another form', ['bad.csv', '--initial', '5', '--reference', '23'], 'bad.csv'],
    ['no such log', ['none.csv', '--initial', '5', '--reference', '23'], 'none.csv'],
    [
      'an activation below 0',
      ['--initial', '5', '--reference', '23', '--temperature', '15', '--activation=-1'],
      '--activation',
    ],
    [
      'a final set before the initial one',
      ['--initial', '5', '--reference', '23', '--temperature', '15', '--final', '4'],
      '--final',
    ],
  ])('%s: exit 2, and the message names it', async (_, options, field) => {
    const ran = await cli(['setting', ...options, '--json'], { ...LOG, 'bad.csv': 'time,temp\n0,10\n' })
    expect(ran.code).toBe(2)
    expect(ran.err).toContain(field)
    expect(ran.out).toBe('')
  })
})
