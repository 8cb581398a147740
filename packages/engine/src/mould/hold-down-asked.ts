import type { Asked } from '../working/asked.ts'
import { commonPractice } from '../working/source.ts'
import type { YardStrap } from '../yard/yard.ts'
import { type HeldDuct, type HeldVoid, strapGap } from './held-down.ts'

const HOLD_DOWN = commonPractice('hold-down of void formers')
const LAYERS = commonPractice('placing round void formers')

/** How far a former or duct may stand off its height, mm. */
const HEIGHT = 5

/** What is looked at before the pour. */
export function heldAtSet(
  voids: readonly HeldVoid[],
  ducts: readonly HeldDuct[],
  strap: YardStrap | null,
): Asked[] {
  return [...voids.flatMap((one) => voidAtSet(one, strap)), ...ducts.flatMap((one) => ductAtSet(one, strap))]
}

function tick(step: Asked['step'], id: string, what: string, note: string, source = HOLD_DOWN): Asked {
  return { id, step, what, kind: 'tick', unit: '', source, note }
}

function voidAtSet(held: HeldVoid, strap: YardStrap | null): Asked[] {
  const { mark, floats, above, gross, push, length } = held
  const side = `Fill both sides evenly: concrete on one side alone pushes ${kn(push)} kN/m, ${kn((push * length) / 1000)} kN on the long side.`
  if (!floats) {
    return [
      tick(
        'set',
        `void:${mark}`,
        `Void former ${mark} at its place, sealed to the bed all round and fixed`,
        `If concrete gets under it, it lifts with ${kn(gross)} kN. ${side}`,
      ),
    ]
  }
  return [
    tick(
      'set',
      `void:${mark}`,
      `Void former ${mark} at its place, fixed against floating and sideways`,
      side,
    ),
    {
      id: `void-height:${mark}`,
      step: 'set',
      what: `Underside of void former ${mark} above the mould face`,
      kind: 'number',
      unit: 'mm',
      low: Math.max(0, above - HEIGHT),
      high: above + HEIGHT,
      source: commonPractice('set-up of a mould'),
      note: `Drawn ${round(above)} mm.`,
    },
    ...strapsAsked(held, strap),
  ]
}

function strapsAsked({ mark, hold, straps, spacing, load }: HeldVoid, strap: YardStrap | null): Asked[] {
  if (straps === 0) return []
  const base = {
    id: `void-straps:${mark}`,
    step: 'set',
    what: `Straps over void former ${mark}, counted`,
    kind: 'number',
    unit: 'pieces',
    source: HOLD_DOWN,
  } as const
  const gap = strapGap(strap)
  if (straps === null || spacing === null || load === null || gap !== null)
    return [{ ...base, unknown: [gap ?? 'straps'], note: `${kn(hold)} kN to hold down.` }]
  return [
    {
      ...base,
      low: straps,
      note: `At most ${Math.floor(spacing)} mm apart, ${kn(load)} kN on each, ${kn(hold)} kN in all.`,
    },
  ]
}

function ductAtSet(
  { mark, diameter, height, hold, spacing, ties, load, by }: HeldDuct,
  strap: YardStrap | null,
): Asked[] {
  const gap = strapGap(strap)
  const base = {
    id: `duct-ties:${mark}`,
    step: 'set',
    what: `Ties of duct ${mark}, counted`,
    kind: 'number',
    unit: 'pieces',
    source: HOLD_DOWN,
  } as const
  return [
    tick(
      'set',
      `duct:${mark}`,
      `Duct ${mark} on its line, ends and joints closed`,
      `Outside ${round(diameter)} mm, underside ${round(height - diameter / 2)} mm above the mould face.`,
    ),
    ties === null || spacing === null || load === null || gap !== null
      ? { ...base, unknown: [gap ?? 'ties'], note: `${kn(hold)} kN to hold down a metre.` }
      : {
          ...base,
          low: ties,
          note: `At most ${Math.floor(spacing)} mm apart, by ${by}; ${kn(load)} kN on each.`,
        },
  ]
}

/** What is seen while placing. */
export function heldAtPlacing(voids: readonly HeldVoid[], ducts: readonly HeldDuct[]): Asked[] {
  if (voids.length === 0 && ducts.length === 0) return []
  return [
    ...voids
      .filter(({ floats }) => floats)
      .map(({ mark, firstLayer, hold, holdInTwo }) =>
        tick(
          'place',
          `void-layers:${mark}`,
          `Concrete under void former ${mark} placed and vibrated before it is covered`,
          `First layer to ${round(firstLayer)} mm from both sides; the next once it no longer flows: ${kn(holdInTwo)} kN to hold instead of ${kn(hold)}. The peak comes as the concrete just covers it.`,
          LAYERS,
        ),
      ),
    tick(
      'place',
      'voids-in-place',
      'Void formers and ducts have not risen or moved',
      'Look at straps and ties after each pass.',
      LAYERS,
    ),
  ]
}

/** Two decimals, a load never rounded down. */
function kn(value: number): string {
  return (Math.ceil(value * 100 - 1e-9) / 100).toFixed(2)
}

function round(value: number): number {
  return Math.round(value * 10) / 10
}
