import { expect, test } from 'vitest'
import { agentWords, formWords, insertWords, riggingWords } from './gear-words.ts'

test('an insert kind names each size that is given, and none that is not', () => {
  const plain = { mark: 'F1', kind: 'face', rated: 50, ratedStrength: 15, leastStrength: 10 } as const
  expect(insertWords(plain)).toBe('F1: in the face, rated 50 kN at 15 MPa, not below 10 MPa')
  expect(
    insertWords({
      ...plain,
      kind: 'edge',
      leastEdge: 300,
      leastSpacing: 600,
      depth: 120,
      head: 900,
      shaft: 20,
      steel: 95,
    }),
  ).toBe(
    'F1: in an edge, rated 50 kN at 15 MPa, not below 10 MPa, edge distance at least 300 mm, spacing at least 600 mm, embedded 120 mm, bearing area of the head 900 mm², shank 20 mm, steel fails at 95 kN',
  )
})

test('a side form and a release agent name what their files give', () => {
  const rail = { mark: 'rail 160', height: 160, modulus: 205_000, inertia: 690_000 }
  expect(formWords(rail)).toBe('rail 160: 160 mm high')
  const plate = { thickness: 5, modulus: 205_000, held: 'both' } as const
  expect(formWords({ ...rail, propRating: 1.6, braceRating: 0.8, plate })).toBe(
    'rail 160: 160 mm high, a prop takes 1.6 kN, a brace takes 0.8 kN, plate of 5 mm, held at bed and top',
  )
  const rates = [{ face: 'steel', rate: 40 }]
  expect(agentWords({ mark: 'R', kind: 'reactive', rates, dryingMinutes: 15 })).toBe(
    'R: reactive, 40 m² a litre on steel, dries 15 minutes',
  )
})

test('rigging names its spreader, pairs, error and stiffness where they are given', () => {
  const plain = { mark: 'R4', legs: 4, length: 750, rated: 800 }
  expect(riggingWords(plain)).toBe('R4: 4 legs of 750 mm, rated 800 kg')
  expect(
    riggingWords({
      ...plain,
      spreader: 500,
      top: 'middle',
      equalised: false,
      pairs: [
        [1, 2],
        [3, 4],
      ],
      counted: 2,
      error: 0,
      stiffness: 12,
    }),
  ).toBe(
    'R4: 4 legs of 750 mm, rated 800 kg, spreader of 500 mm, its beam hangs at the middle, legs not equalised, one sling over a block for legs 1 and 2; 3 and 4, 2 counted on, legs differ by up to 0 mm, stiffness of a leg 12 kN/mm',
  )
})
