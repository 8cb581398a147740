import type { AnchorConcrete } from '../../codes/anchor-rules.ts'
import type { Point } from '../../panel/point.ts'
import { edges } from '../../panel/polygon.ts'
import { type Region, ringsOf } from '../../panel/region.ts'
import type { Side, SideFace } from './side-face.ts'
import { sideFaces } from './side-face.ts'

/** One insert or a group on one face, read and found possible. mm, mm², kN, MPa. */
export interface AnchorGroup extends AnchorConcrete {
  readonly at: readonly Point[]
  /** Outline of the face less openings. */
  readonly region: Region
  /** Concrete behind the face. */
  readonly thickness: number
  readonly depth: number
  readonly head: number | null
  readonly shaft: number | null
  /** Steel of one insert along its axis. */
  readonly steel: number | null
  readonly splitting: { readonly edge: number; readonly spacing: number } | null
  /** Part of the tension (and of the shear) of each insert, together 1. */
  readonly shares: readonly number[]
}

/** A group with its edges laid out once. */
export interface LaidGroup extends AnchorGroup {
  readonly sides: readonly Side[]
  readonly faces: readonly SideFace[]
}

export function laid(group: AnchorGroup): LaidGroup {
  const sides = ringsOf(group.region).flatMap(edges)
  return { ...group, sides, faces: sideFaces(sides) }
}

/** Resistance of a mode with the part of the whole action that stands against it. */
export interface ModeFound {
  /** kN */
  readonly nominal: number
  /** 1: the whole group; else of one insert. */
  readonly share: number
}
