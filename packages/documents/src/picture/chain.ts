import { textWidth } from './text-width.ts'

export interface ChainLabel {
  readonly text: string
  /** Ends of the measured length along the chain, units. */
  readonly from: number
  readonly to: number
  /** Middle of the label along the chain; null where it found no room. */
  readonly centre: number | null
  /** 0 on the line, 1 and up moved outward. */
  readonly row: number
}

export interface ChainInput {
  /** Where the ticks stand along the chain, ascending, units. */
  readonly ticks: readonly number[]
  /** Lengths between them, as written. One less than ticks. */
  readonly texts: readonly string[]
  readonly size: number
  /** Ends of the space along the chain. */
  readonly start: number
  readonly end: number
  /** How often a label that has no room on its line may move outward before it is left out. */
  readonly mostRows: number
}

/**
 * Where the numbers of a dimension chain go: on the line where they fit between their ticks, else outward under a
 * leader, else nowhere. Labels of one row never meet, and no leader runs through a label.
 */
export function chainLabels({ ticks, texts, size, start, end, mostRows }: ChainInput): ChainLabel[] {
  const gap = size * 0.35
  const rows: { from: number; to: number }[][] = Array.from({ length: mostRows + 1 }, () => [])
  return texts.map((text, index) => {
    const [from, to] = [ticks[index] ?? 0, ticks[index + 1] ?? 0]
    const width = textWidth(text, size)
    const middle = (from + to) / 2
    if (to - from >= width + 2 * gap) return { text, from, to, centre: middle, row: 0 }
    for (let row = 1; row <= mostRows; row += 1) {
      const last = rows[row]?.at(-1)?.to ?? Number.NEGATIVE_INFINITY
      const low = Math.max(start, last + gap) + width / 2
      const centre = Math.min(Math.max(middle, low), end - width / 2)
      // The leader drops straight from the middle: it must end under its own label and pass no other.
      const fits = centre >= low - 1e-9 && Math.abs(centre - middle) <= width / 2
      const leaderFree = rows
        .slice(1, row)
        .every((taken) => taken.every((other) => middle < other.from - gap || middle > other.to + gap))
      if (!fits || !leaderFree) continue
      // Labels to come in rows nearer the line must leave this leader free.
      for (let nearer = 1; nearer < row; nearer += 1) rows[nearer]?.push({ from: middle, to: middle })
      rows[row]?.push({ from: centre - width / 2, to: centre + width / 2 })
      return { text, from, to, centre, row }
    }
    return { text, from, to, centre: null, row: 0 }
  })
}

export function rowsUsed(labels: readonly ChainLabel[]): number {
  return labels.reduce((most, label) => (label.centre === null ? most : Math.max(most, label.row)), 0)
}

/** A length as written beside a dimension: whole millimetres, or tenths where it has them. */
export function lengthText(mm: number): string {
  const tenths = Math.round(mm * 10) / 10
  return String(tenths === 0 ? 0 : tenths)
}
