/** One thing wrong with an input: data first, the sentence is made in `issueSentence` for screen, paper and shell alike. */
export interface InputIssue {
  /** Path of the field as one would write it: `openings[1].outline[3]`. Empty for the whole. */
  readonly path: string
  /** What came, short enough for one line. */
  readonly found: string
  readonly expected: string
}

/** The input is wrong: impossible, of the wrong form, or an unknown word. Command line: exit 2; server: status 422. */
export class InputError extends Error {
  readonly issues: readonly InputIssue[]
  /** File or option that the input came from. */
  readonly from: string

  constructor(issues: readonly InputIssue[], from = '') {
    super(issues.map((issue) => issueSentence(issue, from)).join('\n'))
    this.name = 'InputError'
    this.issues = issues
    this.from = from
  }

  /** The same issues, with the place that they came from. */
  within(from: string): InputError {
    return new InputError(this.issues, from)
  }
}

export function issueSentence(issue: InputIssue, from = ''): string {
  const place = [from, issue.path].filter((part) => part !== '').join(': ')
  return `${place === '' ? 'input' : place}: found ${issue.found}, expected ${issue.expected}`
}

/** What came, as one short line of text. */
export function foundText(value: unknown): string {
  if (value === undefined) return 'nothing'
  if (typeof value === 'number') return String(value)
  const text = JSON.stringify(value) ?? String(value)
  return text.length > 80 ? `${text.slice(0, 77)}…` : text
}
