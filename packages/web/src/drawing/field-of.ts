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
  const opening = /^(openings|voids)\[(\d+)\]\.outline(?:\[(\d+)\])?(?:\[(\d)\])?$/.exec(path)
  if (opening) {
    const [, list = '', place = '', corner, axis] = opening
    const name = `${list}[${place}]`
    const shape = (list === 'voids' ? draft.voids : draft.openings)[Number(place)]
    if (shape?.form === 'corners') return cornerField(`${name}.outline`, corner, axis)
    if (corner === '0' && axis !== undefined) return `${name}.${axis === '0' ? 'x' : 'y'}`
    return boxField(name, ['width', 'height'], corner, axis)
  }
  const duct = /^(ducts\[\d+\]\.line)(?:\[(\d+)\])?(?:\[(\d)\])?$/.exec(path)
  if (duct) return cornerField(duct[1] ?? '', duct[2], duct[3])
  const bar = /^(steel\[\d+\]\.path)(?:\[(\d+)\])?(?:\[(\d)\])?$/.exec(path)
  if (bar) return cornerField(bar[1] ?? '', bar[2], bar[3])
  const insert = /^(inserts\[\d+\])\.at(?:\[(\d)\])?$/.exec(path)
  if (insert) return `${insert[1]}.${insert[2] === '1' ? 'y' : 'x'}`
  if (/^(openings|voids|ducts)\[\d+\]$/.test(path)) return `${path}.mark`
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
    /^(openings|voids|ducts|steel|inserts)\[\d+\]\.[a-z]+$/.test(path) ||
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
