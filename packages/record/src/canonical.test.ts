import { InputError } from '@castwright/engine/working'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { canonicalBytes, canonicalText } from './canonical.ts'

const SEED = 8785

function double(hex: string): number {
  return new DataView(
    Uint8Array.from(hex.match(/../g) ?? [], (byte) => Number.parseInt(byte, 16)).buffer,
  ).getFloat64(0)
}

describe('RFC 8785 text', () => {
  // RFC 8785, appendix B, number samples (from memory; the doubles read again with a second method).
  it.each([
    ['0000000000000000', '0'],
    ['8000000000000000', '0'],
    ['0000000000000001', '5e-324'],
    ['8000000000000001', '-5e-324'],
    ['7fefffffffffffff', '1.7976931348623157e+308'],
    ['ffefffffffffffff', '-1.7976931348623157e+308'],
    ['4340000000000000', '9007199254740992'],
    ['c340000000000000', '-9007199254740992'],
    ['4430000000000000', '295147905179352830000'],
    ['44b52d02c7e14af5', '9.999999999999997e+22'],
    ['44b52d02c7e14af6', '1e+23'],
    ['44b52d02c7e14af7', '1.0000000000000001e+23'],
    ['444b1ae4d6e2ef4e', '999999999999999700000'],
    ['444b1ae4d6e2ef4f', '999999999999999900000'],
    ['444b1ae4d6e2ef50', '1e+21'],
    ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
    ['3eb0c6f7a0b5ed8d', '0.000001'],
    ['41b3de4355555553', '333333333.3333332'],
    ['41b3de4355555554', '333333333.33333325'],
    ['41b3de4355555555', '333333333.3333333'],
    ['41b3de4355555556', '333333333.3333334'],
    ['41b3de4355555557', '333333333.33333343'],
    ['becbf647612f3696', '-0.0000033333333333333333'],
    ['43143ff3c1cb0959', '1424953923781206.2'],
  ])('writes the double %s as %s', (hex, text) => {
    expect(canonicalText(double(hex))).toBe(text)
  })

  it('writes the example of section 3.2.2 as section 3.2.4 gives it', () => {
    const input = {
      numbers: [Number('333333333.33333329'), 1e30, 4.5, 2e-3, 0.000000000000000000000000001],
      string: '\u20ac$\u000F\u000aA\'\u0042\u0022\u005c\\"/',
      literals: [null, true, false],
    }
    expect(canonicalText(input)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    )
  })

  it('sorts keys by their UTF-16 units, as in section 3.2.3', () => {
    const input = {
      '\u20ac': 'Euro Sign',
      '\r': 'Carriage Return',
      '\ufb33': 'Hebrew Letter Dalet With Dagesh',
      '1': 'One',
      '\ud83d\ude00': 'Emoji: Grinning Face',
      '\u0080': 'Control',
      '\u00f6': 'Latin Small Letter O With Diaeresis',
    }
    expect(
      Object.values(JSON.parse(canonicalText(input).replaceAll('"1":', '"\\u00001":')) as object),
    ).toEqual([
      'Carriage Return',
      'One',
      'Control',
      'Latin Small Letter O With Diaeresis',
      'Euro Sign',
      'Emoji: Grinning Face',
      'Hebrew Letter Dalet With Dagesh',
    ])
  })

  it('sorts keys that look like numbers as text', () => {
    expect(canonicalText({ 10: 1, 9: 2, a: 3 })).toBe('{"10":1,"9":2,"a":3}')
  })

  it('gives UTF-8 bytes', () => {
    expect([...canonicalBytes('é€')]).toEqual([0x22, 0xc3, 0xa9, 0xe2, 0x82, 0xac, 0x22])
  })

  it.each<[string, unknown, string]>([
    ['NaN', { a: [1, Number.NaN] }, 'a[1]'],
    ['Infinity', { a: Number.POSITIVE_INFINITY }, 'a'],
    ['minus Infinity', [Number.NEGATIVE_INFINITY], '[0]'],
    ['a lone high surrogate', { a: '\ud800' }, 'a'],
    ['a lone low surrogate', { a: 'x\udc00y' }, 'a'],
    ['a lone surrogate in a key', { a: { '\udead': 1 } }, 'a.\udead'],
    ['a field without a value', { a: undefined }, 'a'],
    ['a date', { a: new Date(0) }, 'a'],
    ['a function', { a: () => 1 }, 'a'],
    ['a bigint', { a: 1n }, 'a'],
    ['nothing', undefined, ''],
  ])('refuses %s and names the place', (_, value, path) => {
    try {
      canonicalText(value)
      expect.unreachable('it was written')
    } catch (error) {
      expect(error).toBeInstanceOf(InputError)
      expect((error as InputError).issues[0]?.path).toBe(path)
    }
  })

  it(`says the same of a value whatever order its keys were made in, and reads back to it (seed ${SEED})`, () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 5 }), (value) => {
        const text = canonicalText(value)
        const back = JSON.parse(text) as unknown
        expect(canonicalText(back)).toBe(text)
        expect(canonicalText(reversed(back))).toBe(text)
        expect(back).toEqual(JSON.parse(JSON.stringify(value)))
        expect(text).not.toMatch(/[\n\t]/)
      }),
      { seed: SEED, numRuns: 500 },
    )
  })
})

function reversed(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(reversed)
  if (value === null || typeof value !== 'object') return value
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, inner]) => [key, reversed(inner)]),
  )
}
