export interface Slot {
  /** Of the panel, mm. */
  readonly thickness: number
  /** Heights above the mould face between which there is no concrete, mm. */
  readonly from: number
  readonly to: number
}

/** What is left of a strip across a slot, for a width of 1 mm. */
export interface NetSection {
  /** mm */
  readonly area: number
  /** Centroid above the mould face, mm. */
  readonly centre: number
  /** mm³ */
  readonly inertia: number
  /** To the farther face, mm². */
  readonly modulus: number
  /** Modulus over that of the full section. */
  readonly share: number
}

/**
 * Section of a strip cut along a slot, the leaves above and below acting as one: the most that the section there can have. What stands between the leaves has to
 * make them act so; whether it does is the designer's to say.
 *
 * Null where nothing is left or the slot is not inside the thickness. Example: 150 mm, slot from 50 to 100: modulus 26/27 of the full section's.
 */
export function netSection({ thickness: t, from, to }: Slot): NetSection | null {
  if (!(t > 0 && from >= 0 && to > from && to <= t)) return null
  const [lower, upper] = [from, t - to]
  const area = lower + upper
  if (!(area > 0)) return null
  const centre = (lower * (lower / 2) + upper * (t - upper / 2)) / area
  const inertia =
    (lower ** 3 + upper ** 3) / 12 + lower * (centre - lower / 2) ** 2 + upper * (t - upper / 2 - centre) ** 2
  const [bottom, top] = [lower > 0 ? 0 : to, upper > 0 ? t : from]
  const modulus = inertia / Math.max(centre - bottom, top - centre)
  return { area, centre, inertia, modulus, share: (6 * modulus) / t ** 2 }
}
