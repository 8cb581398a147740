import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

describe('castwright identify', () => {
  it('mill, number, type and grade of a us bar', async () => {
    const { code, json } = await cli(['identify', '--family', 'us', '--seen', 'N', '5', 'S', '60', '--json'])
    expect(code).toBe(0)
    expect(json()).toMatchObject({
      candidates: [{ grade: '60', process: 'carbon steel, ASTM A615' }],
      verdict: 'pass',
    })
  })

  it('two longitudinal lines are grade 75, three are 80 or 100', async () => {
    const two = await cli(['identify', '--family', 'us', '--seen', 'two longitudinal lines', '--json'])
    expect(two.json()).toMatchObject({ candidates: [{ grade: '75' }], verdict: 'pass' })
    const three = await cli(['identify', '--family', 'us', '--seen', '3', 'lines', '--json'])
    expect(three.code).toBe(1)
    expect((three.json().candidates as { grade: string }[]).map(({ grade }) => grade)).toEqual(['80', '100'])
  })

  it('five normal ribs: B500 from the United Kingdom, Ireland or Iceland, class not known', async () => {
    const { code, json } = await cli(['identify', '--family', 'eu', '--seen', '5', '--json'])
    expect(code).toBe(1)
    expect(json().verdict).toBe('unknown')
    expect(JSON.stringify(json().candidates)).toMatch(/United Kingdom, Ireland or Iceland/)
  })

  it('letters and figures of a New Zealand bar; a bar without a mark fails', async () => {
    const read = await cli(['identify', '--family', 'nz', '--seen', 'PS', '500E', '--json'])
    expect(read.json()).toMatchObject({ candidates: [{ grade: '500E' }], verdict: 'pass' })
    const none = await cli(['identify', '--family', 'nz', '--seen', 'none', '--json'])
    expect(none.code).toBe(1)
    expect(none.json()).toMatchObject({ candidates: [], verdict: 'fail' })
    const dots = await cli(['identify', '--family', 'au', '--seen', 'dot', 'dash', 'dot', '--json'])
    expect(dots.json()).toMatchObject({ candidates: [], verdict: 'unknown' })
  })

  it('--explain names the marking rule, --help the options', async () => {
    const { out } = await cli(['identify', '--family', 'us', '--seen', 'S', '60', '--explain'])
    expect(out).toMatch(/CRSI/)
    expect((await cli(['identify', '--help'])).out).toMatch(/--seen/)
  })

  it.each([
    [['--seen', 'S', '60'], 'family'],
    [['--family', 'fr', '--seen', 'S'], 'family'],
    [['--family', 'us'], 'seen'],
    [['--family', 'us', '--seen', ''], 'seen'],
    [['--family', 'us', '--seen', '...'], 'seen'],
    [['--family', 'us', '--marks', 'S'], 'marks'],
  ])('refuses %j', async (args, field) => {
    const { code, err, out } = await cli(['identify', ...args])
    expect(code).toBe(2)
    expect(err).toContain(field)
    expect(out).toBe('')
  })
})
