import type { Source } from '../../working/source.ts'

/** One result: age, days at the reference temperature, and strength, MPa. */
export interface AgedStrength {
  readonly days: number
  readonly strength: number
}

/** Results without those that repeat another to the last digit: a row copied is no second test. */
export function withoutRepeats(tests: readonly AgedStrength[]): AgedStrength[] {
  return tests.filter(
    ({ days, strength }, at) =>
      tests.findIndex((test) => test.days === days && test.strength === strength) === at,
  )
}

/** Source of every number that rests on the open tests. */
export const OPEN_TESTS: Source = {
  standard: 'I-C. Yeh, Concrete Compressive Strength, UCI Machine Learning Repository, 1998 (CC BY 4.0)',
  clause: 'a part: 666 tests of 339 mixes',
  status: 'seen',
}
