/** The revision after this one: `A` to `B`, `Z` to `AA`, `3` to `4`, `P02` to `P03`; anything else gets `.1`. */
export function nextRevision(revision: string | null): string {
  const now = revision?.trim() ?? ''
  if (now === '') return 'A'
  const number = /^(.*?)(\d+)$/.exec(now)
  if (number) {
    const [, before = '', digits = ''] = number
    return `${before}${String(Number(digits) + 1).padStart(digits.length, '0')}`
  }
  if (/^[A-Z]+$/.test(now)) return nextLetters(now)
  return `${now}.1`
}

function nextLetters(letters: string): string {
  const last = letters.slice(-1)
  const before = letters.slice(0, -1)
  if (last !== 'Z') return before + String.fromCharCode(last.charCodeAt(0) + 1)
  return `${before === '' ? 'A' : nextLetters(before)}A`
}
