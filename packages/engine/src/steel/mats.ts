import { bondCondition } from '../codes/eu/en1992-1-1-2004/lap.ts'
import type { LapLength, SteelGrade, SteelRules } from '../codes/steel-rules.ts'
import { type Drawing, type DrawnMat, isMat } from '../panel/drawing.ts'
import type { Panel } from '../panel/panel.ts'
import { offset, type Region } from '../panel/region.ts'
import { ceilTo } from '../working/round.ts'
import { unknown, type Worked } from '../working/worked.ts'
import type { Yard } from '../yard/yard.ts'
import { type LappedLine, lappedLine } from './lapped-line.ts'
import { type BarLine, linesWithin, type MatLines } from './mat-lines.ts'

export interface MatRow {
  readonly line: BarLine
  readonly cut: LappedLine
}

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
  readonly rows: readonly MatRow[]
  /** Longest bar of that size and grade in the yard, mm; null where not known. */
  readonly stock: number | null
  /** Lap by the code for these bars. */
  readonly codeLap: Worked<LapLength>
  /** Lap as built: the drawing's, else the code's rounded up to 10 mm; null where not known. */
  readonly lap: number | null
  /** Rows longer than the stock that could not be lapped. */
  readonly unlapped: number
  readonly laps: number
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
    return plannedMat({
      key: count === 1 ? name : `${name}-${count}`,
      mat,
      cover,
      panel,
      yard,
      rules,
      shrunkBy,
    })
  })
}

interface OneMat extends MatsInput {
  readonly key: string
  readonly mat: DrawnMat
  readonly cover: number | null
  /** The concrete less so much at every edge, made once a size. */
  readonly shrunkBy: (inset: number) => Region
}

function plannedMat({ key, mat, cover, panel, yard, rules, shrunkBy }: OneMat): PlannedMat {
  const { drawing } = panel
  const edgeCover = drawing.cover?.edge
  const laid =
    edgeCover === undefined
      ? null
      : linesWithin({
          shrunk: shrunkBy(edgeCover + mat.diameter / 2),
          direction: mat.direction,
          diameter: mat.diameter,
          spacing: mat.spacing,
        })
  const height =
    cover === null
      ? null
      : mat.layer === 'mould'
        ? cover + mat.diameter / 2
        : drawing.thickness - cover - mat.diameter / 2
  const codeLap = lapOfMat({ mat, cover, height, drawing, rules, spacing: laid?.spacing ?? mat.spacing })
  const lap =
    drawing.lap?.length ??
    (codeLap.known && codeLap.value.length !== null ? ceilTo(codeLap.value.length, LAP_STEP) : null)
  const stock = longestStock({ yard, diameter: mat.diameter, grade: mat.grade })
  let [unlapped, laps] = [0, 0]
  const rows = (laid?.lines ?? []).map((line): MatRow => {
    const whole: LappedLine = { pieces: [{ from: line.from, to: line.to }], laps: [] }
    if (stock === null || line.to - line.from <= stock) return { line, cut: whole }
    const cut =
      lap === null ? null : lappedLine({ from: line.from, to: line.to, stock, lap, odd: line.row % 2 === 1 })
    if (cut === null) unlapped += 1
    laps += cut?.laps.length ?? 0
    return { line, cut: cut ?? whole }
  })
  return { key, mat, cover, height, laid, rows, stock, codeLap, lap, unlapped, laps }
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
  readonly spacing: number
}

/**
 * Lap that the code asks of a mat's bars: least cover of the two faces and the edge, clear gap between lapped pairs, all bars
 * taken as lapped at one section, though they are staggered.
 */
function lapOfMat({ mat, cover, height, drawing, rules, spacing }: LapOfMat): Worked<LapLength> {
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
    gap: spacing - 2 * mat.diameter,
    below,
    bond: bondCondition({ below, depth: drawing.thickness }),
    share: 100,
    apart: 0,
  })
}
