import { commonPractice, type Source } from '../working/source.ts'
import type { Identified } from './steel-rules.ts'

const NUMBER_WORDS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine']

/** Words with which somebody says that he is not sure, or that something is not there. */
const DOUBT = /^(or|not|no|none|nothing|maybe|perhaps|about|approx|unclear|unreadable|worn)$/

/**
 * What somebody read on a bar, as lower-case words with numbers in digits; wide letters and digits of other keyboards are taken as plain ones.
 * A hyphen parts words, a sign before a number stays with it.
 */
export function markWords(seen: readonly string[]): string[] {
  return seen
    .join(' ')
    .normalize('NFKC')
    .toLowerCase()
    .replace(/(?<=[\p{L}\p{N}])[-–](?=[\p{L}\p{N}])/gu, ' ')
    .split(/[\s,;:/_]+/)
    .filter((word) => /[\p{L}\p{N}?]/u.test(word))
    .map((word) => {
      const number = NUMBER_WORDS.indexOf(word)
      return number >= 0 ? String(number) : word
    })
}

/** Whether the words say that nothing is rolled on the bar. */
export function saysNoMark(words: readonly string[]): boolean {
  return /^(no|none|nothing|plain|blank|0)( marks?)?$/.test(words.join(' '))
}

/** The words that leave the reading in doubt. */
export function doubts(words: readonly string[]): string[] {
  return words.filter((word) => DOUBT.test(word) || word.includes('?'))
}

/** A reading in doubt names no grade. */
export function inDoubt(words: readonly string[], source: Source): Identified {
  return {
    candidates: [],
    verdict: 'unknown',
    unknown: [`marks: a reading without doubt, found ${words.join(', ')}; clean the bar and read it again`],
    notes: [],
    source,
  }
}

/** No mark within 1.5 m of bar: not to be taken as a deformed bar of a known grade. */
export const NO_MARK: Identified = {
  candidates: [],
  verdict: 'fail',
  unknown: [],
  notes: ['No mark within 1.5 m of bar: keep it apart, do not accept it as deformed bar of a known grade.'],
  source: commonPractice('a bar without a mark is not accepted'),
}
