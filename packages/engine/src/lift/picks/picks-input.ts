import type { Panel } from '../../panel/panel.ts'
import type { Point } from '../../panel/point.ts'
import { InputError, type InputIssue } from '../../working/issue.ts'
import type { Assumed } from '../../working/worked.ts'
import type { Sharing } from './forces.ts'
import type { KeptClear } from './limits.ts'
import type { Effort } from './search.ts'

export const PICK_COUNTS = [2, 4, 6, 8] as const

export interface PicksInput {
  readonly panel: Panel
  /** 2, 4, 6 or 8. */
  readonly count: number
  /** `face` assumed. */
  readonly kind?: 'face' | 'edge'
  /** Least distance to edges and openings, of an edge insert to the ends of its edge, mm; 300 assumed. */
  readonly edge?: number
  /** Least distance between inserts, mm; twice the edge distance assumed. */
  readonly spacing?: number
  /** Pitch along x and y from the drawing's origin, mm; absent: anywhere. */
  readonly grid?: Point
  /**
   * True: mirrored about every axis of the panel (at most two at a right angle). False: mirrors are not looked for. Absent: mirrored where the panel is,
   * unless other places are better by more than `MIRRORED_WITHIN`.
   */
  readonly symmetric?: boolean
  /** Bars, cast-ins and the like to keep clear of. */
  readonly clear?: readonly KeptClear[]
  /** How the legs share; rigid points assumed. */
  readonly sharing?: Sharing
  /** MPa; 30 000 assumed. It does not change where the picks are. */
  readonly modulus?: number
  /** 0.2 assumed. */
  readonly poisson?: number
  /** On own weight; 1 assumed. */
  readonly factor?: number
  /** Of the random starts; 1 assumed. */
  readonly seed?: number
  readonly effort?: Effort
  readonly from?: string
}

export interface PicksAsked {
  readonly kind: 'face' | 'edge'
  readonly edge: number
  readonly spacing: number
  readonly sharing: Sharing
  readonly modulus: number
  readonly poisson: number
  readonly factor: number
  readonly seed: number
}

/** The values asked for, with those that are assumed. @throws InputError naming each field that cannot be. */
export function askedOf(input: PicksInput): { readonly asked: PicksAsked; readonly assumed: Assumed[] } {
  const { kind = 'face', edge = 300, sharing = 'rigid', modulus = 30_000, poisson = 0.2 } = input
  const { factor = 1, seed = 1 } = input
  const spacing = input.spacing ?? 2 * edge
  const issues: InputIssue[] = []
  if (!PICK_COUNTS.some((count) => count === input.count)) {
    issues.push({ path: 'count', found: `${input.count}`, expected: `one of ${PICK_COUNTS.join(', ')}` })
  }
  const sizes = { edge, spacing, modulus, factor, ...gridSizes(input.grid) }
  for (const [path, value] of Object.entries(sizes)) {
    if (!(Number.isFinite(value) && value > 0))
      issues.push({ path, found: `${value}`, expected: 'a number above 0' })
  }
  if (!(poisson >= 0 && poisson < 0.5)) {
    issues.push({ path: 'poisson', found: `${poisson}`, expected: 'from 0 to below 0.5' })
  }
  if (!Number.isInteger(seed)) issues.push({ path: 'seed', found: `${seed}`, expected: 'a whole number' })
  for (const [i, { path, distance }] of (input.clear ?? []).entries()) {
    if (!(Number.isFinite(distance) && distance >= 0) || !path.flat().every(Number.isFinite)) {
      issues.push({ path: `clear[${i}]`, found: `${distance}`, expected: 'places and a distance, mm' })
    }
  }
  if (issues.length > 0) throw new InputError(issues, input.from)
  const why = 'not given'
  const assumed: Assumed[] = []
  const take = (field: keyof PicksInput, value: number | string, unit: string, because = why): void => {
    if (input[field] === undefined) assumed.push({ field, value, unit, why: because })
  }
  take('kind', kind, '')
  take('edge', edge, 'mm')
  take('spacing', spacing, 'mm', 'not given: twice the edge distance')
  take('factor', factor, '')
  take('modulus', modulus, 'MPa')
  take('poisson', poisson, '')
  take('sharing', 'inserts are rigid points', '', 'no equalised legs are asked for')
  return { asked: { kind, edge, spacing, sharing, modulus, poisson, factor, seed }, assumed }
}

function gridSizes(grid: Point | undefined): Record<string, number> {
  return grid === undefined ? {} : { 'grid[0]': grid[0], 'grid[1]': grid[1] }
}
