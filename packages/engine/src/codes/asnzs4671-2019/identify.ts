import type { Source } from '../../working/source.ts'
import { markWords, NO_MARK, saysNoMark } from '../mark-words.ts'
import type { Candidate, Identified } from '../steel-rules.ts'

const MARKS: Source = { standard: 'AS/NZS 4671:2019', clause: 'marking of bars', status: 'from memory' }

const GRADES = ['250N', '300E', '500E', '500N', '500L'] as const

/**
 * Grade from what is rolled on the bar. The standard lets a mill show it by letters and figures or by its own pattern of marks on
 * or between ribs; only letters and figures are read here. The process is on the certificate, not on the bar.
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
  const text = words.join('').toUpperCase()
  const exact = GRADES.filter((grade) => text.includes(grade) || text.includes(turned(grade)))
  const letters = words.filter((word) => /^[enl]$/.test(word)).map((word) => word.toUpperCase())
  const found =
    exact.length > 0 ? exact : GRADES.filter((grade) => letters.some((letter) => grade.endsWith(letter)))
  const candidates: Candidate[] = found.map((grade) => ({
    grade,
    process: null,
    why:
      exact.length > 0
        ? `the bar shows ${grade}`
        : `the letter ${grade.slice(-1)} stands for this ductility class`,
  }))
  const unknown = ['process: not shown on the bar, see the mill certificate']
  if (candidates.length === 0) {
    unknown.unshift('grade: no letters and figures read; take the pattern from the mill’s own mark sheet')
  }
  if (candidates.length > 1) unknown.unshift('grade: the mark fits more than one')
  const other = candidates.length === 1 && !family.includes(candidates[0]?.grade ?? '')
  if (other)
    unknown.unshift(`grade: ${candidates[0]?.grade} is none of ${family.join(', ')}; the engineer decides`)
  return {
    candidates,
    verdict: candidates.length === 1 && !other ? 'pass' : 'unknown',
    unknown,
    notes: [],
    source: MARKS,
  }
}

function turned(grade: string): string {
  return `${grade.slice(-1)}${grade.slice(0, -1)}`
}
