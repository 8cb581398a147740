/** What the long search of `compact-long.ts` found for a panel, and what a plain triangular grid takes, mended. */
export interface CompactBest {
  /** Fewest insertions, proven to cover. */
  readonly insertions: number
  /** What each start had come to after its share of the time; only two are tried where there are many insertions. */
  readonly starts: readonly (number | null)[]
  /** Processor time that the search took in all runs, s. */
  readonly seconds: number
  readonly grid: number
}

/**
 * Found on 2026-11-29 by `compact-long.ts`: rows along and across begun both ways, each spread and squeezed, the best of them on with
 * other seeds. Heuristic: a lower count may exist. Copied from the file that it makes.
 */
export const COMPACT_BEST: Readonly<Record<string, CompactBest>> = {
  'plain 6.0 × 3.0': { insertions: 439, starts: [440, 439, 449, 450], seconds: 14, grid: 472 },
  'plain 6.0 × 3.0, large head': { insertions: 121, starts: [122, 121, 126, 126], seconds: 14, grid: 132 },
  'plain 2.4 × 1.1': { insertions: 73, starts: [73, 73, 73, 73], seconds: 14, grid: 80 },
  'strip 6.0 × 0.4': { insertions: 66, starts: [67, 67, 66, 67], seconds: 14, grid: 69 },
  'six openings 12 × 4': { insertions: 940, starts: [942, 959], seconds: 104, grid: 1087 },
  'six openings 12 × 4, evenly': { insertions: 983, starts: [997, 993, 1012, 1011], seconds: 14, grid: 1118 },
  'six openings 12 × 4, head 60': { insertions: 453, starts: [453, 453, 459, 461], seconds: 14, grid: 543 },
  'ell 6.0 × 3.0': { insertions: 383, starts: [383, 383, 395, 396], seconds: 14, grid: 430 },
  'ell 7.2 × 5.0, head 60': { insertions: 185, starts: [185, 186, 187, 187], seconds: 14, grid: 208 },
  'gable 7.0 × 4.6, a window': { insertions: 609, starts: [618, 607, 620, 619], seconds: 14, grid: 669 },
  'gable 6.0 × 4.0, head 60': { insertions: 199, starts: [200, 200, 199, 199], seconds: 14, grid: 213 },
  'door notch 8.4 × 3.6': { insertions: 677, starts: [677, 678, 682, 685], seconds: 14, grid: 743 },
  'three notches 6.0 × 2.6': { insertions: 365, starts: [367, 366, 375, 373], seconds: 14, grid: 405 },
  'slope 6.6 × 3.9': { insertions: 520, starts: [520, 522, 532, 533], seconds: 14, grid: 559 },
  'sloping top 9.0 × 3.0 to 1.8': { insertions: 242, starts: [242, 242, 244, 244], seconds: 14, grid: 254 },
  'stair flank, slanted opening': { insertions: 343, starts: [343, 344, 345, 348], seconds: 14, grid: 389 },
  'thin mullions 6.0 × 3.0': { insertions: 353, starts: [353, 355, 366, 367], seconds: 14, grid: 655 },
  'thin mullions 6.0 × 3.0, head 60': {
    insertions: 171,
    starts: [177, 179, 171, 171],
    seconds: 14,
    grid: 258,
  },
  'grid of 24 openings 8.0 × 4.0': { insertions: 614, starts: [620, 615, 630, 635], seconds: 14, grid: 904 },
  'three windows 10.8 × 3.4': { insertions: 742, starts: [745, 743, 764, 760], seconds: 14, grid: 807 },
  'three windows 10.8 × 3.4, head 60': {
    insertions: 329,
    starts: [330, 329, 340, 346],
    seconds: 14,
    grid: 369,
  },
  'round openings 6.0 × 3.0': { insertions: 400, starts: [402, 402, 408, 412], seconds: 14, grid: 468 },
  'sixty pipe sleeves 6.0 × 3.0': { insertions: 490, starts: [496, 502, 498, 495], seconds: 74, grid: 820 },
  '300 openings 12 × 4': { insertions: 1332, starts: [1393, 1348, 1389, 1353], seconds: 15, grid: 2470 },
}
