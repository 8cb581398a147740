import { bondCondition } from '../codes/eu/en1992-1-1-2004/lap.ts'
import type { LapLength, SteelGrade, SteelRules } from '../codes/steel-rules.ts'
import { type Drawing, type DrawnMat, isEdgeBars, isMat } from '../panel/drawing.ts'
import type { Panel } from '../panel/panel.ts'
import type { Ring } from '../panel/point.ts'
import { offset, type Region } from '../panel/region.ts'
import { ceilTo } from '../working/round.ts'
import { unknown, type Worked } from '../working/worked.ts'
import type { Yard } from '../yard/yard.ts'
import { besideListed } from './laid-out/beside-listed.ts'
import type { Obstacle } from './laid-out/clear-rows.ts'
import { type EdgeRun, edgeRuns } from './laid-out/edge-runs.ts'
import { type LaidRow, type LappedRows, lappedRows } from './laid-out/lapped-rows.ts'
import { rowObstacles } from './laid-out/row-obstacles.ts'
import { behindWeb, type Web, websOn } from './laid-out/webs.ts'
import { linesWithin, type MatLines, spansWithin } from './mat-lines.ts'

/** One mat of the drawing as it is built. */
export interface PlannedMat {
  /** Stable name: `mould-x`, `top-y-2`. */
  readonly key: string
  readonly mat: DrawnMat
  /** Concrete from the face of its layer to the bar itself, mm; null where the drawing gives no cover. */
  readonly cover: number | null
  /** Centreline above the mould face, mm. */
  readonly height: number | null
  /** Null where the edge cover is not given. */
  readonly laid: MatLines | null
  readonly rows: readonly LaidRow[]
  /** Longest bar of that size and grade in the yard, mm; null where not known. */
  readonly stock: number | null
  /** Lap by the code for these bars, at the greatest share that is lapped at one section; all of them where none is. */
  readonly codeLap: Worked<LapLength>
  /** Greatest share lapped at one section, percent; null without laps. */
  readonly share: number | null
  /** Least clear between the bars of neighbouring rows, laps counted, mm; null where not laid out or with one row. */
  readonly clear: number | null
  /** Lap as built: the drawing's, else the code's rounded up to 10 mm; null where not known. */
  readonly lap: number | null
  /** Rows longer than the stock that could not be lapped. */
  readonly unlapped: number
  readonly laps: number
  /** Pieces with no room beside the piece that they lap with. */
  readonly crowded: number
}

export interface MatsInput {
  readonly panel: Panel
  readonly yard: Yard | null
  readonly rules: SteelRules
}

/** Laps are ordered and measured in full centimetres. Common practice, no source. */
const LAP_STEP = 10

/** Every mat of a drawing, laid out and cut to the yard's stock. */
export function plannedMats({ panel, yard, rules }: MatsInput): PlannedMat[] {
  const { drawing } = panel
  const depth = { mould: 0, top: 0 }
  const names = new Map<string, number>()
  const webs = websAlong(panel, rules)
  const layers: { layer: DrawnMat['layer']; direction: DrawnMat['direction'] }[] = []
  const shrunk = new Map<number, Region>()
  const shrunkBy = (inset: number): Region => {
    const found = shrunk.get(inset) ?? offset(panel.region, -inset)
    shrunk.set(inset, found)
    return found
  }
  return (drawing.steel ?? []).filter(isMat).map((mat) => {
    const name = `${mat.layer}-${mat.direction}`
    const count = (names.get(name) ?? 0) + 1
    names.set(name, count)
    const face = drawing.cover?.[mat.layer]
    const cover = face === undefined ? null : face + depth[mat.layer]
    depth[mat.layer] += mat.diameter
    // Legs of bars along an edge lie beside the mat that crosses this one: nearer the face where that was laid before it.
    const overLegs = layers.some(({ layer, direction }) => layer === mat.layer && direction !== mat.direction)
    layers.push(mat)
    return plannedMat({
      key: count === 1 ? name : `${name}-${count}`,
      mat,
      cover,
      panel,
      yard,
      rules,
      shrunkBy,
      obstacles: rowObstacles({
        panel,
        yard,
        webs,
        direction: mat.direction,
        behind: (web) => behindWeb({ web, diameter: mat.diameter, over: overLegs ? [mat.layer] : [] }),
      }),
    })
  })
}

/** U-bars and hooks along edges; none where the drawing has none. */
function websAlong(panel: Panel, rules: SteelRules): ReadonlyMap<EdgeRun, Web> {
  return (panel.drawing.steel ?? []).some(isEdgeBars) ? websOn(panel, edgeRuns(panel), rules) : new Map()
}

interface OneMat extends MatsInput {
  readonly key: string
  readonly mat: DrawnMat
  readonly cover: number | null
  /** The concrete less so much at every edge, made once a size. */
  readonly shrunkBy: (inset: number) => Region
  readonly obstacles: readonly Obstacle[]
}

function plannedMat({ key, mat, cover, panel, yard, rules, shrunkBy, obstacles }: OneMat): PlannedMat {
  const { drawing } = panel
  const { direction, diameter } = mat
  const edgeCover = drawing.cover?.edge
  const shrunk = edgeCover === undefined ? null : shrunkBy(edgeCover + diameter / 2)
  const grown = obstacles.map(
    (each): Obstacle => ({
      ...each,
      low: each.low - diameter / 2,
      high: each.high + diameter / 2,
    }),
  )
  const beside = cover === null ? [] : besideListed({ drawing, rules, mat, cover })
  const tolerance = movedBy(rules, mat.spacing)
  const laid =
    shrunk === null
      ? null
      : linesWithin({
          shrunk,
          direction,
          diameter,
          spacing: mat.spacing,
          obstacles: [...grown, ...beside],
          tolerance,
        })
  const height =
    cover === null
      ? null
      : mat.layer === 'mould'
        ? cover + diameter / 2
        : drawing.thickness - cover - diameter / 2
  const stock = longestStock({ yard, diameter, grade: mat.grade })
  const spacing = laid?.spacing ?? mat.spacing
  const codeLapOf = ({ share, gap }: Section) =>
    lapOfMat({ mat, cover, height, drawing, rules, share, gap: gap ?? spacing - 2 * diameter })
  const layOut = (lap: number | null): LappedRows =>
    lappedRows({
      lines: laid?.lines ?? [],
      direction,
      diameter,
      openings: (drawing.openings ?? []).map(({ outline }) => outline as unknown as Ring),
      spansAt: shrunk === null ? () => [] : spansWithin({ shrunk, direction, diameter }),
      stock,
      lap,
      section: rules.lapSection,
      obstacles: grown,
    })
  const { lap, laidRows, codeLap } = chooseLap(drawing.lap?.length ?? null, codeLapOf, layOut)
  const { rows, unlapped, laps, share, clear } = laidRows
  const crowded = rows.reduce((sum, row) => sum + row.crowded, 0)
  return { key, mat, cover, height, laid, rows, stock, codeLap, lap, unlapped, laps, share, clear, crowded }
}

/** How far a row may lie from its even place, mm: the placing tolerance of spacing; 0 where the family has none. */
function movedBy(rules: SteelRules, spacing: number): number {
  const { minus, plus } = rules.spacingTolerance({ spacing })
  return Math.min(minus ?? plus ?? 0, plus ?? minus ?? 0)
}

/** What a code's lap depends on beside the bar: percent lapped at one section, clear between neighbours, mm. */
interface Section {
  readonly share: number
  /** Null: a pair beside a bar at the mat's spacing. */
  readonly gap: number | null
}

interface ChosenLap {
  readonly lap: number | null
  readonly laidRows: LappedRows
  readonly codeLap: Worked<LapLength>
}

/**
 * The lap and the rows built with it. A drawn lap stays as drawn. Else the code's lap for all bars at one section, laid out; then the
 * code's for the share and the gap that came out, kept only where the rows laid out with it ask for no more.
 */
function chooseLap(
  drawn: number | null,
  codeLapOf: (section: Section) => Worked<LapLength>,
  layOut: (lap: number | null) => LappedRows,
): ChosenLap {
  const laidWith = (lap: number | null): ChosenLap => {
    const laidRows = layOut(lap)
    const section = { share: laidRows.share ?? 100, gap: laidRows.laps > 0 ? laidRows.clear : null }
    return { lap, laidRows, codeLap: codeLapOf(section) }
  }
  if (drawn !== null) return laidWith(drawn)
  let chosen = laidWith(stepped(codeLapOf({ share: 100, gap: null })))
  for (let round = 0; round < 2; round += 1) {
    const asked = stepped(chosen.codeLap)
    if (chosen.laidRows.laps === 0 || asked === null || chosen.lap === null || asked === chosen.lap) break
    const other = laidWith(asked)
    const enough = (stepped(other.codeLap) ?? Number.POSITIVE_INFINITY) <= asked
    if (enough || asked > chosen.lap) chosen = other
    else break
  }
  return chosen
}

/** The code's lap up to the next step, mm; null where not known. */
function stepped(lap: Worked<LapLength>): number | null {
  return lap.known && lap.value.length !== null ? ceilTo(lap.value.length, LAP_STEP) : null
}

/** Longest bar of a size and grade that the yard lists, mm, or null. */
export function longestStock({
  yard,
  diameter,
  grade,
}: {
  readonly yard: Yard | null
  readonly diameter: number
  readonly grade: string
}): number | null {
  const lengths = (yard?.stock ?? [])
    .filter((stock) => Math.abs(stock.diameter - diameter) <= 0.5 && stock.grade === grade)
    .flatMap((stock) => stock.lengths)
  return lengths.length > 0 ? Math.max(...lengths) : null
}

export function gradeOf(rules: SteelRules, grade: string): SteelGrade | null {
  return rules.grades.find((each) => each.grade === grade) ?? null
}

interface LapOfMat {
  readonly mat: DrawnMat
  readonly cover: number | null
  readonly height: number | null
  readonly drawing: Drawing
  readonly rules: SteelRules
  /** Bars lapped at one section, percent. */
  readonly share: number
  /** Clear between neighbours, mm. */
  readonly gap: number
}

/** Lap that the code asks of a mat's bars: least cover of the two faces and the edge, clear gap and share lapped as laid out. */
function lapOfMat({ mat, cover, height, drawing, rules, share, gap }: LapOfMat): Worked<LapLength> {
  const edge = drawing.cover?.edge
  if (cover === null || height === null) return unknown(`cover.${mat.layer}: cover to the first mat, mm`)
  if (edge === undefined) return unknown('cover.edge: cover at edges and openings, mm')
  const steel = gradeOf(rules, mat.grade)
  if (steel === null) return unknown(`grade: ${mat.grade} is no grade of this code family`)
  const below = height - mat.diameter / 2
  const behind = mat.layer === 'mould' ? drawing.thickness - cover - mat.diameter : below
  return rules.lap({
    diameter: mat.diameter,
    yield: steel.yield,
    concrete: drawing.concrete.strength,
    cover: Math.min(cover, behind, edge),
    gap,
    below,
    bond: bondCondition({ below, depth: drawing.thickness }),
    share,
    apart: 0,
    ...(mat.spare === undefined ? {} : { spare: mat.spare }),
  })
}
