import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

const EU = 'lap --diameter 12 --yield 500 --concrete 25 --cover 35 --gap 150 --below 100 --code eu'

function lap(line: string) {
  return cli(line.split(' '))
}

describe('castwright lap', () => {
  it('12 mm in C25 with 35 mm cover: 345.1 and 517.6 mm', async () => {
    const { code, json } = await lap(`${EU} --json`)
    expect(code).toBe(0)
    expect(json().development).toBeCloseTo(345.1, 1)
    expect(json().length).toBeCloseTo(517.6, 1)
    expect(json().source).toMatchObject({ standard: 'EN 1992-1-1:2004' })
    expect(json().factors).toContainEqual({ symbol: 'α6', value: 1.5 })
  })

  it('what is not given is listed as assumed, and changes with --below', async () => {
    const bare = EU.replace(' --below 100', '')
    const { json } = await lap(`${bare} --json`)
    const fields = (json().assumed as { field: string }[]).map(({ field }) => field)
    expect(fields).toEqual(['below', 'share', 'apart', 'bond'])
    const deep = await lap(`${EU.replace('--below 100', '--below 251')} --json`)
    expect(deep.json().development).toBeCloseTo(493.0, 1)
    const said = await lap(`${EU} --bond poor --json`)
    expect(said.json().development).toBeCloseTo(493.0, 1)
  })

  it('each family has its own rule', async () => {
    const au = await lap('lap --diameter 12 --yield 500 --concrete 25 --cover 20 --gap 200 --code au --json')
    expect(au.json()).toMatchObject({ development: 450, length: 562.5 })
    const nz = await lap('lap --diameter 12 --yield 500 --concrete 30 --cover 18 --gap 200 --code nz --json')
    expect(nz.json().development).toBeCloseTo(547.72, 2)
    const us = await lap(
      'lap --diameter 15.875 --yield 413.6854 --concrete 34.47379 --cover 19.05 --gap 300 --code us --json',
    )
    expect(us.json().development).toBeCloseTo(18.72 * 25.4, 0)
    expect(us.json().length).toBeCloseTo(24.33 * 25.4, 0)
  })

  it('what a code leaves to special rules is not known', async () => {
    for (const line of [
      'lap --diameter 40 --yield 500 --concrete 30 --cover 50 --gap 150 --code eu --json',
      'lap --diameter 43 --yield 420 --concrete 30 --cover 50 --gap 150 --code us --json',
    ]) {
      const { code, json } = await lap(line)
      expect(code, line).toBe(1)
      expect(json(), line).toMatchObject({ development: null, length: null })
      expect((json().unknown as string[])[0], line).toMatch(/diameter/)
    }
    const apart = await lap(
      'lap --diameter 12 --yield 500 --concrete 30 --cover 18 --gap 200 --apart 80 --code nz --json',
    )
    expect(apart.code).toBe(1)
    expect(apart.json().length).toBeNull()
    expect(apart.json().development).toBeCloseTo(547.72, 2)
  })

  it('--explain prints each step with clause', async () => {
    const { out } = await lap(`${EU} --explain`)
    expect(out).toMatch(/lb,rqd/)
    expect(out).toMatch(/8\.7\.3\(1\)/)
    expect((await lap('lap --help')).out).toMatch(/--apart/)
  })

  it.each([
    ['lap --yield 500 --concrete 25 --cover 35 --gap 150 --code eu', 'diameter'],
    [EU.replace('--yield 500', '--yield 0'), 'yield'],
    [EU.replace('--concrete 25', '--concrete C25'), 'concrete'],
    [EU.replace('--cover 35', '--cover -1'), 'cover'],
    [EU.replace('--gap 150', ''), 'gap'],
    [`${EU} --share 101`, 'share'],
    [`${EU} --bond fair`, 'bond'],
    [`${EU} --apart -5`, 'apart'],
    [EU.replace('--code eu', ''), 'code'],
  ])('refuses %s', async (line, field) => {
    const { code, err, out } = await lap(line.trim().replace(/ +/g, ' '))
    expect(code).toBe(2)
    expect(err).toContain(field)
    expect(out).toBe('')
  })
})

describe('castwright lap: coated bar and compression', () => {
  const US = 'lap --diameter 25.4 --yield 413.7 --concrete 27.6 --cover 50 --gap 100 --code us --json'

  it('epoxy lengthens a lap, and is not known where no rule is', async () => {
    const [black, coated] = [await lap(US), await lap(`${US} --epoxy`)]
    expect(coated.json().length as number).toBeCloseTo(1.5 * (black.json().length as number), 6)
    const eu = await lap(`${EU} --epoxy --json`)
    expect(eu.code).toBe(1)
    expect(eu.json()).toMatchObject({ length: null, unknown: [expect.stringMatching(/^epoxy/)] })
  })

  it('No. 8 in compression laps 30 in; New Zealand has no confirmed lap', async () => {
    expect((await lap(`${US} --compression`)).json().length as number).toBeCloseTo(30 * 25.4, 0)
    const nz = await lap(
      'lap --diameter 12 --yield 500 --concrete 30 --cover 30 --gap 150 --code nz --compression --json',
    )
    expect(nz.code).toBe(1)
    expect(nz.json()).toMatchObject({ length: null, unknown: [expect.stringMatching(/^length/)] })
  })
})
