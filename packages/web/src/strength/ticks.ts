/** About five round values that hold both ends: steps of 1, 2 or 5 times a power of ten. */
export function ticksOf(low: number, high: number): number[] {
  if (!(Number.isFinite(low) && Number.isFinite(high)) || high < low) return []
  const span = Math.max(high - low, 1e-6)
  const rough = span / 4
  const power = 10 ** Math.floor(Math.log10(rough))
  const step =
    [1, 2, 5, 10].map((each) => each * power).find((each) => each >= rough * (1 - 1e-9)) ?? power * 10
  const first = Math.floor(low / step + 1e-9)
  const last = Math.ceil(high / step - 1e-9)
  return Array.from({ length: Math.max(1, last - first) + 1 }, (_, at) =>
    Number(((first + at) * step).toPrecision(12)),
  )
}
