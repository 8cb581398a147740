import type { DrawnDuct, DrawnVoid } from '../panel/drawn-voids.ts'
import { netSection } from '../panel/net-section.ts'
import type { Panel } from '../panel/panel.ts'
import type { Point, Ring } from '../panel/point.ts'
import { clipRegions, intersect, regionArea, unite } from '../panel/region.ts'
import { ductStrip } from '../panel/void-bodies.ts'
import { linesApart } from '../panel/way.ts'
import { enteredBy, GEOMETRY, STATICS } from '../working/source.ts'
import { type Assumed, known, type Step, unknown, type Worked } from '../working/worked.ts'

/** The least section of a panel with void formers and ducts over the full one. */
export interface CutSection {
  /** Of the section modulus: for bending. */
  readonly bending: number
  /** Of section modulus and area, the lesser: for what hangs and is pulled along. */
  readonly pulled: number
}

const FULL: CutSection = { bending: 1, pulled: 1 }

/**
 * Least section that any tension of the panel is held against, wherever it stands: that across a duct with both leaves as one, and that across a void former as its designer
 * gives it. 1 for a full panel.
 *
 * Unknown where a void former has no section of its designer (leaves bend on their own beside what they do together, which is not computed here), and where two lie over each other.
 */
export function cutSection({ drawing, bodies }: Pick<Panel, 'drawing' | 'bodies'>): Worked<CutSection> {
  if (bodies.length === 0) return known(FULL, [])
  const { voids = [], ducts = [], thickness } = drawing
  const gaps = [
    ...voids.flatMap(({ mark, section }, i) =>
      section === undefined
        ? [
            `void formers: bending of the reduced section is not computed; voids[${i}].section of ${mark} by the designer`,
          ]
        : [],
    ),
    ...overEachOther(voids, ducts).map(
      ([one, other]) => `${one} and ${other} lie over each other: the section across both is not computed`,
    ),
  ]
  if (gaps.length > 0) return unknown(...gaps)
  const working: Step[] = []
  let { bending, pulled } = FULL
  const count = (mark: string, share: number, depth: number): void => {
    bending = Math.min(bending, share)
    pulled = Math.min(pulled, share, 1 - depth / thickness)
    working.push({
      symbol: `a ${mark}`,
      formula: '1 − d / t',
      given: { d: depth, t: thickness },
      result: 1 - depth / thickness,
      unit: '',
      source: GEOMETRY,
      note: 'share of the area, for tension along the panel',
    })
  }
  for (const { mark, diameter, height } of ducts) {
    const net = netSection({ thickness, from: height - diameter / 2, to: height + diameter / 2 })
    if (net === null) return unknown(`duct ${mark}: concrete above and below it`)
    working.push(
      {
        symbol: `Z ${mark}`,
        formula: 'section cut along the duct, leaves above and below as one, to the farther face',
        given: { t: thickness, d: diameter, h: height },
        result: net.modulus,
        unit: 'mm²',
        source: GEOMETRY,
        by: 'search',
        note: 'of a width of 1 mm',
      },
      {
        symbol: `s ${mark}`,
        formula: '6 Z / t²',
        given: { Z: net.modulus, t: thickness },
        result: net.share,
        unit: '',
        source: GEOMETRY,
        note: 'share of the full section modulus',
      },
    )
    count(mark, net.share, diameter)
  }
  for (const { mark, section, depth } of voids) {
    if (section === undefined) continue
    working.push({
      symbol: `s ${mark}`,
      formula: 'share of the full section modulus across the void former',
      given: {},
      result: section,
      unit: '',
      source: enteredBy('the drawing'),
      by: 'table',
    })
    count(mark, section, depth)
  }
  return known({ bending, pulled }, working)
}

/** A bending stress of the full section on the least one, MPa. */
export function cutStep(stress: number, { bending }: Pick<CutSection, 'bending'>): Step {
  return {
    symbol: 'σ cut',
    formula: 'σ / s',
    given: { σ: stress, s: bending },
    result: stress / bending,
    unit: 'MPa',
    source: STATICS,
    note: 's the least section of void formers and ducts, as if it stood at the peak',
  }
}

/** What a plate of even stiffness leaves out; nothing for a full panel. */
export function evenPlate({ bodies, drawing, centreHeight }: Panel): Assumed[] {
  if (bodies.length === 0) return []
  const middle = drawing.thickness / 2
  return [
    {
      field: 'stiffness at void formers and ducts',
      value: 'full section',
      unit: '',
      why: 'moments and shares are those of an even plate; each tension is held against the least section of the panel',
    },
    ...(Math.abs(centreHeight - middle) > 1
      ? [
          {
            field: 'centre of gravity above the mould face',
            value: middle,
            unit: 'mm',
            why: `mid-thickness when it is turned and hangs; void formers put it at ${Math.round(centreHeight)} mm`,
          },
        ]
      : []),
  ]
}

function overEachOther(voids: readonly DrawnVoid[], ducts: readonly DrawnDuct[]): [string, string][] {
  const lineOf = (duct: DrawnDuct) => duct.line as unknown as readonly Point[]
  const ringOf = (one: DrawnVoid) => one.outline as unknown as Ring
  const name = (kind: 'void former' | 'duct', mark: string) => `${kind} ${mark}`
  return [
    ...voids.flatMap((one, i) =>
      voids
        .slice(0, i)
        .filter((other) => regionArea(intersect([ringOf(one)], [ringOf(other)])) > 1)
        .map((other): [string, string] => [name('void former', other.mark), name('void former', one.mark)]),
    ),
    ...ducts.flatMap((duct, i) => [
      ...voids
        .filter((one) => regionArea(clipRegions('both', ductStrip(duct), unite([ringOf(one)]))) > 1)
        .map((one): [string, string] => [name('void former', one.mark), name('duct', duct.mark)]),
      ...ducts
        .slice(0, i)
        .filter((other) => linesApart(lineOf(duct), lineOf(other)) < (duct.diameter + other.diameter) / 2)
        .map((other): [string, string] => [name('duct', other.mark), name('duct', duct.mark)]),
    ]),
  ]
}
