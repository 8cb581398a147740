/** Words that loggers write where there is no reading. */
const NOTHING = /^(|-+|–|—|n\/?a|nan|null|none|no data|open|off|err(or)?|fault|ol|over(load|range)?|#n\/?a)$/i

export function saysNothing(text: string): boolean {
  return NOTHING.test(text.trim())
}
