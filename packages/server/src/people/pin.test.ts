import { describe, expect, it } from 'vitest'
import { hashPin, isNobodysPin, isPin, pinSchema, randomPin } from './pin.ts'

describe('PIN', () => {
  it('is kept as an argon2id hash with its own salt and found again', async () => {
    const [one, two] = await Promise.all([hashPin('48151623'), hashPin('48151623')])
    expect(one).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/)
    expect(one).not.toBe(two)
    expect(await isPin(one, '48151623')).toBe(true)
    expect(await isPin(one, '48151624')).toBe(false)
  })

  it('does not open with a hash that cannot be read, nor for nobody', async () => {
    expect(await isPin('', '48151623')).toBe(false)
    expect(await isPin('$argon2id$v=19$broken', '48151623')).toBe(false)
    expect(await isNobodysPin('48151623')).toBe(false)
  })

  it('made at random has eight digits and differs from the next', () => {
    const pins = new Set(Array.from({ length: 200 }, () => randomPin()))
    expect([...pins].every((pin) => /^\d{8}$/.test(pin))).toBe(true)
    expect(pins.size).toBeGreaterThan(190)
  })

  it.each(['', '12345', '1234567890123', '12345a', ' 123456', '１２３４５６'])(
    'cannot be set to %j',
    (pin) => {
      expect(pinSchema.safeParse(pin).success).toBe(false)
    },
  )
})
