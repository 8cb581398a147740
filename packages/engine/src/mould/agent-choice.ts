import { commonPractice, enteredBy, type Source } from '../working/source.ts'
import type { YardAgent } from '../yard/yard.ts'
import { PUT_ON_RATES, putOnRate } from './release-agent.ts'

/** A release agent for one mould face. */
export interface AgentChoice {
  /** Mould face in the yard's words. */
  readonly face: string
  /** Beds with this face. */
  readonly beds: readonly string[]
  /** The yard's product; null where it lists none that suits. */
  readonly agent: string | null
  readonly kind: YardAgent['kind'] | null
  /** m² a litre covers; null where not known. */
  readonly rate: number | null
  readonly source: Source
  readonly dryingMinutes: number | null
  /** What its kind leaves on faces that are seen; null for nothing. */
  readonly caution: string | null
  /** Products that do not go on this face, with the reason. */
  readonly against: readonly string[]
}

type Kind = YardAgent['kind']

/** Kinds in the order in which they are taken for a visible face: a thin reacting film first. */
const ORDER: readonly Kind[] = [
  'reactive',
  'oil with surfactant',
  'wax',
  'water-in-oil cream',
  'neat oil',
  'oil-in-water emulsion',
]

/** Which kind suits which face: common practice of the trade, no source. */
export const SUITS: Source = commonPractice('which kind of release agent suits which mould face')

/** Why a kind does not go on a face; null where it may. */
export function unsuited(kind: Kind, face: string): string | null {
  return kind === 'water-in-oil cream' && /steel/i.test(face)
    ? 'a water-in-oil cream does not go on steel'
    : null
}

/** What a kind leaves on faces that are seen. */
const CAUTIONS: Readonly<Partial<Record<Kind, string>>> = {
  'neat oil': 'Neat oil leaves blowholes on faces that are seen.',
  'oil-in-water emulsion': 'An oil-in-water emulsion is not for faces that are seen.',
}

/** The rate that a product's sheet gives for a face: the longest of its face words that the face has. Null where none is in it. */
export function sheetRate({ rates }: YardAgent, face: string): number | null {
  const named = rates
    .filter((rate) => face.toLowerCase().includes(rate.face.toLowerCase()))
    .sort((a, b) => b.face.length - a.face.length)
  return named[0]?.rate ?? null
}

/**
 * The yard's product for a mould face: of those that suit it and whose sheet gives a rate for it, the kind that comes first, then the first
 * listed. The product's sheet outranks the table of common rates, which stands in only where the yard lists no product at all.
 */
export function chooseAgent(
  face: string,
  beds: readonly string[],
  agents: readonly YardAgent[],
): AgentChoice {
  const against: string[] = []
  const fit = agents.flatMap((agent) => {
    const why = unsuited(agent.kind, face)
    const rate = sheetRate(agent, face)
    if (why !== null) against.push(`${agent.mark}: ${why}`)
    else if (rate === null) against.push(`${agent.mark}: its sheet gives no rate for ${face}`)
    return why === null && rate !== null ? [{ agent, rate }] : []
  })
  fit.sort((a, b) => ORDER.indexOf(a.agent.kind) - ORDER.indexOf(b.agent.kind))
  const [best] = fit
  const base = { face, beds, against }
  if (best !== undefined) {
    const { agent, rate } = best
    return {
      ...base,
      agent: agent.mark,
      kind: agent.kind,
      rate,
      source: enteredBy(`yard: agent ${agent.mark}`),
      dryingMinutes: agent.dryingMinutes ?? null,
      caution: CAUTIONS[agent.kind] ?? null,
    }
  }
  return {
    ...base,
    agent: null,
    kind: null,
    rate: agents.length === 0 ? putOnRate(face) : null,
    source: PUT_ON_RATES,
    dryingMinutes: null,
    caution: null,
  }
}
