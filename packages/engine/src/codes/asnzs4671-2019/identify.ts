import type { Source } from '../../working/source.ts'
import { doubts, inDoubt, markWords, NO_MARK, saysNoMark } from '../mark-words.ts'
import type { Candidate, Identified } from '../steel-rules.ts'

const MARKS: Source = { standard: 'AS/NZS 4671:2019', clause: 'marking of bars', status: 'from memory' }

const GRADES = ['250N', '300E', '500E', '500N', '500L'] as const

/** A grade inside a word: mill letters may stand before it, nothing after it. */
const WRITTEN = /^[a-z]*?(250n|300e|500e|500n|500l)$/
const TURNED = /^(n250|e300|e500|n500|l500)$/

/** Figures of a grade in a word that is none. */
const GRADE_LIKE = /250|300|500/

/**
 * Grade from what is rolled on the bar. The standard lets a mill show it by letters and figures or by its own pattern of marks on
 * or between ribs; only letters and figures are read here. The process is on the certificate, not on the bar.
 *
 * `pass` only where one grade is read whole, of the place, and nothing else on the bar looks like a grade.
 */
export function identify({
  seen,
  family,
}: {
  readonly seen: readonly string[]
  /** Grades that the place works with. */
  readonly family: readonly string[]
}): Identified {
  const words = markWords(seen)
  if (saysNoMark(words)) return NO_MARK
  const unsure = doubts(words)
  if (unsure.length > 0) return inDoubt(unsure, MARKS)
  const { exact, letters, odd } = read(joined(words))
  const byLetter = GRADES.filter((grade) => letters.some((letter) => grade.endsWith(letter)))
  const found = exact.length > 0 ? exact : byLetter
  const candidates: Candidate[] = found.map((grade) => ({
    grade,
    process: null,
    why:
      exact.length > 0
        ? `the bar shows ${grade}`
        : `the letter ${grade.slice(-1)} stands for this ductility class`,
  }))
  const gaps = gradeGaps(candidates, exact, letters, odd, family)
  return {
    candidates,
    verdict: gaps.length === 0 ? 'pass' : 'unknown',
    unknown: [...gaps, 'process: not shown on the bar, see the mill certificate'],
    notes: [],
    source: MARKS,
  }
}

/** Letters and figures that were told apart: `500 E` and `5 0 0 E` are `500E`, `E 500` is `E500`. */
function joined(words: readonly string[]): string[] {
  const spelled = words
    .join(' ')
    .replace(/(?<=^| )(\d) (\d) (\d)(?= |$)/g, '$1$2$3')
    .replace(/(?<=^| )(250|300|500) ([enl])(?= |$)/g, '$1$2')
    .replace(/(?<=^| )([enl]) (250|300|500)(?= |$)/g, '$1$2')
  return spelled.split(' ')
}

function read(words: readonly string[]): { exact: string[]; letters: string[]; odd: string[] } {
  const exact = new Set<string>()
  const letters: string[] = []
  const odd: string[] = []
  for (const word of words) {
    const written = WRITTEN.exec(word)?.[1] ?? turnedBack(word)
    if (written !== null) exact.add(written.toUpperCase())
    else if (/^[enl]$/.test(word)) letters.push(word.toUpperCase())
    else if (GRADE_LIKE.test(word)) odd.push(word)
  }
  return { exact: GRADES.filter((grade) => exact.has(grade)), letters, odd }
}

function turnedBack(word: string): string | null {
  return TURNED.test(word) ? `${word.slice(1)}${word.slice(0, 1)}` : null
}

/** What keeps the grade open; empty where it is read. */
function gradeGaps(
  candidates: readonly Candidate[],
  exact: readonly string[],
  letters: readonly string[],
  odd: readonly string[],
  family: readonly string[],
): string[] {
  const [only] = candidates
  const gaps: string[] = []
  if (only === undefined) {
    gaps.push('grade: no letters and figures read; take the pattern from the mill’s own mark sheet')
  } else if (candidates.length > 1) {
    gaps.push('grade: the mark fits more than one')
  } else if (!family.includes(only.grade)) {
    gaps.push(`grade: ${only.grade} is none of ${family.join(', ')}; the engineer decides`)
  } else if (exact.length === 0) {
    gaps.push('grade: a letter alone may be the mill’s; read the figures or the mill’s own mark sheet')
  }
  const against = exact.length === 1 ? letters.filter((letter) => !(exact[0] ?? '').endsWith(letter)) : []
  for (const other of [...against, ...odd]) {
    gaps.push(`grade: ${other.toUpperCase()} beside it does not fit a grade; read the bar again`)
  }
  return gaps
}
