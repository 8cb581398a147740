import type { SteelRules } from '../../codes/steel-rules.ts'
import { commonPractice, enteredBy } from '../../working/source.ts'
import { type Bundle, heatsOf, type Surface } from './bundle.ts'
import type { Finding } from './finding.ts'

/** Bars on which the marks of a bundle are read: a mixed bundle shows itself. Common practice, no source. */
export const BARS_TO_READ = 3

/** A drawing in mm may round the size of a bar in inches, mm. */
const SAME_SIZE = 0.5

interface Input {
  readonly bundle: Bundle
  readonly rules: SteelRules
}

/** Whether the grade that was ordered is a grade and the size a size of the place. */
export function orderFinding({ bundle: { ordered }, rules }: Input): Finding {
  const grade = rules.grades.some((each) => each.grade === ordered.grade)
  const size = rules.delivered.sizes.some((each) => Math.abs(each - ordered.diameter) <= SAME_SIZE)
  const unknown = [
    ...(grade ? [] : [`ordered.grade: ${ordered.grade} is no grade of this code family`]),
    ...(size ? [] : [`ordered.diameter: ${ordered.diameter} mm is no size of this code family`]),
  ]
  return {
    id: 'order',
    what: 'Size and grade ordered',
    found: `${ordered.diameter} mm ${ordered.grade}`,
    wanted: `${rules.grades.map((each) => each.grade).join(', ')}; ${rules.delivered.sizes.map((each) => Math.round(each)).join(', ')} mm`,
    verdict: unknown.length > 0 ? 'unknown' : 'pass',
    onFail: 'ask',
    onUnknown: 'ask',
    unknown,
    source: enteredBy('the yard: its order'),
    working: [],
  }
}

/**
 * What is rolled on the bar against what was ordered. Where the mark leaves several grades, a certificate of one heat with the tag may tell
 * which; the docket never does.
 */
export function gradeFinding({ bundle, rules }: Input): Finding {
  const { ordered, seen, certificate } = bundle
  const base = {
    id: 'grade',
    what: 'Grade rolled on the bar',
    wanted: ordered.grade,
    onFail: 'quarantine',
    onUnknown: 'ask',
  } as const
  if (seen === undefined || seen.length === 0) {
    return {
      ...base,
      found: null,
      verdict: 'unknown',
      unknown: ['seen: marks read on the bar, or none'],
      source: commonPractice('what is rolled on the bar decides'),
      working: [],
    }
  }
  const read = rules.identify({ seen })
  const grades = read.candidates.map(({ grade }) => grade)
  const found = grades.length > 0 ? `${seen.join(' ')}: ${grades.join(' or ')}` : seen.join(' ')
  const shared = { ...base, found, source: read.source, working: [] }
  if (read.verdict === 'fail') {
    return {
      ...shared,
      verdict: 'fail',
      unknown: [],
      ...(read.notes[0] === undefined ? {} : { note: read.notes[0] }),
    }
  }
  if (grades.length > 0 && !grades.includes(ordered.grade)) {
    return {
      ...shared,
      verdict: 'fail',
      unknown: [],
      note: `The bar is not ${ordered.grade}, whatever the papers say.`,
    }
  }
  if (grades.length === 1 && read.verdict === 'pass') return { ...shared, verdict: 'pass', unknown: [] }
  // What the certificate may tell is what one mark leaves open; two marks that differ are two steels, whatever it says.
  const gaps = read.unknown.filter((gap) => !gap.startsWith('process') && gap !== read.byCertificate)
  const told = certificate?.grade
  if (read.byCertificate !== undefined && gaps.length === 0 && told !== undefined && grades.includes(told)) {
    return told === ordered.grade
      ? {
          ...shared,
          found: `${found}; certificate ${certificate?.number}: ${told}`,
          verdict: 'pass',
          unknown: [],
          note: 'The mark leaves the class open; the certificate tells it. Both must be of one heat.',
        }
      : {
          ...shared,
          found: `${found}; certificate ${certificate?.number}: ${told}`,
          verdict: 'fail',
          unknown: [],
          note: `The certificate says ${told}.`,
        }
  }
  return {
    ...shared,
    verdict: 'unknown',
    unknown: read.unknown.filter((gap) => !gap.startsWith('process')).map((gap) => `seen: ${gap}`),
  }
}

/** The size rolled on the bar, where the family rolls one, against the size ordered; null where none was read. */
export function rolledSizeFinding({ bundle: { ordered, seen = [] }, rules }: Input): Finding | null {
  const { sizes, source } = rules.identify({ seen })
  if (sizes === undefined) return null
  return {
    id: 'rolled-size',
    what: 'Size rolled on the bar',
    found: `${sizes.map((size) => size.toFixed(1)).join(' or ')} mm`,
    wanted: `${ordered.diameter} mm`,
    verdict: sizes.some((size) => Math.abs(size - ordered.diameter) <= SAME_SIZE) ? 'pass' : 'fail',
    onFail: 'quarantine',
    onUnknown: 'told',
    unknown: [],
    source,
    working: [],
  }
}

/** On how many bars the marks were read. */
export function readFinding({ bundle: { barsRead, counted } }: Input): Finding {
  const wanted = Math.min(BARS_TO_READ, counted ?? BARS_TO_READ)
  return {
    id: 'bars-read',
    what: 'Bars on which the marks were read',
    found: barsRead === undefined ? null : String(barsRead),
    wanted: `${wanted} or more`,
    verdict: barsRead === undefined ? 'unknown' : barsRead >= wanted ? 'pass' : 'fail',
    onFail: 'ask',
    onUnknown: 'ask',
    unknown: barsRead === undefined ? ['barsRead: bars on which the marks were read'] : [],
    note: 'From different places of the bundle: bundles get mixed.',
    source: commonPractice('marks are read on several bars of a bundle'),
    working: [],
  }
}

const SURFACE: Readonly<
  Record<Surface, { readonly verdict: 'pass' | 'ask' | 'fail'; readonly say: string }>
> = {
  clean: { verdict: 'pass', say: '' },
  'light rust': { verdict: 'pass', say: '' },
  'loose rust': {
    verdict: 'ask',
    say: 'Brush a sample and weigh it again: the mass after cleaning decides.',
  },
  pitted: {
    verdict: 'ask',
    say: 'Brush and weigh a sample: the mass after cleaning decides, and the engineer looks at the pits.',
  },
  'oil or paint': { verdict: 'ask', say: 'Clean before use: oil and paint take the bond.' },
  'mud or ice': { verdict: 'ask', say: 'Clean before use.' },
  kinked: { verdict: 'fail', say: 'A kinked bar is not straightened: set those bars aside.' },
  'ribs damaged': { verdict: 'fail', say: 'Ribs hold the bar: set those bars aside for the engineer.' },
  cracked: { verdict: 'fail', say: 'A cracked bar is not used.' },
}

/** How the bars look. */
export function surfaceFinding({ bundle: { surface } }: Input): Finding {
  const seen = surface ?? []
  const bad = seen.filter((each) => SURFACE[each].verdict === 'fail')
  const open = seen.filter((each) => SURFACE[each].verdict === 'ask')
  const notes = [...bad, ...open].map((each) => SURFACE[each].say)
  return {
    id: 'surface',
    what: 'Surface and straightness',
    found: seen.length > 0 ? seen.join(', ') : null,
    wanted: 'clean or light rust',
    verdict: bad.length > 0 ? 'fail' : open.length > 0 || seen.length === 0 ? 'unknown' : 'pass',
    onFail: 'quarantine',
    onUnknown: 'ask',
    unknown:
      seen.length === 0
        ? ['surface: how the bars look']
        : open.map((each) => `surface: ${each}. ${SURFACE[each].say}`),
    ...(bad.length > 0 ? { note: notes.join(' ') } : {}),
    source: commonPractice('bars free of loose rust, oil, mud and damage'),
    working: [],
  }
}

/** Bars counted against docket and order: told, it keeps no steel apart. */
export function countFinding({ bundle: { counted, docket, ordered } }: Input): Finding {
  const wanted = docket?.count ?? ordered.count
  const open = [
    ...(counted === undefined ? ['counted: bars in the bundle'] : []),
    ...(wanted === undefined ? ['docket.count: bars by docket or order'] : []),
  ]
  return {
    id: 'count',
    what: 'Bars counted',
    found: counted === undefined ? null : String(counted),
    wanted: wanted === undefined ? 'not said by docket or order' : String(wanted),
    verdict: open.length > 0 ? 'unknown' : counted === wanted ? 'pass' : 'fail',
    onFail: 'told',
    onUnknown: 'told',
    unknown: open,
    source: enteredBy('docket or order'),
    working: [],
  }
}

/** Heat number: all that papers and tag give must be the same. */
export function heatText(bundle: Bundle): string | null {
  const heats = heatsOf(bundle)
  return heats.length === 0 ? null : heats.map(({ on, heat }) => `${on} ${heat}`).join(', ')
}
