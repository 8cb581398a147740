import type { InsertKind, YardAgent, YardForm, YardRigging } from '@castwright/engine/yard'
import { figure } from '../look/index.ts'

/** A kind of insert as the yard's file gives it, in words; what is not given is not named. */
export function insertWords(kind: InsertKind): string {
  return [
    `${kind.mark}: in ${kind.kind === 'face' ? 'the face' : 'an edge'}, rated ${figure(kind.rated)} kN at ${figure(kind.ratedStrength)} MPa, not below ${figure(kind.leastStrength)} MPa`,
    sized('edge distance at least', kind.leastEdge, 'mm'),
    sized('spacing at least', kind.leastSpacing, 'mm'),
    sized('embedded', kind.depth, 'mm'),
    sized('bearing area of the head', kind.head, 'mm²'),
    sized('shank', kind.shaft, 'mm'),
    sized('steel fails at', kind.steel, 'kN'),
    sized('tail bars fail at', kind.tail, 'kN'),
    sized('tie against an edge fails at', kind.tie, 'kN'),
  ]
    .filter((part) => part !== '')
    .join(', ')
}

/** A side form as the yard's file gives it, in words. */
export function formWords(form: YardForm): string {
  const { plate } = form
  return [
    `${form.mark}: ${figure(form.height)} mm high`,
    sized('stress allowed in the rail', form.bending, 'MPa'),
    sized('a prop takes', form.propRating, 'kN'),
    sized('a brace takes', form.braceRating, 'kN'),
    plate === undefined
      ? ''
      : `plate of ${figure(plate.thickness)} mm${plate.held === undefined ? '' : plate.held === 'both' ? ', held at bed and top' : ', free above'}`,
  ]
    .filter((part) => part !== '')
    .join(', ')
}

/** A release agent as the yard's file gives it, in words. */
export function agentWords({ mark, kind, rates, dryingMinutes }: YardAgent): string {
  return [
    `${mark}: ${kind}`,
    ...rates.map(({ face, rate }) => `${figure(rate)} m² a litre on ${face}`),
    sized('dries', dryingMinutes, 'minutes'),
  ]
    .filter((part) => part !== '')
    .join(', ')
}

/** A set of rigging as the yard's file gives it, in words. */
export function riggingWords(rigging: YardRigging): string {
  const { spreader, pairs, top } = rigging
  return [
    `${rigging.mark}: ${rigging.legs} ${rigging.legs === 1 ? 'leg' : 'legs'} of ${figure(rigging.length)} mm, rated ${figure(rigging.rated)} kg`,
    typeof spreader === 'number'
      ? `spreader of ${figure(spreader)} mm`
      : spreader === undefined
        ? ''
        : spreader
          ? 'with a spreader'
          : 'without a spreader',
    top === undefined
      ? ''
      : top === 'middle'
        ? 'its beam hangs at the middle'
        : `top slings of ${figure(top)} mm`,
    rigging.equalised === undefined ? '' : rigging.equalised ? 'legs equalised' : 'legs not equalised',
    pairs === undefined
      ? ''
      : `one sling over a block for legs ${pairs.map(([a, b]) => `${a} and ${b}`).join('; ')}`,
    rigging.counted === undefined ? '' : `${rigging.counted} counted on`,
    sized('legs differ by up to', rigging.error, 'mm'),
    sized('stiffness of a leg', rigging.stiffness, 'kN/mm'),
  ]
    .filter((part) => part !== '')
    .join(', ')
}

function sized(what: string, value: number | undefined, unit: string): string {
  return value === undefined ? '' : `${what} ${figure(value)} ${unit}`
}
