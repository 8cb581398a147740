/** A lifting design by its reference, which many drawings begin with the very words: said once. */
export function designName(reference: string): string {
  return /^lifting design\b/i.test(reference) ? reference : `lifting design ${reference}`
}
