/** Distance of the head from faces where none is given, mm; always listed as assumed. */
export const ASSUMED_MARGIN = 75
