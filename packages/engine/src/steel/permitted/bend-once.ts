import type { BarRole } from '../../codes/steel-rules.ts'
import { ceilTo } from '../../working/round.ts'
import type { Source } from '../../working/source.ts'
import type { BarMake } from './permitted-acts.ts'
import type { PermittedAct } from './strictest.ts'

const ROLES: readonly { readonly role: BarRole; readonly words: string }[] = [
  { role: 'main', words: 'main bar' },
  { role: 'stirrup', words: 'deformed stirrup or tie' },
]

/**
 * Bending once, cold, on no less than the family's least inside diameter, mm, printed up to the next tenth.
 *
 * Unknown where that diameter is known for neither role, and for a galvanised bar without a diameter.
 */
export function bendOnce({ family, grade, diameter, galvanised }: BarMake, source: Source): PermittedAct {
  const { coldest, leastBend } = family.steel
  const conditions = [
    'Cold, in one go and slowly; a bar that shows a crack is rejected.',
    ...(coldest === null
      ? ['This family names no lowest bar temperature: the engineer decides in frost.']
      : [`Bar not colder than ${coldest.temperature} °C.`]),
  ]
  if (diameter === null) {
    if (galvanised) {
      return {
        act: 'bend once',
        answer: 'unknown',
        conditions: ['diameter: least bend of galvanised bar hangs on it, mm'],
        source,
      }
    }
    return {
      act: 'bend once',
      answer: 'yes',
      conditions: [
        'On no less than the least inside diameter for its size and role: not said here without a diameter.',
        ...conditions,
      ],
      source,
    }
  }
  const least = ROLES.map(({ role, words }) => ({
    words,
    limit: leastBend({ diameter, grade, role, plain: false, galvanised }),
  }))
  if (least.every(({ limit }) => !limit.known)) {
    const gaps = least.flatMap(({ limit }) => (limit.known ? [] : limit.gaps))
    return { act: 'bend once', answer: 'unknown', conditions: [...new Set(gaps)], source }
  }
  return {
    act: 'bend once',
    answer: 'yes',
    conditions: [
      ...least.map(({ words, limit }) =>
        limit.known
          ? `As ${words} on at least ${ceilTo(limit.value, 0.1).toFixed(1).replace(/\.0$/, '')} mm inside diameter.`
          : `As ${words}: not known (${limit.gaps.join('; ')}).`,
      ),
      ...conditions,
    ],
    source,
  }
}
