import type { CodeFamily } from '../codes/family.ts'
import type { BarRole } from '../codes/steel-rules.ts'
import type { Source } from '../working/source.ts'

/** Bars that a yard of the family stocks, mm: common practice, no source. */
const STOCKED: Readonly<Record<CodeFamily['id'], readonly number[]>> = {
  nz: [6, 10, 12, 16, 20, 24, 25, 32, 40],
  au: [6, 10, 12, 16, 20, 24, 28, 32, 36, 40],
  eu: [6, 8, 10, 12, 16, 20, 25, 28, 32, 40],
  us: [9.525, 12.7, 15.875, 19.05, 22.225, 25.4, 28.65, 32.26, 35.81, 43, 57.33],
}

/** What a disc is the least bend of. */
export interface GaugeUse {
  readonly diameter: number
  /** As the trade calls the size. */
  readonly size: string
  readonly role: BarRole
  readonly plain: boolean
  readonly grades: readonly string[]
}

/** One disc: a bend that it fills to the crown is not tighter than its uses allow. */
export interface GaugeDisc {
  /** mm */
  readonly diameter: number
  readonly uses: readonly GaugeUse[]
}

export interface Gauge {
  /** Smallest first. */
  readonly discs: readonly GaugeDisc[]
  /** Sizes and roles without a confirmed limit, in words. */
  readonly unknown: readonly string[]
  /** Where the limits are from, each once. */
  readonly sources: readonly Source[]
}

/** The discs of a family: the least inside diameter of every stocked size, role and grade, uncoated; equal diameters share a disc. */
export function bendGauge(family: CodeFamily): Gauge {
  const rules = family.steel
  const discs = new Map<number, GaugeUse[]>()
  const unknown = new Set<string>()
  const sources = new Map<string, Source>()
  for (const diameter of STOCKED[family.id]) {
    const bar = rules.barSize({ diameter })
    const size = bar.known ? bar.value.name : `${diameter} mm`
    for (const role of ['main', 'stirrup'] as const) {
      for (const plain of [false, true]) {
        const byLimit = new Map<number, string[]>()
        for (const { grade } of rules.grades) {
          const limit = rules.leastBend({ diameter, grade, role, plain, galvanised: false })
          // To a thousandth of a millimetre: two rules that say the same size share a disc.
          if (limit.known) {
            const key = Math.round(limit.value * 1000) / 1000
            byLimit.set(key, [...(byLimit.get(key) ?? []), grade])
            for (const { source } of limit.working) sources.set(`${source.standard} ${source.clause}`, source)
          } else if (!plain) unknown.add(`${size}, ${role}`)
        }
        for (const [limit, grades] of byLimit) {
          discs.set(limit, [...(discs.get(limit) ?? []), { diameter, size, role, plain, grades }])
        }
      }
    }
  }
  return {
    discs: [...discs]
      .map(([diameter, uses]) => ({ diameter, uses: withoutRepeats(uses) }))
      .sort((a, b) => a.diameter - b.diameter),
    unknown: [...unknown],
    sources: [...sources.values()],
  }
}

/** A plain bar that may be bent as tightly as a deformed one of the same grades needs no words of its own. */
function withoutRepeats(uses: readonly GaugeUse[]): GaugeUse[] {
  return uses.filter(
    ({ plain, diameter, role, grades }) =>
      !plain ||
      !uses.some(
        (other) =>
          !other.plain &&
          other.diameter === diameter &&
          other.role === role &&
          other.grades.join() === grades.join(),
      ),
  )
}
