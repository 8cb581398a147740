import { belowZero, notAboveZero } from '../working/guard.ts'
import { SMALLEST } from './smallest-bar.ts'
import type { LapInput } from './steel-rules.ts'

export interface LapRange {
  /** Yield, MPa, both included. */
  readonly yield: readonly [low: number, high: number]
  /** Concrete strength, MPa, both included. */
  readonly concrete: readonly [low: number, high: number]
  /** mm */
  readonly largest: number
  readonly standard: string
}

/** What is missing, impossible or outside the range of a lap rule, by field. */
export function lapGaps(input: LapInput, range: LapRange): string[] {
  const { diameter, concrete, cover, gap, below, apart, share } = input
  const gaps = [
    ...notAboveZero({ diameter, yield: input.yield, concrete, cover, gap, share }),
    ...belowZero({ below, apart }),
    ...(input.spare === undefined ? [] : notAboveZero({ spare: input.spare })),
  ]
  if (share > 100) gaps.push('share: at most 100 percent')
  if (gaps.length > 0) return gaps
  const outside = (field: string, value: number, [low, high]: readonly [number, number], unit: string) =>
    value < low || value > high
      ? [`${field}: ${range.standard} covers ${low} to ${high} ${unit}, found ${value}`]
      : []
  return [
    ...outside('yield', input.yield, range.yield, 'MPa'),
    ...outside('concrete', concrete, range.concrete, 'MPa'),
    ...(diameter < SMALLEST ? [`diameter: no bar under ${SMALLEST} mm, found ${diameter}`] : []),
    ...(diameter > range.largest
      ? [`diameter: laps of bars over ${range.largest} mm are left to special rules, found ${diameter}`]
      : []),
  ]
}

/** Bars stressed to half or less and at most half of them lapped at one section: what the shorter lap of some codes asks for. */
export function halfUsed({ spare, share }: Pick<LapInput, 'spare' | 'share'>): boolean {
  return spare !== undefined && spare >= 2 && share <= 50 + 1e-9
}

/** Families without a confirmed rule for epoxy-coated bar. */
export function noEpoxy({ epoxy }: Pick<LapInput, 'epoxy'>): string[] {
  return epoxy === true ? ['epoxy: no confirmed lap of epoxy-coated bar in this family'] : []
}
