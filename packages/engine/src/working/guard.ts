/**
 * Names of the fields that are missing, not finite or not above 0. `!(x > 0)` and not `x <= 0`: NaN slips past the
 * second.
 */
export function notAboveZero(fields: Readonly<Record<string, number | null | undefined>>): string[] {
  return Object.entries(fields)
    .filter(([, value]) => !(typeof value === 'number' && value > 0 && Number.isFinite(value)))
    .map(([name]) => `${name}: a number above 0`)
}

/** Names of the fields that are missing or not finite. */
export function notFinite(fields: Readonly<Record<string, number | null | undefined>>): string[] {
  return Object.entries(fields)
    .filter(([, value]) => !(typeof value === 'number' && Number.isFinite(value)))
    .map(([name]) => `${name}: a number`)
}

/** Names of the fields that are missing, not finite or below 0. */
export function belowZero(fields: Readonly<Record<string, number | null | undefined>>): string[] {
  return Object.entries(fields)
    .filter(([, value]) => !(typeof value === 'number' && value >= 0 && Number.isFinite(value)))
    .map(([name]) => `${name}: a number not below 0`)
}
