import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { BEND_ROWS } from '../../codes/eu/bs8666-2005/bend-table.ts'
import { replay } from '../../working/replay.ts'
import { type ShapeInput, shapeLabels } from './shape-code.ts'
import { type BendKind, SHAPE_ROWS, type ShapeRow } from './shape-rows.ts'

const BAR: ShapeInput = {
  diameter: 12,
  inside: 48,
  legs: [600, 400],
  turns: [90],
  senses: [1],
  outOfPlane: false,
}

function labels(change: Partial<ShapeInput>) {
  const found = shapeLabels({ ...BAR, ...change })
  if (!found.known) throw new Error(found.gaps.join())
  return found.value
}

const TURNS: Readonly<Record<BendKind, number>> = { right: 90, half: 180, shallow: 30, '135': 135 }

/** A bar that has a row's shape. */
function made(row: ShapeRow, diameter = 12): ShapeInput {
  const former = BEND_ROWS.find((each) => each.diameter === diameter)?.former ?? Number.NaN
  const size = new Map([...new Set(row.legs)].map((letter, index) => [letter, 900 + 70 * index]))
  return {
    diameter,
    inside: row.bends.length === 0 ? null : row.radius === undefined ? former : former + 40,
    legs: row.legs.map((letter) => size.get(letter) ?? 0),
    turns: row.bends.map((bend) => TURNS[bend]),
    senses: [...row.sides].map((side) => (side === '+' ? 1 : -1)),
    outOfPlane: false,
  }
}

describe('every shape of the table', () => {
  it.each(SHAPE_ROWS.map((row) => [row.code, row] as const))(
    '%s is found from both ends and both sides',
    (code, row) => {
      const bar = made(row)
      const flip = (sense: 1 | -1): 1 | -1 => (sense === 1 ? -1 : 1)
      const back = {
        ...bar,
        legs: bar.legs.toReversed(),
        turns: bar.turns.toReversed(),
        senses: bar.senses.toReversed().map(flip),
      }
      for (const each of [bar, back, { ...bar, senses: bar.senses.map(flip) }]) {
        expect(labels(each).bs8666).toBe(code)
        expect(labels(each).length).toBeCloseTo(labels(bar).length, 6)
      }
    },
  )

  it.each(SHAPE_ROWS.map((row) => [row.code, row] as const))(
    '%s: its own formula is near the true length at the least radius',
    (_, row) => {
      for (const diameter of [8, 12, 16, 20, 25]) {
        const { difference, formulaLength } = labels(made(row, diameter))
        if (row.length === null) expect(formulaLength).toBeNull()
        // A diameter at most, half a one more where four shallow bends are not counted at all.
        else expect(Math.abs(difference ?? Number.NaN)).toBeLessThan((row.rough ? 1.5 : 1) * diameter)
      }
    },
  )

  it('every step replays', () => {
    for (const row of SHAPE_ROWS) {
      const found = shapeLabels(made(row))
      for (const step of found.working ?? []) {
        // Sums of deductions are named, not listed.
        if (step.formula.includes('ΣΔ')) continue
        expect(replay(step)).toBeCloseTo(Number(step.result), 6)
      }
    }
  })

  it('no two rows have the same shape', () => {
    const keys = SHAPE_ROWS.map(({ bends, sides, legs, radius }) =>
      JSON.stringify([bends, sides, legs, radius]),
    )
    expect(new Set(keys).size).toBe(keys.length)
  })
})

describe('labels', () => {
  it.each([
    [{ legs: [3000], turns: [], senses: [], inside: null }, '00', '00'],
    [{}, '11', '11'],
    [{ inside: 60 }, '12', '12'],
    [{ turns: [180] }, '13', '13'],
    [{ turns: [30] }, '15', '15'],
    [{ legs: [600, 400, 300], senses: [1, 1] }, '21', '21'],
    [{ legs: [600, 400, 300], senses: [1, -1] }, '23', '24'],
    [{ legs: [600, 400, 300], turns: [30, 40], senses: [1, 1] }, '25', '25'],
    [{ legs: [600, 400, 300], turns: [30], senses: [1, -1] }, '26', '26'],
    [{ legs: [600, 400, 300, 200], senses: [1, 1, 1] }, '31', '31'],
    [{ legs: [200, 600, 600, 200], turns: [180], senses: [1, 1, 1] }, '33', '33'],
    [{ legs: [150, 300, 800, 300, 150], senses: [1, 1, 1, 1] }, '41', '41'],
    [{ legs: [150, 300, 800, 300, 150], senses: [1, -1, -1, 1] }, '44', '44'],
    [{ legs: [160, 600, 250, 600, 250, 160], senses: [1, 1, 1, 1, 1] }, '51', '51'],
  ] as const)('%j: BS 8666 %s, EN ISO 3766 %s', (change, code, iso) => {
    const found = labels(change as Partial<ShapeInput>)
    expect(found).toMatchObject({ bs8666: code, iso3766: iso, sketch: false })
  })

  it.each([
    [
      'a tie on a pin of New Zealand',
      { inside: 60, legs: [600, 400, 300], senses: [1, 1] },
      /48|not the standard/,
    ],
    [
      'legs of a link that differ',
      { legs: [160, 600, 250, 590, 250, 160], senses: [1, 1, 1, 1, 1] },
      /No shape/,
    ],
    [
      'a crank whose ends are not parallel',
      { legs: [600, 400, 300], turns: [30, 31], senses: [1, -1] },
      /No shape/,
    ],
    ['an acute bend', { turns: [120] }, /No shape/],
    [
      'a size without a standard radius',
      { diameter: 28, inside: 196, legs: [900, 900, 900], senses: [1, 1] },
      /28 mm/,
    ],
    ['a leg out of the plane', { legs: [600, 400, 300], senses: [1, 1], outOfPlane: true }, /plane/],
  ] as const)('%s is 99 with a sketch', (_, change, note) => {
    const found = labels(change as Partial<ShapeInput>)
    expect(found).toMatchObject({ bs8666: '99', sketch: true, formulaLength: null, difference: null })
    expect(found.notes.join()).toMatch(note)
    expect(found.length).toBeGreaterThan(0)
  })

  it('a shallow bend over 45° has the label but no formula', () => {
    expect(labels({ turns: [45] }).formulaLength).toBe(1000)
    expect(labels({ turns: [46] })).toMatchObject({ bs8666: '15', formulaLength: null })
  })

  it('ties with hooks of 135° have a label of 2020 whose formula is not confirmed', () => {
    const tie = labels({
      legs: [108, 250, 600, 250, 600, 108],
      turns: [135, 90, 90, 90, 135],
      senses: [1, 1, 1, 1, 1],
    })
    expect(tie).toMatchObject({ bs8666: '52', iso3766: '99', formulaLength: null })
    // Computed, second method: tangents and arcs summed by hand.
    expect(tie.length).toBeCloseTo(1838.7, 1)
  })

  it('25 mm on a former of 175 or 174 is on the standard radius, 173 is not', () => {
    const bar = (inside: number) => labels({ diameter: 25, inside, legs: [900, 900] }).bs8666
    expect([175, 174, 173].map(bar)).toEqual(['11', '11', '12'])
  })
})

describe('side conditions', () => {
  it.each([
    [{ legs: [124, 600] }, /^A: 124 mm, at least 125 mm \(P\)/],
    [{ inside: 200, legs: [600, 171] }, /^B: 171 mm, at least 172 mm \(R \+ 6 d\)/],
    [{ inside: 401, legs: [900, 900] }, /^former: 401 mm, at most 400/],
    [{ turns: [180], inside: 47, legs: [600, 200] }, /^B: 71 mm, at least 72 mm \(2 \(r \+ d\)\)/],
    [{ turns: [180], legs: [600, 95] }, /^C: 95 mm, at least 96 mm/],
    [{ legs: [200, 600, 174, 600, 174, 200], senses: [1, 1, 1, 1, 1] }, /^C: 200 mm, at most 174 mm \(A\)/],
    [{ legs: [150, 600, 250, 600, 250, 150], senses: [1, 1, 1, 1, 1] }, /^C: 150 mm, at least 160 mm \(P\)/],
  ] as const)('%j: %s', (change, condition) => {
    expect(labels(change as Partial<ShapeInput>).notMet[0]).toMatch(condition)
  })

  it('at the limit they are met', () => {
    expect(labels({ legs: [125, 600] }).notMet).toEqual([])
    expect(labels({ turns: [180], legs: [600, 96] }).notMet).toEqual([])
  })
})

describe('any bar', () => {
  it('has a label, and its length does not hang on it (random legs, turns, sides)', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(15, 30, 45, 90, 90, 90, 135, 180), { maxLength: 6 }),
        fc.array(fc.boolean(), { minLength: 6, maxLength: 6 }),
        fc.constantFrom(48, 60, 100),
        (turns, sides, inside) => {
          const legs = Array.from({ length: turns.length + 1 }, (_, index) => 400 + 10 * index)
          const senses = turns.map((_, index) => (sides[index] ? 1 : -1) as 1 | -1)
          const flat = labels({ inside, legs, turns, senses })
          expect(flat.bs8666).toMatch(/^\d\d$/)
          expect(flat.sketch).toBe(flat.bs8666 === '99')
          expect(labels({ inside, legs, turns, senses, outOfPlane: true }).length).toBe(flat.length)
          if (flat.formulaLength !== null) expect(Number.isFinite(flat.formulaLength)).toBe(true)
        },
      ),
    )
  })

  it('that cannot be measured is not known', () => {
    expect(shapeLabels({ ...BAR, senses: [] }).known).toBe(false)
    expect(shapeLabels({ ...BAR, diameter: 0 }).known).toBe(false)
    expect(shapeLabels({ ...BAR, legs: [600, 20] }).known).toBe(false)
    expect(shapeLabels({ ...BAR, turns: [181] }).known).toBe(false)
  })
})
