import { ACTS, type Act, type ActRule, type MadeBy } from '../../codes/bar-acts.ts'
import type { CodeFamily } from '../../codes/family.ts'
import { SMALLEST } from '../../codes/smallest-bar.ts'
import { notAboveZero } from '../../working/guard.ts'
import { bendOnce } from './bend-once.ts'
import { type PermittedAct, strictest } from './strictest.ts'

/** Thicker than any bar of the families, mm. */
const LARGEST = 60

export interface PermittedInput {
  readonly family: CodeFamily
  /** As the family writes it. Example: `500E`. */
  readonly grade: string
  /** From the certificate; `hot rolled` of a 500 MPa grade leaves open how it got its strength. */
  readonly process: MadeBy | 'unknown'
  /** Nominal, mm; null where not known. */
  readonly diameter: number | null
  /** Null where nobody has said. */
  readonly galvanised: boolean | null
  /** Product standard that the bar shows, where the family has several. Example: `A706`. */
  readonly standard?: string | null
}

export interface PermittedActs {
  /** One answer an act, in the order of `ACTS`. */
  readonly acts: readonly PermittedAct[]
  readonly notes: readonly string[]
  /** Why nothing is known of this bar; empty where the rules hold for it. */
  readonly unknown: readonly string[]
}

/** One make that the bar in hand may be. */
export interface BarMake extends Omit<PermittedInput, 'process' | 'galvanised'> {
  readonly process: MadeBy
  readonly galvanised: boolean
}

/**
 * What may be done with a bar: an answer, its conditions and its source for every act.
 *
 * Where the process (or the zinc) is not known the strictest answer among all that bars of the grade may be is taken, and says so. All answers
 * are unknown for a grade that the family does not have, for a process that the grade does not come from, and for a diameter that is no bar.
 * Left out: damage, corrosion and what was done with the bar before.
 */
export function permittedActs(input: PermittedInput): PermittedActs {
  const gaps = gapsOf(input)
  if (gaps.length > 0) {
    const unsure = (act: Act): PermittedAct => ({ act, answer: 'unknown', conditions: gaps, source: null })
    return { acts: ACTS.map(unsure), notes: [], unknown: gaps }
  }
  const makes = makesOf(input)
  return {
    acts: ACTS.map((act) =>
      strictest(makes.map((make) => ({ make: makeWords(make, input), answer: answerFor(act, make) }))),
    ),
    notes: notesOf(input, makes),
    unknown: [],
  }
}

/** Processes that the bar may come from; empty where the pair of grade and process is not confirmed. */
export function possibleProcesses({
  family,
  grade,
  process,
}: Pick<PermittedInput, 'family' | 'grade' | 'process'>): readonly MadeBy[] {
  const { processes } = family.steel.acts
  const all = Object.hasOwn(processes, grade) ? (processes[grade] ?? []) : []
  if (process === 'unknown') return all
  if (all.includes(process)) return [process]
  // Alloyed and quenched bars both leave a hot mill: a certificate that says no more leaves both open.
  return process === 'hot rolled' ? all.filter((each) => each !== 'cold worked') : []
}

function gapsOf(input: PermittedInput): string[] {
  const { family, grade, process, diameter, standard } = input
  const { grades, acts, barSize } = family.steel
  if (!grades.some((each) => each.grade === grade)) {
    return [`grade: ${grade} is none of ${grades.map((each) => each.grade).join(', ')}`]
  }
  const gaps: string[] = []
  if (possibleProcesses(input).length === 0) {
    gaps.push(`process: no confirmed value for a bar of grade ${grade} that is ${process}`)
  }
  if (diameter !== null) {
    const wrong = notAboveZero({ diameter })
    const size = wrong.length > 0 ? null : barSize({ diameter })
    if (diameter < SMALLEST || diameter > LARGEST) {
      wrong.push(`diameter: a bar of ${SMALLEST} to ${LARGEST} mm, found ${diameter}`)
    }
    gaps.push(...wrong, ...(size === null || size.known ? [] : size.gaps))
  }
  if (standard !== undefined && standard !== null) {
    const held = Object.hasOwn(acts.standards, standard) ? acts.standards[standard] : undefined
    if (held === undefined) gaps.push(`standard: ${standard} is not known here`)
    else if (!held.includes(grade)) gaps.push(`standard: ${standard} has no grade ${grade}`)
  }
  return gaps
}

function makesOf(input: PermittedInput): BarMake[] {
  const coats = input.galvanised === null ? [false, true] : [input.galvanised]
  return possibleProcesses(input).flatMap((process) =>
    coats.map((galvanised) => ({ ...input, process, galvanised })),
  )
}

function makeWords({ process, galvanised }: BarMake, input: PermittedInput): string {
  const coat = input.galvanised === null ? (galvanised ? 'galvanised ' : 'uncoated ') : ''
  return `${coat}${process} bar`
}

function answerFor(act: Act, make: BarMake): PermittedAct {
  const fitting = make.family.steel.acts.rules.filter((rule) => fits(rule, act, make))
  for (const rule of fitting) {
    if (rule.sizes !== undefined && make.diameter === null) {
      return {
        act,
        answer: 'unknown',
        conditions: ['diameter: the answer hangs on it, mm'],
        source: rule.source,
      }
    }
    if (!sizeFits(rule, make.diameter)) continue
    const { answer, conditions, source } = rule
    return act === 'bend once' && answer === 'yes'
      ? bendOnce(make, source)
      : { act, answer, conditions, source }
  }
  return { act, answer: 'unknown', conditions: [`${act}: no confirmed value`], source: null }
}

function fits(rule: ActRule, act: Act, { grade, process, galvanised, standard }: BarMake): boolean {
  return (
    rule.acts.includes(act) &&
    (rule.grades?.includes(grade) ?? true) &&
    (rule.madeBy?.includes(process) ?? true) &&
    (rule.galvanised ?? galvanised) === galvanised &&
    (rule.standard ?? standard) === standard
  )
}

function sizeFits({ sizes }: ActRule, diameter: number | null): boolean {
  return sizes === undefined || (diameter !== null && diameter >= sizes.from && diameter <= sizes.to)
}

function notesOf({ process, galvanised, grade }: PermittedInput, makes: readonly BarMake[]): string[] {
  const possible = [...new Set(makes.map((make) => make.process))]
  const notes: string[] = []
  if (possible.length > 1) {
    notes.push(
      `${process === 'unknown' ? 'Process not known' : 'Hot rolled says no more'}: each answer is the strictest of ${possible.join(', ')}.`,
    )
  } else if (process === 'unknown') {
    notes.push(`Process not known: grade ${grade} is taken as ${possible[0]}, the only one confirmed for it.`)
  }
  if (galvanised === null)
    notes.push('Galvanised or not is not known: each answer is the stricter of the two.')
  return notes
}
