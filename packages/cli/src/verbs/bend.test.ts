import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

const NZ = 'bend --diameter 16 --grade 500E --role main --inside 80 --code nz'

function bend(line: string) {
  return cli(line.split(' '))
}

describe('castwright bend', () => {
  it('16 mm main bar on an 80 mm pin passes in New Zealand', async () => {
    const { code, json } = await bend(`${NZ} --json`)
    expect(code).toBe(0)
    expect(json()).toMatchObject({
      limit: 80,
      inside: 80,
      verdict: 'pass',
      source: { standard: 'NZS 3109:1997', clause: 'Table 3.1', status: 'seen' },
    })
  })

  it('79 mm fails with exit status 1', async () => {
    const { code, json } = await bend(`${NZ.replace('--inside 80', '--inside 79')} --json`)
    expect(code).toBe(1)
    expect(json()).toMatchObject({ limit: 80, verdict: 'fail' })
  })

  it('a plain tie bends tighter, a galvanised 20 mm bar wider', async () => {
    const tie = await bend(
      'bend --diameter 10 --grade 300E --role stirrup --inside 20 --plain --code nz --json',
    )
    expect(tie.json()).toMatchObject({ limit: 20, verdict: 'pass' })
    const coated = await bend(
      'bend --diameter 20 --grade 500N --role main --inside 160 --galvanised --code au --json',
    )
    expect(coated.json()).toMatchObject({ limit: 160, verdict: 'pass' })
  })

  it('outside a table the limit is null and named', async () => {
    for (const line of [
      'bend --diameter 25 --grade 500E --role stirrup --inside 200 --code nz --json',
      'bend --diameter 28.65 --grade 60 --role stirrup --inside 300 --code us --json',
      'bend --diameter 16 --grade B500B --role main --inside 100 --galvanised --code eu --json',
    ]) {
      const { code, json } = await bend(line)
      expect(code, line).toBe(1)
      expect(json(), line).toMatchObject({ limit: null, verdict: 'unknown' })
      expect((json().unknown as string[]).length, line).toBeGreaterThan(0)
    }
  })

  it('a bar colder than the family allows fails; a silent family only notes it', async () => {
    expect((await bend(`${NZ} --temperature 4.9 --json`)).json()).toMatchObject({ verdict: 'fail' })
    expect((await bend(`${NZ} --temperature 5 --json`)).json()).toMatchObject({ verdict: 'pass' })
    const eu = 'bend --diameter 16 --grade B500B --role main --inside 64 --code eu --json --temperature'
    expect((await bend(`${eu} -5`)).json()).toMatchObject({ verdict: 'pass' })
    expect((await bend(`${eu} -5.1`)).json()).toMatchObject({ verdict: 'fail' })
    const au = await bend(
      'bend --diameter 16 --grade 500N --role main --inside 80 --temperature -20 --code au --json',
    )
    expect(au.code).toBe(0)
    expect((au.json().notes as string[])[0]).toMatch(/no lowest temperature/)
  })

  it('us bars go by the bar, within 0.5 mm', async () => {
    const number8 = await bend('bend --diameter 25 --grade 60 --role main --inside 152.4 --code us --json')
    expect(number8.json()).toMatchObject({ verdict: 'pass' })
    expect(number8.json().limit).toBeCloseTo(152.4, 9)
    const none = await bend('bend --diameter 12 --grade 60 --role main --inside 152 --code us --json')
    expect(none.json()).toMatchObject({ limit: null, verdict: 'unknown' })
  })

  it('--explain gives the working, --help the options', async () => {
    const { out } = await bend(`${NZ} --explain`)
    expect(out).toMatch(/n d/)
    expect(out).toMatch(/NZS 3109:1997 Table 3.1 \(seen\)/)
    const asJson = await bend(`${NZ} --explain --json`)
    expect(asJson.json().working).toHaveLength(1)
    const help = await bend('bend --help')
    expect(help.code).toBe(0)
    expect(help.out).toMatch(/--galvanised/)
  })

  it.each([
    ['bend --grade 500E --role main --inside 80 --code nz', 'diameter'],
    ['bend --diameter -16 --grade 500E --role main --inside 80 --code nz', 'diameter'],
    ['bend --diameter 16 --grade B500B --role main --inside 80 --code nz', 'grade'],
    ['bend --diameter 16 --grade 500E --role tie --inside 80 --code nz', 'role'],
    ['bend --diameter 16 --grade 500E --role main --inside 0 --code nz', 'inside'],
    ['bend --diameter 16 --grade 500E --role main --inside 80', 'code'],
    ['bend --diameter 16 --grade 500E --role main --inside 80 --code fr', 'code'],
    ['bend --diameter 16 --grade 500E --role main --inside 80 --code nz --temperature warm', 'temperature'],
  ])('refuses %s', async (line, field) => {
    const { code, err, out } = await bend(line)
    expect(code).toBe(2)
    expect(err).toContain(field)
    expect(out).toBe('')
  })
})
