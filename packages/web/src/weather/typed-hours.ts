/** Weather at an instant as somebody typed it: ms since 1970, °C, %, km/h; null where nothing was typed. */
export interface TypedHour {
  readonly at: number
  readonly air: number | null
  readonly humidity: number | null
  readonly wind: number | null
}

const HOUR = 3_600_000
/** Typed hours that lie farther apart say too little of what is between them. Common practice, no source. */
export const FARTHEST = 12

/**
 * Every hour between typed ones, put in straight, so that the record holds no stretch without a reading. Where one of two neighbours has
 * no value, what lies between has none.
 *
 * @returns rows by time, or in words what is wrong
 */
export function typedHours(typed: readonly TypedHour[]): readonly TypedHour[] | string {
  const sorted = [...typed].sort((a, b) => a.at - b.at)
  if (sorted.length < 2) return 'At least two times.'
  for (const [index, next] of sorted.entries()) {
    const before = sorted[index - 1]
    if (before === undefined) continue
    if (next.at === before.at) return 'One time stands twice.'
    if (next.at - before.at > FARTHEST * HOUR) return `Two times lie more than ${FARTHEST} h apart.`
  }
  return sorted.flatMap((row, index): TypedHour[] => {
    const next = sorted[index + 1]
    if (next === undefined) return [row]
    const between: TypedHour[] = []
    for (let at = (Math.floor(row.at / HOUR) + 1) * HOUR; at < next.at; at += HOUR) {
      const share = (at - row.at) / (next.at - row.at)
      const straight = (a: number | null, b: number | null): number | null =>
        a === null || b === null ? null : Math.round((a + share * (b - a)) * 100) / 100
      between.push({
        at,
        air: straight(row.air, next.air),
        humidity: straight(row.humidity, next.humidity),
        wind: straight(row.wind, next.wind),
      })
    }
    return [row, ...between]
  })
}
