import type { AnchorAction, AnchorMode, AnchorRules } from '../../codes/anchor-rules.ts'
import type { Point } from '../../panel/point.ts'
import { enteredBy } from '../../working/source.ts'
import { known, type Step, unknown, type Worked } from '../../working/worked.ts'
import { type AnchorGroup, type LaidGroup, laid, type ModeFound } from './anchor-group.ts'
import { blowoutMode } from './blowout-mode.ts'
import { breakoutMode } from './breakout-mode.ts'
import { edgeMode } from './edge-mode.ts'
import { shearShare, tensionShares } from './shares.ts'
import { splittingMode } from './splitting-mode.ts'

export interface AnchorModesInput {
  readonly rules: AnchorRules
  readonly group: Omit<AnchorGroup, 'shares'>
  /** Resultant from the centroid of the inserts, mm. */
  readonly eccentricity: Point
  /** Design tension of the whole group, kN; not below 0. */
  readonly tension: number
  /** Design shear of the whole group, kN; `direction` in degrees from x, null where not known. */
  readonly shear: { readonly force: number; readonly direction: number | null } | null
  readonly supplementary: boolean
  readonly ductile: boolean | null
  readonly yieldRatio: number | null
}

/** A mode before its factor: what was found, null where the code does not ask. */
export interface AskedMode {
  readonly mode: AnchorMode
  readonly action: AnchorAction
  readonly of: 'group' | 'insert'
  readonly found: Worked<ModeFound> | null
  readonly why: string
}

/** Every mode that the actions ask for, tension first. */
export function askedModes(input: AnchorModesInput): AskedMode[] {
  const { rules, group: given, eccentricity } = input
  const shares = tensionShares({ at: given.at, eccentricity })
  if (!shares.known)
    return [...tensionModes(input, shares, null, null), ...shearModes(input, shares, null, null)]
  const group = laid({ ...given, shares: shares.value })
  // Asked for in tension and again for pry-out: found once.
  const cone = breakoutMode(rules, group)
  return [...tensionModes(input, shares, group, cone), ...shearModes(input, shares, group, cone)]
}

function tensionModes(
  { rules, group: given, tension }: AnchorModesInput,
  shares: Worked<readonly number[]>,
  group: LaidGroup | null,
  cone: Worked<ModeFound> | null,
): AskedMode[] {
  const action = 'tension'
  const none = 'no tension'
  const found = (of: (known: LaidGroup) => Worked<ModeFound> | null) => {
    if (tension === 0) return null
    return group === null ? (shares as Worked<ModeFound>) : of(group)
  }
  const most = shares.known ? Math.max(...shares.value) : 1
  const single = (worked: Worked<number>) => found(() => onInsert(worked, most, shares.working ?? []))
  const why = (reason: string) => (tension === 0 ? none : reason)
  const { steel, head } = given
  const noSteel = unknown('steel: resistance of the steel of one insert, kN')
  const noHead = unknown('head: bearing area of the head, mm²')
  return [
    {
      mode: 'steel',
      action,
      of: 'insert',
      found: single(steel === null ? noSteel : entered(steel)),
      why: none,
    },
    { mode: 'breakout', action, of: 'group', found: found(() => cone), why: none },
    {
      mode: 'pullout',
      action,
      of: 'insert',
      found: single(head === null ? noHead : rules.pullout({ ...given, head })),
      why: none,
    },
    {
      mode: 'blowout',
      action,
      of: 'insert',
      found: found((known) => blowoutMode(rules, known)),
      why: why(`no side face so near that ${rules.standard} asks`),
    },
    {
      mode: 'splitting',
      action,
      of: 'group',
      found: found((known) => splittingMode(rules, known)),
      why: why('edges and spacing as far as the product asks'),
    },
  ]
}

function shearModes(
  { rules, group: given, eccentricity, shear }: AnchorModesInput,
  shares: Worked<readonly number[]>,
  group: LaidGroup | null,
  cone: Worked<ModeFound> | null,
): AskedMode[] {
  if (shear === null || shear.force === 0) return []
  const action = 'shear'
  const found = (of: (known: LaidGroup) => Worked<ModeFound> | null) =>
    group === null ? (shares as Worked<ModeFound>) : of(group)
  const most = shearShare({ at: given.at, eccentricity, direction: shear.direction })
  const { steel } = given
  const across =
    steel === null ? unknown('steel: resistance of the steel of one insert, kN') : rules.steelShear({ steel })
  return [
    {
      mode: 'steel',
      action,
      of: 'insert',
      found: found(() => onInsert(across, most.share, most.working)),
      why: '',
    },
    {
      mode: 'edge',
      action,
      of: 'group',
      found: found((known) => edgeMode(rules, known, shear.direction)),
      why: 'the shear pulls away from every edge in sight',
    },
    {
      mode: 'pryout',
      action,
      of: 'group',
      found: found(() => pryoutMode(rules, given.depth, cone)),
      why: '',
    },
  ]
}

function pryoutMode(
  rules: AnchorRules,
  depth: number,
  cone: Worked<ModeFound> | null,
): Worked<ModeFound> | null {
  if (cone === null || !cone.known) return cone
  const pry = rules.pryout({ depth, breakout: cone.value.nominal })
  return pry.known ? known({ nominal: pry.value, share: 1 }, [...cone.working, ...pry.working]) : pry
}

function onInsert(worked: Worked<number>, share: number, shares: readonly Step[]): Worked<ModeFound> {
  return worked.known ? known({ nominal: worked.value, share }, [...shares, ...worked.working]) : worked
}

function entered(steel: number): Worked<number> {
  return known(steel, [
    {
      symbol: 'Ns',
      formula: 'steel of one insert',
      given: {},
      result: steel,
      unit: 'kN',
      source: enteredBy('the case'),
      by: 'table',
    },
  ])
}
