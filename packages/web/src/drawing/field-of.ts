import type { Draft } from './draft.ts'
import { handlingField } from './handling-draft.ts'

/**
 * The field of the form that an issue of a drawing belongs to, by its path: `concrete.strength` is a field itself;
 * `openings[0].outline[2]` is the corner where corners are typed, and the size where a box is. An issue of no field gives
 * `''`: it stands above the form.
 */
export function fieldOf(path: string, draft: Draft): string {
  const outline = /^outline(?:\[(\d+)\])?(?:\[(\d)\])?$/.exec(path)
  if (outline) {
    return draft.form === 'box'
      ? boxField('outline', ['length', 'width'], outline[1], outline[2])
      : cornerField('outline', outline[1], outline[2])
  }
  const opening = /^openings\[(\d+)\]\.outline(?:\[(\d+)\])?(?:\[(\d)\])?$/.exec(path)
  if (opening) {
    const index = Number(opening[1])
    const name = `openings[${index}]`
    if (draft.openings[index]?.form === 'corners')
      return cornerField(`${name}.outline`, opening[2], opening[3])
    if (opening[2] === '0' && opening[3] !== undefined) return `${name}.${opening[3] === '0' ? 'x' : 'y'}`
    return boxField(name, ['width', 'height'], opening[2], opening[3])
  }
  const bar = /^(steel\[\d+\]\.path)(?:\[(\d+)\])?(?:\[(\d)\])?$/.exec(path)
  if (bar) return cornerField(bar[1] ?? '', bar[2], bar[3])
  const insert = /^(inserts\[\d+\])\.at(?:\[(\d)\])?$/.exec(path)
  if (insert) return `${insert[1]}.${insert[2] === '1' ? 'y' : 'x'}`
  if (/^openings\[\d+\]$/.test(path)) return `${path}.mark`
  if (/^inserts\[\d+\]$/.test(path)) return `${path}.x`
  const whole = /^steel\[(\d+)\]$/.exec(path)
  if (whole) return draft.steel[Number(whole[1])]?.kind === 'bar' ? `${path}.bar` : `${path}.diameter`
  if (/^steel\[\d+\]\.diagonals$/.test(path)) return `${path}.diameter`
  const laid = /^(steel\[\d+\]\.(?:ties|starters))(?:\[\d+\])*$/.exec(path)
  if (laid) return laid[1] ?? ''
  const legs = /^(steel\[\d+\]\.(?:legs|turns))\[\d+\]$/.exec(path)
  if (legs) return legs[1] ?? ''
  const field = handlingField(path)
  return isField(field) ? field : ''
}

const FIELDS = [
  'mark',
  'job',
  'revision',
  'code',
  'edition',
  'thickness',
  'concrete.strength',
  'concrete.density',
  'concrete.aggregate',
  'cover.mould',
  'cover.top',
  'cover.edge',
  'lap.length',
  'rigging',
  'lifting.strength',
  'lifting.load',
  'lifting.reference',
  'lifting.by',
  'handling.turn.about',
  'handling.turn.inserts',
  'handling.turn.rigging',
]

function isField(path: string): boolean {
  return (
    FIELDS.includes(path) ||
    /^(openings|steel|inserts)\[\d+\]\.[a-z]+$/.test(path) ||
    /^steel\[\d+\]\.diagonals\.[a-z]+$/.test(path) ||
    /^handling\.(store|travel)\.(as|across|lean|lines\[[01]\])$/.test(path) ||
    /^handling\.factors\.[a-z]+$/.test(path)
  )
}

/** Corners of a box run from the lower left: the second has the length, the third and fourth the height. */
function boxField(
  name: string,
  [along, up]: readonly [string, string],
  corner: string | undefined,
  axis: string | undefined,
): string {
  if (corner === undefined) return `${name}.${along}`
  return `${name}.${axis === '1' || corner === '3' ? up : along}`
}

function cornerField(name: string, corner: string | undefined, axis: string | undefined): string {
  if (corner === undefined) return name
  return `${name}[${corner}].${axis === '1' ? 'y' : 'x'}`
}
