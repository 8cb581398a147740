import type { Source } from '../../../working/source.ts'
import { markWords, NO_MARK, saysNoMark } from '../../mark-words.ts'
import type { Identified } from '../../steel-rules.ts'

const MARKS: Source = { standard: 'EN 10080:2005', clause: '10', status: 'seen' }

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

/**
 * Grade and origin from the count of ribs: first the normal ribs between the start pair and the next thickened rib (country),
 * then those of the mill's number. Words such as `thick` and `ribs` may stand between the counts.
 *
 * The counts say B500; which of B500A, B and C is told by the rib layout and the certificate, and is not known here.
 */
export function identify({ seen }: { readonly seen: readonly string[] }): Identified {
  const words = markWords(seen)
  if (saysNoMark(words)) return NO_MARK
  // "2 thick 5 ribs": the start pair is not a count.
  const counts = words
    .filter((_, index) => !/^thick/.test(words[index + 1] ?? ''))
    .filter((word) => /^\d+$/.test(word))
    .map(Number)
  const origin = ORIGINS[counts[0] ?? 0]
  if (counts.length === 0 || origin === undefined || origin === '') {
    return {
      candidates: [],
      verdict: 'unknown',
      unknown: [
        counts.length === 0
          ? 'ribs: no count of normal ribs after the start pair of thickened ribs'
          : `ribs: country counts run from 1 to 9, found ${counts[0]}`,
      ],
      notes: [],
      source: MARKS,
    }
  }
  const mill = counts.length > 1 ? `, mill ${counts.slice(1).join('')}` : ''
  return {
    candidates: ['B500A', 'B500B', 'B500C'].map((grade) => ({
      grade,
      process: null,
      why: `B500 made in ${origin} (${counts[0]} ribs)${mill}; the rib layout and the certificate tell the class`,
    })),
    verdict: 'unknown',
    unknown: [
      'grade: the class A, B or C from the rib layout or the certificate',
      'process: not shown on the bar, see the mill certificate',
      ...(counts.length > 1 ? [] : ['mill: the second count of ribs']),
    ],
    notes: [`Origin: ${origin}${mill}.`],
    source: MARKS,
  }
}
