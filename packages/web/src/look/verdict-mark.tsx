import type { Verdict } from '@castwright/engine/working'
import type { ReactElement } from 'react'

/** The word that always stands beside the shape. */
export const VERDICT_WORD: Readonly<Record<Verdict, string>> = {
  pass: 'passes',
  fail: 'fails',
  unknown: 'not known',
}

export interface VerdictMarkProps {
  readonly verdict: Verdict
  /** px; 24 on a card. */
  readonly size?: number
  /** The word is shown beside the shape; without it the word is there for screen readers. */
  readonly withWord?: boolean
  /** Where the words of the row already say the verdict. */
  readonly silent?: boolean
}

/** Filled disc with a tick, square with a bar, open ring with a question mark. */
export function VerdictMark({
  verdict,
  size = 24,
  withWord = false,
  silent = false,
}: VerdictMarkProps): ReactElement {
  return (
    <span className="verdict">
      <svg className={`verdict-${verdict}`} width={size} height={size} viewBox="0 0 24 24" aria-hidden="true">
        <VerdictShape verdict={verdict} />
      </svg>
      {withWord ? (
        <span>{VERDICT_WORD[verdict]}</span>
      ) : silent ? null : (
        <span className="only-read">{VERDICT_WORD[verdict]}</span>
      )}
    </span>
  )
}

/** The bare shape, 24 by 24, in the current colour: for use inside another drawing. */
export function VerdictShape({ verdict }: { readonly verdict: Verdict }): ReactElement {
  if (verdict === 'pass') {
    return (
      <>
        <circle cx="12" cy="12" r="11" fill="currentColor" />
        <path d="M6.5 12.5l3.7 3.7 7.3-8" fill="none" stroke="var(--sheet)" strokeWidth="2.8" />
      </>
    )
  }
  if (verdict === 'fail') {
    return (
      <>
        <rect x="1" y="1" width="22" height="22" fill="currentColor" />
        <rect x="6" y="10.3" width="12" height="3.4" fill="var(--sheet)" />
      </>
    )
  }
  return (
    <>
      <circle cx="12" cy="12" r="9.8" fill="none" stroke="currentColor" strokeWidth="2.4" />
      <path
        d="M9 9.6c0-1.9 1.3-2.9 3-2.9s3 1 3 2.6c0 2.2-3 2.3-3 4.6"
        fill="none"
        stroke="currentColor"
        strokeWidth="2.2"
      />
      <circle cx="12" cy="17" r="1.5" fill="currentColor" />
    </>
  )
}
