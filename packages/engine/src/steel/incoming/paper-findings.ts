import type { TensileLimits } from '../../codes/delivered-bar.ts'
import type { SteelRules } from '../../codes/steel-rules.ts'
import { commonPractice, enteredBy, GEOMETRY, type Source } from '../../working/source.ts'
import { joinVerdicts, type Verdict } from '../../working/verdict.ts'
import type { Step } from '../../working/worked.ts'
import { heatText } from './bar-findings.ts'
import { type Bundle, heatsOf, sameHeat } from './bundle.ts'
import type { Finding } from './finding.ts'

interface Input {
  readonly bundle: Bundle
  readonly rules: SteelRules
}

const PAPERS = commonPractice('papers belong to the bars they came with')

/** What the docket says against the order. No docket is a case of its own and keeps nothing apart by itself. */
export function docketFinding({ bundle: { docket, ordered } }: Input): Finding {
  const base = {
    id: 'docket',
    what: 'Docket against the order',
    wanted: `${ordered.diameter} mm ${ordered.grade}`,
    onFail: 'ask',
    source: enteredBy('the yard: its order'),
    working: [],
  } as const
  if (docket === undefined) {
    return {
      ...base,
      found: null,
      verdict: 'unknown',
      onUnknown: 'ask',
      unknown: ['docket: what it says, or that none came'],
    }
  }
  if (docket === null) {
    return {
      ...base,
      found: 'no docket',
      verdict: 'unknown',
      onUnknown: 'told',
      unknown: ['docket: none came; the bar itself, tag, certificate or a test decide'],
    }
  }
  const differs = [
    ...(docket.diameter !== undefined && Math.abs(docket.diameter - ordered.diameter) > 0.5
      ? [`${docket.diameter} mm`]
      : []),
    ...(docket.grade !== undefined && docket.grade !== ordered.grade ? [docket.grade] : []),
  ]
  const silent = [
    ...(docket.diameter === undefined ? ['docket.diameter: the size that it names'] : []),
    ...(docket.grade === undefined ? ['docket.grade: the grade that it names'] : []),
  ]
  return {
    ...base,
    found: [docket.number, docket.diameter === undefined ? '' : `${docket.diameter} mm`, docket.grade ?? '']
      .filter((part) => part !== '')
      .join(', '),
    verdict: differs.length > 0 ? 'fail' : silent.length > 0 ? 'unknown' : 'pass',
    onUnknown: 'told',
    unknown: differs.length > 0 ? [] : silent,
    ...(differs.length > 0 ? { note: 'Wrong paper or wrong steel: the bar decides which.' } : {}),
  }
}

/** Heat number on certificate, tag and docket: without one the steel cannot be traced, and two that differ are two steels. */
export function heatFinding({ bundle }: Input): Finding {
  const heats = heatsOf(bundle)
  const [first] = heats
  const differ = first !== undefined && heats.some(({ heat }) => !sameHeat(heat, first.heat))
  // One paper alone says nothing of these bars: the tag is on them, and two papers that agree came together.
  const loose = heats.length === 1 && first !== undefined && first.on !== 'tag'
  return {
    id: 'heat',
    what: 'Heat number',
    found: heatText(bundle),
    wanted: 'one heat on certificate, tag and docket',
    verdict: differ ? 'fail' : first === undefined || loose ? 'unknown' : 'pass',
    onFail: 'quarantine',
    onUnknown: 'ask',
    unknown:
      first === undefined
        ? ['heat: on certificate, tag or docket']
        : loose
          ? [`tag.heat: on the bundle itself; only the ${first.on} names a heat`]
          : [],
    ...(differ ? { note: 'The certificate is of another heat than the bars.' } : {}),
    source: PAPERS,
    working: [],
  }
}

/** Proof of the steel: a certificate of this heat for this grade, or tests of samples that hold. */
export function proofFinding(input: Input): Finding {
  const { bundle } = input
  const { certificate, ordered, tests = [] } = bundle
  const base = { id: 'proof', what: 'Certificate or tests', onFail: 'quarantine', source: PAPERS } as const
  if (certificate?.grade !== undefined && certificate.grade !== ordered.grade) {
    return {
      ...base,
      found: `certificate ${certificate.number}: ${certificate.grade}`,
      wanted: ordered.grade,
      verdict: 'fail',
      onUnknown: 'ask',
      unknown: [],
      working: [],
    }
  }
  if (certificate?.diameter !== undefined && Math.abs(certificate.diameter - ordered.diameter) > 0.5) {
    return {
      ...base,
      found: `certificate ${certificate.number}: ${certificate.diameter} mm`,
      wanted: `${ordered.diameter} mm`,
      verdict: 'fail',
      onUnknown: 'ask',
      unknown: [],
      working: [],
    }
  }
  const tested = tests.length > 0 ? testsFinding(input) : null
  const certified = heatsOf(bundle).some(({ on }) => on === 'certificate')
  const paper = certificate?.grade !== undefined && certified
  if (tested !== null && (tested.verdict === 'fail' || !paper)) return tested
  if (paper) {
    return {
      ...base,
      found: `certificate ${certificate.number}: ${certificate.grade}, heat ${certificate.heat}`,
      wanted: `certificate for ${ordered.grade} with the heat number`,
      verdict: 'pass',
      onUnknown: 'ask',
      unknown: [],
      working: [],
    }
  }
  return {
    ...base,
    found:
      certificate === null
        ? 'no certificate'
        : certificate === undefined
          ? null
          : `certificate ${certificate.number}`,
    wanted: `certificate for ${ordered.grade} with the heat number, or tests`,
    verdict: 'unknown',
    onUnknown: 'ask',
    unknown: [
      certificate == null
        ? 'certificate: from the mill, by the heat number or the mill’s mark'
        : [certificate.grade === undefined ? 'certificate.grade' : '', certified ? '' : 'certificate.heat']
            .filter((part) => part !== '')
            .join(' and '),
      'or tests: samples of this bundle pulled by a laboratory',
    ],
    working: [],
  }
}

/** Tests of samples against the limits of the grade. Characteristic limits, so that a value under one is a question for the engineer. */
function testsFinding({ bundle: { tests = [], ordered, seen = [] }, rules }: Input): Finding {
  const { standards } = rules.identify({ seen })
  const limits = rules.delivered.tensile({
    grade: ordered.grade,
    diameter: ordered.diameter,
    ...(standards === undefined ? {} : { standards }),
  })
  const found = tests.map((test) => `${test.reference}: ${test.yield} / ${test.strength} MPa`).join('; ')
  const base = {
    id: 'proof',
    what: 'Certificate or tests',
    found,
    onFail: 'quarantine',
    onUnknown: 'ask',
  } as const
  if (limits === null) {
    return {
      ...base,
      wanted: `limits of ${ordered.grade}`,
      verdict: 'unknown',
      unknown: [`tests: no confirmed limits for ${ordered.diameter} mm ${ordered.grade}`],
      source: PAPERS,
      working: [],
    }
  }
  const judged = tests.map((test, index) => judgeTest(test, limits, index))
  const verdict = joinVerdicts(judged.flatMap(({ verdicts }) => verdicts))
  return {
    ...base,
    wanted: limitText(limits),
    verdict,
    unknown: verdict === 'unknown' ? judged.flatMap(({ missing }) => missing) : [],
    ...(limits.note === undefined ? {} : { note: limits.note }),
    source: limits.source,
    working: judged.flatMap(({ working }) => working),
  }
}

function judgeTest(
  test: NonNullable<Bundle['tests']>[number],
  limits: TensileLimits,
  index: number,
): { readonly verdicts: Verdict[]; readonly missing: string[]; readonly working: Step[] } {
  const ratio = test.strength / test.yield
  const within = (value: number, low: number | null, high: number | null): Verdict =>
    (low !== null && value < low) || (high !== null && value > high) ? 'fail' : 'pass'
  const asked = (value: number | undefined, low: number | null): Verdict =>
    low === null ? 'pass' : value === undefined ? 'unknown' : within(value, low, null)
  return {
    verdicts: [
      within(test.yield, limits.yieldLow, limits.yieldHigh),
      within(test.strength, limits.strengthLow, null),
      within(ratio, limits.ratioLow, limits.ratioHigh),
      asked(test.uniform, limits.uniformLow),
      asked(test.elongation, limits.elongationLow),
    ],
    missing: [
      ...(limits.uniformLow !== null && test.uniform === undefined
        ? [`tests[${index}].uniform: elongation at greatest force, %`]
        : []),
      ...(limits.elongationLow !== null && test.elongation === undefined
        ? [`tests[${index}].elongation: elongation after fracture, %`]
        : []),
    ],
    working: [
      {
        symbol: 'Rm/Re',
        formula: 'Rm / Re',
        given: { Rm: test.strength, Re: test.yield },
        result: ratio,
        unit: '',
        source: GEOMETRY,
        note: test.reference,
      },
    ],
  }
}

function limitText(limits: TensileLimits): string {
  const band = (low: number | null, high: number | null): string =>
    high === null ? `${round(low)} or more` : `${round(low)} to ${round(high)}`
  return [
    `Re ${band(limits.yieldLow, limits.yieldHigh)} MPa`,
    limits.strengthLow === null ? '' : `Rm ${round(limits.strengthLow)} MPa or more`,
    limits.ratioLow === null ? '' : `Rm/Re ${band(limits.ratioLow, limits.ratioHigh)}`,
    limits.uniformLow === null ? '' : `Agt ${limits.uniformLow} % or more`,
    limits.elongationLow === null ? '' : `A ${limits.elongationLow} % or more`,
  ]
    .filter((part) => part !== '')
    .join(', ')
}

function round(value: number | null): string {
  return value === null ? '' : String(Number(value.toFixed(2)))
}

/** What the process of the steel is by its papers: told, since what may be done with the bar hangs on it. */
export function processFinding({ bundle: { certificate } }: Input): Finding {
  const process = certificate?.process
  const known = process !== undefined && process !== 'unknown'
  const source: Source = known ? enteredBy(`certificate ${certificate?.number}`) : PAPERS
  return {
    id: 'process',
    what: 'How the steel was made',
    found: known ? process : null,
    wanted: 'told by the certificate',
    verdict: known ? 'pass' : 'unknown',
    onFail: 'told',
    onUnknown: 'told',
    unknown: known ? [] : ['certificate.process: not known, so that the strictest rules hold for this bar'],
    source,
    working: [],
  }
}
