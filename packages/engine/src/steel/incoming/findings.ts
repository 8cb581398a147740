import type { SteelRules } from '../../codes/steel-rules.ts'
import {
  countFinding,
  gradeFinding,
  orderFinding,
  readFinding,
  rolledSizeFinding,
  surfaceFinding,
} from './bar-findings.ts'
import type { Bundle } from './bundle.ts'
import { type BundleFindings, type Finding, outcomeOf, weighedVerdict, weighs } from './finding.ts'
import { docketFinding, heatFinding, processFinding, proofFinding } from './paper-findings.ts'
import { lengthFinding, sizeFinding } from './size-findings.ts'

/**
 * What is found about a bundle, and what follows: accept, ask, or keep apart.
 *
 * What is rolled on the bar and what it weighs decide; docket and certificate come beside it. Only what was recorded counts: what is
 * missing asks, and nothing is cut from a bundle that somebody entitled has not accepted.
 */
export function bundleFindings(input: {
  readonly bundle: Bundle
  readonly rules: SteelRules
}): BundleFindings {
  const rolled = rolledSizeFinding(input)
  const findings = [
    orderFinding(input),
    gradeFinding(input),
    ...(rolled === null ? [] : [rolled]),
    readFinding(input),
    sizeFinding(input),
    lengthFinding(input),
    countFinding(input),
    surfaceFinding(input),
    docketFinding(input),
    heatFinding(input),
    proofFinding(input),
    processFinding(input),
  ]
  const against = findings.filter((finding) => finding.verdict !== 'pass' && weighs(finding))
  return {
    outcome: outcomeOf(findings),
    verdict: weighedVerdict(findings),
    findings,
    because: against.map(sentence),
    next: [...new Set(against.flatMap(({ unknown }) => unknown))],
  }
}

function sentence({ what, found, wanted, verdict, note }: Finding): string {
  const said = found === null ? 'nothing recorded' : found
  const ends = note === undefined ? '' : `. ${note.replace(/\.$/, '')}`
  return verdict === 'fail'
    ? `${what}: ${said}, wanted ${wanted}${ends}.`
    : `${what}: ${said}, not known yet.`
}
