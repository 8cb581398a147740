import type { Source } from '../../../working/source.ts'
import { markWords, NO_MARK, saysNoMark } from '../../mark-words.ts'
import type { Candidate, Identified } from '../../steel-rules.ts'

const MARKS: Source = { standard: 'CRSI, Identification of reinforcing bars', clause: '', status: 'seen' }

const TYPES: Readonly<Record<string, string>> = {
  s: 'carbon steel, ASTM A615',
  w: 'low-alloy steel, ASTM A706',
  r: 'rail steel, ASTM A996',
  rail: 'rail steel, ASTM A996',
  a: 'axle steel, ASTM A996',
}

/** Grades by longitudinal lines that run five rib spaces or more. */
const BY_LINES: Readonly<Record<number, readonly string[]>> = {
  1: ['60'],
  2: ['75'],
  3: ['80', '100'],
  4: ['120'],
}

/** Grade marks; 4 and 5 are the soft-metric 420 and 520. */
const BY_NUMBER: Readonly<Record<string, string>> = {
  '40': '40',
  '60': '60',
  '75': '75',
  '80': '80',
  '100': '100',
  '120': '120',
  '4': '60',
  '5': '75',
  '420': '60',
  '520': '75',
}

/**
 * Grade from the marks in the order they are rolled: mill, bar number, type letter, grade number; or longitudinal lines (`2 lines`).
 * A bar with a type letter and no grade mark is grade 40. The type is the process's place: it says which standard.
 */
export function identify({ seen }: { readonly seen: readonly string[] }): Identified {
  const words = markWords(seen)
  if (saysNoMark(words)) return NO_MARK
  const lines = lineCount(words)
  // A lone letter first is the mill's, so the type is the last one that is a type letter.
  const typeAt = words.findLastIndex((word, index) => word in TYPES && (index > 0 || words.length === 1))
  const types = typeAt < 0 ? [] : [words[typeAt] ?? '']
  if (typeAt < 0 && words.some((word) => word === 'sw' || word === 'ws')) types.push('s', 'w')
  const after = typeAt < 0 ? words : words.slice(typeAt + 1)
  const numbers = lines === null ? after.filter((word) => /^\d+$/.test(word)) : []
  const grade = gradeMark(numbers, typeAt >= 0)
  const process = types.length === 0 ? null : types.map((type) => TYPES[type]).join(' and ')
  const candidates = candidatesOf(lines, grade, typeAt >= 0 || types.length > 0, process)
  const unknown = process === null ? ['process: no type letter read (S, W, R, A)'] : []
  if (candidates.length === 0) unknown.unshift('grade: no grade number and no lines read')
  if (candidates.length > 1) unknown.unshift('grade: read the grade number or the certificate')
  return {
    candidates,
    verdict: candidates.length === 1 ? 'pass' : 'unknown',
    unknown,
    notes: [],
    source: MARKS,
  }
}

function candidatesOf(
  lines: number | null,
  grade: string | null,
  typed: boolean,
  process: string | null,
): Candidate[] {
  if (lines !== null) {
    return (BY_LINES[lines] ?? []).map((each) => ({
      grade: each,
      process,
      why: `${lines} longitudinal ${lines === 1 ? 'line' : 'lines'}`,
    }))
  }
  if (grade !== null) return [{ grade, process, why: 'the grade number on the bar' }]
  return typed ? [{ grade: '40', process, why: 'a type letter and no grade mark' }] : []
}

/** Grade from the numbers after the type letter. Without that letter small numbers may be the bar's size: not read. */
function gradeMark(numbers: readonly string[], afterType: boolean): string | null {
  const mark = numbers.findLast((word) => word in BY_NUMBER && (afterType || Number(word) >= 40))
  return mark === undefined ? null : (BY_NUMBER[mark] ?? null)
}

function lineCount(words: readonly string[]): number | null {
  const text = words.join(' ')
  const counted = /(\d) (?:longitudinal )?lines?\b/.exec(text)
  if (counted) return Number(counted[1])
  const single = words.filter((word) => word === 'line').length
  return single > 0 ? single : null
}
