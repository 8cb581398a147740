import type { StressField } from '@castwright/engine/lift'

/** The rings of a band as one path, in whole mm of the panel: one element a band is all that a move changes. */
export function bandPath(rings: readonly Float32Array[]): string {
  let path = ''
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 2) {
      path += `${i === 0 ? 'M' : 'L'}${Math.round(ring[i] ?? 0)} ${Math.round(ring[i + 1] ?? 0)}`
    }
    path += 'Z'
  }
  return path
}

/** How dark a band is: share of the accent in its colour, percent. The lowest is pale, the highest dark; in grey the order stays. */
export function bandShade(index: number, count: number): number {
  return count <= 1 ? 40 : Math.round(14 + (56 * index) / (count - 1))
}

/** What a band means in words, lowest first: from its level to the next. */
export function bandWords(bands: StressField['bands']): string[] {
  return bands.map(({ level }, i) => {
    const next = bands[i + 1]?.level
    return next === undefined ? `from ${level}` : `${level} to ${next}`
  })
}
