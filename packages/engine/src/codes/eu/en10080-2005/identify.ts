import type { Source } from '../../../working/source.ts'
import { doubts, inDoubt, markWords, NO_MARK, saysNoMark } from '../../mark-words.ts'
import type { Identified } from '../../steel-rules.ts'

const MARKS: Source = { standard: 'EN 10080:2005', clause: '10', status: 'seen' }

const CLASS_OPEN = 'grade: the class A, B or C from the rib layout or the certificate'

/** A mill's number is up to 99: more ribs are a count across a thickened rib that was missed. */
const MOST_MILL = 99

/** Where a bar was made, by the count of normal ribs after the start pair of thickened ribs. */
const ORIGINS: readonly string[] = [
  '',
  'Germany, Austria, Poland, Slovakia, Czechia or Switzerland',
  'Belgium, the Netherlands or Luxembourg',
  'France or Hungary',
  'Italy, Malta or Slovenia',
  'the United Kingdom, Ireland or Iceland',
  'Denmark, Finland, Norway, Sweden, Estonia, Latvia or Lithuania',
  'Portugal or Spain',
  'Greece or Cyprus',
  'another country',
]

/** Words that may stand between the counts. */
const BETWEEN = /^(thick|thickened|ribs?|normal|start|pair|then|and|country|mill)$/

/**
 * Grade and origin from the count of ribs: first the normal ribs between the start pair and the next thickened rib (country),
 * then those of the mill's number. Words such as `thick` and `ribs` may stand between the counts; any other word is named.
 *
 * The counts say B500; which of B500A, B and C is told by the rib layout and the certificate, and is not known here.
 */
export function identify({ seen }: { readonly seen: readonly string[] }): Identified {
  const words = markWords(seen)
  if (saysNoMark(words)) return NO_MARK
  const unsure = doubts(words)
  if (unsure.length > 0) return inDoubt(unsure, MARKS)
  const counts = countsOf(words)
  const odd = words.filter((word) => !BETWEEN.test(word) && !/^\d+$/.test(word))
  const unread = odd.length > 0 ? [`marks: not read: ${odd.join(', ')}`] : []
  const [country, ...mill] = counts
  const origin = country === undefined ? undefined : ORIGINS[country]
  if (country === undefined || origin === undefined || origin === '') {
    return {
      candidates: [],
      verdict: 'unknown',
      unknown: [
        country === undefined
          ? 'ribs: no count of normal ribs after the start pair of thickened ribs'
          : `ribs: country counts run from 1 to 9, found ${country}`,
        ...unread,
      ],
      notes: [],
      source: MARKS,
    }
  }
  const bad = mill.filter((count) => !(count >= 1 && count <= MOST_MILL))
  const named = mill.length > 0 && bad.length === 0 ? `, mill ${mill.join('')}` : ''
  return {
    candidates: ['B500A', 'B500B', 'B500C'].map((grade) => ({
      grade,
      process: null,
      why: `B500 made in ${origin} (${country} ribs)${named}; the rib layout and the certificate tell the class`,
    })),
    verdict: 'unknown',
    byCertificate: CLASS_OPEN,
    unknown: [
      CLASS_OPEN,
      'process: not shown on the bar, see the mill certificate',
      ...(mill.length > 0 ? [] : ['mill: the second count of ribs']),
      ...bad.map((count) => `mill: counts run from 1 to ${MOST_MILL}, found ${count}`),
      ...unread,
    ],
    notes: [`Origin: ${origin}${named}.`],
    source: MARKS,
  }
}

/** Counts of normal ribs. `2 thick` is the start pair and `1 thick` a rib between: no counts; five ribs before a thick one are. */
function countsOf(words: readonly string[]): number[] {
  return words
    .filter((word, index) => !(/^[12]$/.test(word) && /^thick/.test(words[index + 1] ?? '')))
    .filter((word) => /^\d+$/.test(word))
    .map(Number)
}
