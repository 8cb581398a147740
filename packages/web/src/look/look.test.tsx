import type { Source, Step } from '@castwright/engine/working'
import type { ReactElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { Button, Explain, Field, TitleBlock, VERDICT_WORD, VerdictMark } from './index.ts'

const words = (element: ReactElement): string =>
  renderToStaticMarkup(element)
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()

describe('a verdict', () => {
  it.each(['pass', 'fail', 'unknown'] as const)('%s is a shape of its own with its word', (verdict) => {
    const drawn = renderToStaticMarkup(<VerdictMark verdict={verdict} withWord />)
    expect(drawn).toContain(VERDICT_WORD[verdict])
    const others = (['pass', 'fail', 'unknown'] as const).filter((other) => other !== verdict)
    const shape = (markup: string): string =>
      /<svg.*<\/svg>/.exec(markup)?.[0].replace(/class="[^"]*"/, '') ?? ''
    for (const other of others) {
      expect(shape(drawn)).not.toBe(shape(renderToStaticMarkup(<VerdictMark verdict={other} withWord />)))
    }
  })

  it('without a word on the screen still has it for screen readers', () => {
    expect(words(<VerdictMark verdict="fail" />)).toBe('fails')
  })
})

describe('a shut button', () => {
  it('can be reached and read, and says that it does nothing', () => {
    const drawn = renderToStaticMarkup(<Button shut>Shut until both are known to pass</Button>)
    expect(drawn).toContain('aria-disabled="true"')
    expect(drawn).not.toMatch(/\sdisabled/)
  })
})

describe('a field', () => {
  it('ties label, unit, note and fault to its box', () => {
    const drawn = renderToStaticMarkup(
      <Field label="Slump" unit="mm" note="80 to 120" fault="found 7, expected 10 to 260" />,
    )
    const described = /aria-describedby="([^"]+)"/.exec(drawn)?.[1]?.split(' ') ?? []
    expect(described).toHaveLength(3)
    for (const id of described) expect(drawn).toContain(`id="${id}"`)
    expect(drawn).toContain('aria-invalid="true"')
    const box = /<input id="([^"]+)"/.exec(drawn)?.[1]
    expect(drawn).toContain(`for="${box}"`)
  })
})

describe('the working of a value', () => {
  const source: Source = { standard: 'EN 1992-1-1:2004', clause: '8.4.2(2)', status: 'from memory' }
  const step: Step = {
    symbol: 'm',
    formula: 'A L ρ / 10⁹',
    given: { A: 201.1, L: 6000, ρ: 7850 },
    result: 9.4718,
    unit: 'kg',
    source,
  }

  it('shows formula, numbers put in, result, unit, source and what was assumed', () => {
    const text = words(
      <Explain
        about="mass"
        working={[step]}
        source={source}
        assumed={[{ field: 'density', value: 2500, unit: 'kg/m³', why: 'the drawing gives none' }]}
      />,
    )
    expect(text).toContain('m = A L ρ / 10⁹ = 9.472 kg')
    expect(text).toContain('with A = 201.1, L = 6000, ρ = 7850')
    expect(text).toContain('EN 1992-1-1:2004, 8.4.2(2) (from memory: check before you rely on it)')
    expect(text).toContain('density = 2500 kg/m³: the drawing gives none')
  })
})

describe('the title block', () => {
  it('keeps the order mark, step, then the cells as given', () => {
    const text = words(
      <TitleBlock
        mark="W-17"
        step="Step 10 of 14: strip"
        cells={[
          { label: 'Size, m', value: '6.0 × 3.0' },
          { label: 'Mass', value: '5.80 t' },
          { label: 'Cast', value: 'Mon 15:10' },
        ]}
      />,
    )
    expect(text).toBe('W-17 Step 10 of 14: strip Size, m 6.0 × 3.0 Mass 5.80 t Cast Mon 15:10')
  })
})
