import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

const L = 'cutlength --diameter 12 --inside 60 --legs 600,300'

function cutlength(line: string) {
  return cli(line.split(' '))
}

describe('castwright cutlength', () => {
  it('12 mm, 60 mm pin, 600 × 300: 872.55 mm, the bend takes off 27.45', async () => {
    const { code, json } = await cutlength(`${L} --json`)
    expect(code).toBe(0)
    expect(json().length).toBeCloseTo(872.55, 2)
    expect((json().deductions as number[])[0]).toBeCloseTo(27.45, 2)
    expect(json().assumed).toEqual([
      { field: 'turns', value: 90, unit: '°', why: 'not given: a right angle is meant' },
    ])
  })

  it('one turn for all bends, or one each, hooks of 135 and 180° included', async () => {
    const same = await cutlength('cutlength --diameter 16 --inside 64 --legs 500,1200,500 --turns 90 --json')
    expect(same.json().length).toBeCloseTo(2133.7, 1)
    const tie = await cutlength(
      'cutlength --diameter 10 --inside 40 --legs 110,300,500,300,500,110 --turns 135,90,90,90,135 --json',
    )
    expect(tie.json().length).toBeCloseTo(1755.6, 1)
    const hook = await cutlength('cutlength --diameter 12 --inside 60 --legs 1000,90 --turns 180 --json')
    // 1000 − 42 + 90 − 42 + π · 36, by hand
    expect(hook.json().length).toBeCloseTo(1006 + Math.PI * 36, 9)
  })

  it('--explain prints each bend and the sum', async () => {
    const { out } = await cutlength(`${L} --explain`)
    expect(out).toMatch(/Δ1/)
    expect(out).toMatch(/ΣΔ/)
    expect((await cutlength('cutlength --help')).out).toMatch(/--turns/)
  })

  it.each([
    ['cutlength --inside 60 --legs 600,300', 'diameter'],
    ['cutlength --diameter 12 --inside 60', 'legs'],
    ['cutlength --diameter 12 --inside 60 --legs 600,x', 'legs'],
    ['cutlength --diameter 12 --inside 60 --legs 600,30', 'legs[1]'],
    ['cutlength --diameter 12 --legs 600,300', 'inside'],
    [`${L} --turns 181`, 'turns'],
    [`${L} --turns 0`, 'turns'],
    ['cutlength --diameter 12 --inside 60 --legs 600,300,200,100 --turns 90,45', 'turns'],
  ])('refuses %s', async (line, field) => {
    const { code, err, out } = await cutlength(line)
    expect(code).toBe(2)
    expect(err).toContain(field)
    expect(out).toBe('')
  })
})

describe('castwright cutlength: shape codes', () => {
  const run = async (line: string) => cli(`cutlength ${line} --json`.split(' '))

  it('one bend has its label, with the standard’s own length beside the true one', async () => {
    const { json } = await run('--diameter 12 --inside 48 --legs 600,400')
    expect(json().shape).toMatchObject({ bs8666: '11', iso3766: '11', formulaLength: 976 })
    expect(json().length as number).toBeCloseTo(975.1, 1)
  })

  it('more bends have one where their sides are given', async () => {
    const legs = '--diameter 12 --inside 48 --legs 600,400,300'
    expect((await run(legs)).json().shape).toBeUndefined()
    expect((await run(`${legs} --sides l,l`)).json().shape).toMatchObject({ bs8666: '21' })
    expect((await run(`${legs} --sides l,r`)).json().shape).toMatchObject({ bs8666: '23' })
    const other = await run(`${legs.replace('48', '60')} --sides r,r`)
    expect(other.json().shape).toMatchObject({ bs8666: '99', formulaLength: null })
  })

  it.each(['l', 'l,x', 'l,l,l', 'L,L', ''])('sides %j are refused', async (sides) => {
    const { code, err } = await run(`--diameter 12 --inside 48 --legs 600,400,300 --sides=${sides}`)
    expect(code).toBe(2)
    expect(err).toMatch(/--sides.*one for each of 2 bends/)
  })
})
