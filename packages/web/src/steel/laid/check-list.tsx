import type { Assumed, Check } from '@castwright/engine/working'
import type { ReactElement } from 'react'
import { AssumedList, Explain, fixed, VerdictMark } from '../../look/index.ts'

/** Checks with verdict, numbers and the way to their working; what was assumed below. */
export function CheckList({
  checks,
  assumed,
}: {
  readonly checks: readonly Check[]
  readonly assumed: readonly Assumed[]
}): ReactElement {
  return (
    <>
      {checks.length === 0 ? null : (
        <ul className="laid-checks">
          {checks.map((check) => (
            <li key={check.id}>
              <span>
                <VerdictMark verdict={check.verdict} size={20} withWord />
                <span>
                  {check.what}: {numbers(check)}
                </span>
              </span>
              <Explain about={check.what} working={check.working} source={check.source} />
            </li>
          ))}
        </ul>
      )}
      {assumed.length === 0 ? null : <AssumedList assumed={assumed} />}
    </>
  )
}

function numbers({ demand, limit, unit, sense, unknown }: Check): string {
  const limited = limit === null ? 'no confirmed limit' : `${sense} ${fixed(limit, 1)} ${unit}`
  const has = demand === null ? 'not known' : `${fixed(demand, 1)} ${unit}`
  return `${has}, ${limited}${unknown === undefined ? '' : ` (${unknown.join('; ')})`}`
}
