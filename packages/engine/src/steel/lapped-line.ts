/** A bar as it is cut: along its line from `from` to `to`, mm. */
export interface Piece {
  readonly from: number
  readonly to: number
}

export interface LappedLine {
  readonly pieces: readonly Piece[]
  /** Middles of the laps along the line, mm. */
  readonly laps: readonly number[]
}

/** Middles of laps of neighbouring bars lie at least this many laps apart, so that their ends keep 0.3 laps clear. */
export const STAGGER = 1.3
