import { commonPractice } from '../working/source.ts'
import type { Identified } from './steel-rules.ts'

const NUMBER_WORDS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine']

/** What somebody read on a bar, as lower-case words with numbers in digits. */
export function markWords(seen: readonly string[]): string[] {
  return seen
    .join(' ')
    .toLowerCase()
    .split(/[\s,;:/_-]+/)
    .filter((word) => word !== '')
    .map((word) => {
      const number = NUMBER_WORDS.indexOf(word)
      return number >= 0 ? String(number) : word
    })
}

/** Whether the words say that nothing is rolled on the bar. */
export function saysNoMark(words: readonly string[]): boolean {
  return /^(no|none|nothing|plain|blank|0)( marks?)?$/.test(words.join(' '))
}

/** No mark within 1.5 m of bar: not to be taken as a deformed bar of a known grade. */
export const NO_MARK: Identified = {
  candidates: [],
  verdict: 'fail',
  unknown: [],
  notes: ['No mark within 1.5 m of bar: keep it apart, do not accept it as deformed bar of a known grade.'],
  source: commonPractice('a bar without a mark is not accepted'),
}
