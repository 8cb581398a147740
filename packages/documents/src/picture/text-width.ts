/** Advance widths in hundredths of the size: bold, figures of one width, so that no text is longer than reckoned. */
const GROUPS: readonly (readonly [width: number, characters: string])[] = [
  [27, 'j.,:;'],
  [30, '·i'],
  [32, ' l'],
  [35, '()'],
  [39, 'f-rt°'],
  [42, '²³I'],
  [44, '/'],
  [52, '–cszy'],
  [55, 'v×xaL'],
  [58, 'ekJhnuFo'],
  [61, 'gbdpqE+ST'],
  [65, 'ZPBVRY123456789'],
  [69, 'CKADUX0'],
  [76, 'HGNwOQ'],
  [89, 'MmW'],
]
const WIDTHS = new Map(
  GROUPS.flatMap(([width, characters]) =>
    [...characters].map((character) => [character, width / 100] as const),
  ),
)

/** A face other than ours may stand in for it; letters not listed are taken as wide. */
const RESERVE = 1.05
const WIDE = 0.9

/** Width of a text in the units of its size, never less than it takes. */
export function textWidth(text: string, size: number): number {
  let sum = 0
  for (const character of text) sum += WIDTHS.get(character) ?? WIDE
  return sum * size * RESERVE
}

/** Height that a line of text takes, from the top of its letters to the bottom. */
export function textHeight(size: number): number {
  return size * 1.1
}
