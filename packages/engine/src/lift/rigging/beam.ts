import { STATICS } from '../../working/source.ts'
import type { Step } from '../../working/worked.ts'
import type { LegPlaces } from './leg-places.ts'
import type { RiggedBeam, RiggedInput, RiggedPick } from './rigging-types.ts'

/** Compression of a spreader under two top slings: `V tan(β)` of the more loaded end, kN. */
export function spreaderCompression(end: number, topAngle: number): number {
  return end * Math.tan((topAngle * Math.PI) / 180)
}

/** Bending of a beam that hangs at its middle with its load at both ends: `V b / 2` of the more loaded end, kN·m for mm. */
export function beamMoment(end: number, length: number): number {
  return (end * length) / 2000
}

/**
 * What a spreader or lifting beam has to carry. The load of an end is that of its legs in balance, or half of all where that is not known.
 *
 * Legs that reach inward pull the ends of a spreader together; legs that reach outward are not counted as a relief. Left out: its own weight, its
 * buckling.
 *
 * Source: statics.
 * Example: 67.5 kN, top slings 30° from the vertical: 19.49 kN; hung at its middle, drops 3.5 m apart: 59.06 kN·m.
 */
export function beamOf({
  input,
  places,
  picks,
}: {
  readonly input: RiggedInput
  readonly places: LegPlaces
  readonly picks: readonly RiggedPick[]
}): { readonly value: RiggedBeam | null; readonly working: readonly Step[] } {
  const { spread, topAngle, legs, height } = places
  if (!(spread > 0)) return { value: null, working: [] }
  const { load, rigging } = input
  const shareOf = (i: number): number => picks[i]!.share ?? load / picks.length
  const part = (i: number, end: number): number => (legs[i]!.end === 0 ? 0.5 : legs[i]!.end === end ? 1 : 0)
  const sum = (end: number, of: (i: number) => number): number =>
    picks.reduce((all, _, i) => all + part(i, end) * of(i), 0)
  const ofEnd = (end: number): number => sum(end, shareOf)
  const inward = (end: number): number =>
    sum(end, (i) => (shareOf(i) * Math.max(0, legs[i]!.inward)) / height)
  const end = Math.max(ofEnd(-1), ofEnd(1), load / 2)
  if (rigging.top === 'middle') {
    const moment = beamMoment(end, spread)
    const step: Step = {
      symbol: 'M beam',
      formula: 'V b / 2000',
      given: { V: end, b: spread },
      result: moment,
      unit: 'kN·m',
      source: STATICS,
      note: 'beam hung at its middle, V on its more loaded end; its own weight is not in it',
    }
    return { value: { length: spread, compression: null, moment, topAngle: null }, working: [step] }
  }
  if (topAngle === null)
    return { value: { length: spread, compression: null, moment: null, topAngle: null }, working: [] }
  const pull = Math.max(inward(-1), inward(1))
  const compression = spreaderCompression(end, topAngle) + pull
  const step: Step = {
    symbol: 'C',
    formula: 'V tan(β°) + Hi',
    given: { V: end, β: topAngle, Hi: pull },
    result: compression,
    unit: 'kN',
    source: STATICS,
    note: 'compression of the spreader, V on its more loaded end, Hi by legs that reach inward',
  }
  return { value: { length: spread, compression, moment: null, topAngle }, working: [step] }
}
