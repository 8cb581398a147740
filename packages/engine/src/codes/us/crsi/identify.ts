import type { Source } from '../../../working/source.ts'
import { doubts, inDoubt, markWords, NO_MARK, saysNoMark } from '../../mark-words.ts'
import type { Candidate, Identified } from '../../steel-rules.ts'
import { US_BARS } from '../astm/bars.ts'
import { gradesByLines, lineCount, withoutLines } from './rib-lines.ts'

const MARKS: Source = { standard: 'CRSI, Identification of reinforcing bars', clause: '', status: 'seen' }

const TYPES: Readonly<Record<string, string>> = {
  s: 'carbon steel, ASTM A615',
  w: 'low-alloy steel, ASTM A706',
  r: 'rail steel, ASTM A996',
  rail: 'rail steel, ASTM A996',
  a: 'axle steel, ASTM A996',
}

const STANDARDS: Readonly<Record<string, string>> = {
  s: 'ASTM A615',
  w: 'ASTM A706',
  r: 'ASTM A996',
  rail: 'ASTM A996',
  a: 'ASTM A996',
}

/** Grades that ASTM A706 has. */
const LOW_ALLOY = ['60', '80']

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

/** Bar numbers, in eighths of an inch and soft-metric. */
const SIZES = [3, 4, 5, 6, 7, 8, 9, 10, 11, 14, 18, 13, 16, 19, 22, 25, 29, 32, 36, 43, 57].map(String)

/**
 * Grade from the marks in the order they are rolled: mill, bar number, type letter, grade number; or longitudinal lines (`2 lines`).
 * A bar with number and type letter and no grade mark is grade 40. The type is the process's place: it says which standard.
 *
 * `pass` only where one grade is read and nothing beside it speaks against it.
 */
export function identify({ seen }: { readonly seen: readonly string[] }): Identified {
  const words = withNumber(markWords(seen))
  if (saysNoMark(words)) return NO_MARK
  const unsure = doubts(words)
  if (unsure.length > 0) return inDoubt(unsure, MARKS)
  const lines = lineCount(words)
  const { types, before, after } = parts(withoutLines(words))
  const process = types.length === 0 ? null : types.map((type) => TYPES[type]).join(' and ')
  const found = gradeOf({ lines, types, before, after })
  const unknown = [...found.gaps, ...(process === null ? ['process: no type letter read (S, W, R, A)'] : [])]
  const candidates: Candidate[] = found.grades.map((grade) => ({ grade, process, why: found.why }))
  return {
    candidates,
    verdict: candidates.length === 1 && found.gaps.length === 0 ? 'pass' : 'unknown',
    unknown,
    ...(found.open === undefined ? {} : { byCertificate: found.open }),
    ...(types.length === 0 ? {} : { standards: [...new Set(types.map((type) => STANDARDS[type] ?? ''))] }),
    ...sizesOf(types.length === 0 ? after : before),
    notes: [],
    source: MARKS,
  }
}

/**
 * Diameters that the bar number may stand for: eighths of an inch, or the soft-metric number. 10 is both, a No. 10 and a soft No. 3.
 * Without a type letter a lone number that is no grade is the size.
 */
function sizesOf(words: readonly string[]): { readonly sizes?: readonly number[] } {
  const numbers = words.filter((word) => SIZES.includes(word)).map(Number)
  const [number] = numbers
  if (number === undefined || numbers.length > 1) return {}
  const bars = US_BARS.filter((bar) => bar.number === number || Math.round(bar.inches * 25.4) === number)
  return { sizes: bars.map((bar) => bar.inches * 25.4) }
}

/** `No 5` is the bar's number. */
function withNumber(words: readonly string[]): string[] {
  return words.filter((word, index) => !(/^(no\.?|#)$/.test(word) && SIZES.includes(words[index + 1] ?? '')))
}

interface Parts {
  /** Type letters, each once. */
  readonly types: readonly string[]
  readonly before: readonly string[]
  readonly after: readonly string[]
}

/** The words around the type letters: the last run of them, `S W` and `SW` both. A lone letter first is the mill's. */
function parts(words: readonly string[]): Parts {
  const lettersOf = (word: string): string[] =>
    Object.hasOwn(TYPES, word) ? [word] : /^(sw|ws)$/.test(word) ? ['s', 'w'] : []
  const end = words.findLastIndex((word, index) => {
    const letters = lettersOf(word)
    return letters.length > 1 || (letters.length > 0 && (index > 0 || words.length === 1))
  })
  if (end < 0) return { types: [], before: [], after: words }
  let start = end
  while (start > 1 && lettersOf(words[start - 1] ?? '').length > 0) start -= 1
  const types = new Set(words.slice(start, end + 1).flatMap(lettersOf))
  return { types: [...types], before: words.slice(0, start), after: words.slice(end + 1) }
}

interface Read {
  readonly grades: readonly string[]
  readonly why: string
  readonly gaps: readonly string[]
  /** The gap where lines alone leave several grades. */
  readonly open?: string
}

const LINES_OPEN = 'grade: read the grade number or the certificate'

function gradeOf({ lines, types, before, after }: Parts & { readonly lines: number | null }): Read {
  const typed = types.length > 0
  const marks = after.filter((word) => isGradeMark(word, typed))
  // Before the type letter stand mill and size; behind it only the grade.
  const odd = typed
    ? after.filter((word) => !marks.includes(word))
    : after.filter((word) => /^-?\d+\./.test(word))
  const byNumber = [...new Set(marks.map((mark) => BY_NUMBER[mark] ?? ''))]
  const byLines = lines === null ? [] : gradesByLines(lines)
  const gaps = odd.map((word) => `grade: ${word} is no grade mark; read the bar again`)
  if (lines !== null && byLines.length === 0) gaps.push(`lines: 1 to 4 stand for a grade, found ${lines}`)
  const size = before.findLast((word) => /^\d+$/.test(word))
  if (size !== undefined && !SIZES.includes(size)) gaps.push(`size: no bar number ${size}`)
  const read = agreed(byNumber, byLines)
  if (read.length > 0) {
    const open = read.length > 1 && byNumber.length === 0
    if (read.length > 1) gaps.push(open ? LINES_OPEN : 'grade: the marks differ; read the bar again')
    gaps.push(...typeGaps(read, types))
    const why = byNumber.length > 0 ? 'the grade number on the bar' : lineWords(lines ?? 0)
    return { grades: read, why, gaps, ...(open ? { open: LINES_OPEN } : {}) }
  }
  if (!typed || lines !== null || odd.length > 0) {
    return {
      grades: [],
      why: '',
      gaps: gaps.length > 0 ? gaps : ['grade: no grade number and no lines read'],
    }
  }
  if (size === undefined)
    gaps.push('size: the bar number before the type letter; without it the letter may be the mill’s')
  if (types.includes('w')) {
    return {
      grades: [],
      why: '',
      gaps: [...gaps, 'grade: ASTM A706 has no grade 40; read the grade mark again'],
    }
  }
  return { grades: ['40'], why: 'a type letter and no grade mark', gaps }
}

/** Without a type letter small numbers may be the bar's size: not read as a grade. */
function isGradeMark(word: string, afterType: boolean): boolean {
  return Object.hasOwn(BY_NUMBER, word) && (afterType || Number(word) >= 40)
}

/** Number and lines where they say the same, else all that either says. */
function agreed(byNumber: readonly string[], byLines: readonly string[]): string[] {
  if (byNumber.length === 1 && byLines.length > 0) {
    const both = byLines.filter((grade) => byNumber.includes(grade))
    if (both.length > 0) return both
  }
  return [...new Set([...byNumber, ...byLines])]
}

function typeGaps(grades: readonly string[], types: readonly string[]): string[] {
  if (!types.includes('w')) return []
  return grades
    .filter((grade) => !LOW_ALLOY.includes(grade))
    .map((grade) => `grade: ASTM A706 has no grade ${grade}; read the bar again`)
}

function lineWords(lines: number): string {
  return `${lines} longitudinal ${lines === 1 ? 'line' : 'lines'}`
}
