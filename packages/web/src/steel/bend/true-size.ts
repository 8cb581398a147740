/** Longer side of a card of standard size, mm: ISO/IEC 7810, size ID-1. */
export const CARD = { wide: 85.6, high: 53.98 } as const

/** What was set against a card on this screen. */
export interface TrueSize {
  /** CSS px in a millimetre. */
  readonly scale: number
  /** CSS px of the screen and px of the device in one of them, when it was set: another zoom or screen asks again. */
  readonly ratio: number
}

const KEPT = 'castwright.true-size'

/** The scale set on this device; null where none is set, or the zoom has changed since. */
export function readTrueSize(storage: Pick<Storage, 'getItem'>, ratio: number): TrueSize | null {
  try {
    const kept: unknown = JSON.parse(storage.getItem(KEPT) ?? 'null')
    if (typeof kept !== 'object' || kept === null) return null
    const { scale, ratio: then } = kept as Record<string, unknown>
    if (typeof scale !== 'number' || !(scale > 1 && scale < 40)) return null
    return typeof then === 'number' && Math.abs(then - ratio) < 1e-3 ? { scale, ratio: then } : null
  } catch {
    return null
  }
}

export function keepTrueSize(storage: Pick<Storage, 'setItem'>, size: TrueSize): void {
  storage.setItem(KEPT, JSON.stringify(size))
}

/** Depth of a curve of a diameter under a straight edge of this length, mm; null where the edge is longer than the curve is wide. */
export function riseOf(diameter: number, chord: number): number | null {
  const radius = diameter / 2
  const half = chord / 2
  return half <= radius ? radius - Math.sqrt(radius * radius - half * half) : null
}
