import type { CureLimit } from '../codes/cure-rules.ts'
import type { Cylinder } from '../cure/live-curve.ts'
import type { Assumed } from '../working/worked.ts'
import type { EnteredLimit, SpecimenResult } from './facts.ts'

/** Limit of the yard: strength of a cylinder over that of a cube of the same concrete, entered by an engineer. */
export const CUBE_RATIO_LIMIT = 'cure.cubeRatio'

export interface PourResultsInput {
  readonly specimens: readonly SpecimenResult[]
  /** Cylinder over cube as an engineer entered it; null where nobody did. */
  readonly cubeRatio: EnteredLimit | null
  /** Temperature of standard curing by the family; null where none is confirmed. */
  readonly standardCuring: CureLimit | null
}

/** Results of a pour as the curve of its mix can take them in. */
export interface PourResults {
  /** In the order given. */
  readonly counted: readonly SpecimenResult[]
  /** The same as cylinders, place by place. */
  readonly cylinders: readonly Cylinder[]
  /** What does not count, and why. */
  readonly left: readonly { readonly result: SpecimenResult; readonly why: string }[]
  readonly assumed: readonly Assumed[]
}

/**
 * Results of a pour as cylinders of it. The curve of a mix is one of cylinders: a cube counts by the ratio that an engineer
 * entered, and is left out without one. A specimen cured with the panel, or a probe, goes by the panel's log; one cured at
 * the standard's temperature by that, and is left out where the family has no confirmed one.
 */
export function pourResults({ specimens, cubeRatio, standardCuring }: PourResultsInput): PourResults {
  const counted: SpecimenResult[] = []
  const cylinders: Cylinder[] = []
  const left: { result: SpecimenResult; why: string }[] = []
  for (const result of specimens) {
    const strength = asCylinder(result, cubeRatio)
    const standard = result.cured === 'standard' && result.kind !== 'probe'
    if (strength === null) left.push({ result, why: CUBE_GAP })
    else if (standard && standardCuring === null) left.push({ result, why: STANDARD_GAP })
    else {
      counted.push(result)
      cylinders.push({
        hour: result.age,
        strength,
        ...(standard && standardCuring !== null ? { celsius: standardCuring.value } : {}),
      })
    }
  }
  const unsaid = counted.filter(({ kind, cured }) => kind !== 'probe' && cured === undefined).length
  const cubes = counted.filter(({ kind }) => kind === 'cube').length
  return {
    counted,
    cylinders,
    left,
    assumed: [
      ...(unsaid === 0
        ? []
        : [
            {
              field: 'specimens[].cured',
              value: 'with the panel',
              unit: '',
              why: `${unsaid} of ${specimens.length} results do not say how the specimen was cured`,
            },
          ]),
      ...(cubes === 0 || cubeRatio === null
        ? []
        : [
            {
              field: 'specimens[].strength',
              value: cubeRatio.value,
              unit: '',
              why: `cylinder over cube for ${cubes} ${cubes === 1 ? 'cube' : 'cubes'}, entered by ${cubeRatio.by.name}: ${cubeRatio.standard}, ${cubeRatio.edition}`,
            },
          ]),
    ],
  }
}

const CUBE_GAP = 'a cube: no ratio of cylinder to cube was entered for the yard'
const STANDARD_GAP = 'cured by the standard: its temperature is not confirmed for this code family'

/** Strength of a result as that of a cylinder, MPa; null for a cube without a ratio above 0 and at most 1. */
export function asCylinder(
  { kind, strength }: Pick<SpecimenResult, 'kind' | 'strength'>,
  cubeRatio: Pick<EnteredLimit, 'value'> | null,
): number | null {
  if (kind !== 'cube') return strength
  const ratio = cubeRatio?.value ?? Number.NaN
  return ratio > 0 && ratio <= 1 ? strength * ratio : null
}
