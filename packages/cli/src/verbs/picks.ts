import type { KeptClear, Picks } from '@castwright/engine/lift'
import { PICK_COUNTS, picks } from '@castwright/engine/lift'
import { isListed, type Panel, panelOf, readDrawing } from '@castwright/engine/panel'
import type { Given } from '../given.ts'
import { numberText, textTable, type Verb } from '../verb.ts'

const KINDS = ['face', 'edge'] as const

export const picksVerb: Verb = {
  name: 'picks',
  file: { name: 'DRAWING', about: 'drawing of the panel, JSON' },
  options: [
    {
      flags: '--count <number>',
      about: '2, 4, 6 or 8 inserts; two hang on a line through the centre of gravity',
    },
    {
      flags: '--edge <mm>',
      about:
        'least distance to edges and openings, of edge inserts to the ends of their edge; 300 if not given',
    },
    { flags: '--kind <name>', about: 'face or edge; face if not given' },
    {
      flags: '--spacing <mm>',
      about: 'least distance between inserts; twice the edge distance if not given',
    },
    { flags: '--grid <mm>', about: 'only at multiples of this from the origin: one number, or two as x,y' },
    { flags: '--symmetric', about: 'refuse a panel without symmetry, and mirror the picks in any case' },
    { flags: '--equalised', about: 'legs share alike: the middle of the picks under the hook' },
    { flags: '--bars <mm>', about: 'keep this far from the centrelines of listed bars' },
    { flags: '--factor <number>', about: 'factor on own weight; 1 if not given' },
    { flags: '--modulus <MPa>', about: 'modulus of elasticity, MPa; 30000 if not given' },
    { flags: '--poisson <number>', about: 'Poisson’s ratio, at least 0 and below 0.5; 0.2 if not given' },
    { flags: '--seed <number>', about: 'whole number that the random starts follow from; 1 if not given' },
  ],
  example: 'castwright picks docs/examples/wall.json --count 4',
  async run(given) {
    const from = performance.now()
    const options = readOptions(given)
    const drawing = readDrawing(await given.fileText(), given.fileName)
    const panel = panelOf(drawing, given.fileName)
    const bars = given.optionalNumber('bars', { least: 0, unit: 'mm' })
    const found = picks({
      panel,
      ...options,
      ...(bars === undefined ? {} : { clear: listedBars(panel, bars) }),
      from: given.fileName,
    })
    const { working, assumed, peak, ...rest } = found
    return {
      json: {
        inserts: rest.inserts,
        peak: peak.stress,
        peakAt: peak.at,
        peakOf: peak.of,
        before: rest.before,
        loads: rest.inserts.map(({ load }) => load),
        classical: rest.classical,
        gain: rest.gain,
        mirrors: rest.mirrors,
        unknown: rest.unknown,
        seconds: (performance.now() - from) / 1000,
      },
      working,
      assumed,
      table: () => picksTable(found),
    }
  },
}

function readOptions(given: Given) {
  const count = given.number('count', { least: 2, most: 8, whole: true })
  if (!PICK_COUNTS.some((one) => one === count))
    throw given.fault('count', count, `one of ${PICK_COUNTS.join(', ')}`)
  const numbers = Object.fromEntries(
    (['edge', 'spacing', 'factor', 'modulus'] as const).flatMap((name) => {
      const value = given.optionalNumber(name, { above: 0 })
      return value === undefined ? [] : [[name, value]]
    }),
  )
  const poisson = given.optionalNumber('poisson', { least: 0 })
  if (poisson !== undefined && poisson >= 0.5)
    throw given.fault('poisson', poisson, 'a number at least 0 and below 0.5')
  const seed = given.optionalNumber('seed', { whole: true })
  const kind = given.optionalChoice('kind', KINDS)
  const grid = given.optionalNumbers('grid', { above: 0, unit: 'mm' })
  if (grid !== undefined && grid.length > 2)
    throw given.fault('grid', grid.join(','), 'one number or two, mm')
  return {
    count,
    ...numbers,
    ...(poisson === undefined ? {} : { poisson }),
    ...(seed === undefined ? {} : { seed }),
    ...(kind === undefined ? {} : { kind }),
    ...(grid === undefined ? {} : { grid: [grid[0] as number, grid[1] ?? (grid[0] as number)] as const }),
    ...(given.flag('symmetric') ? { symmetric: true } : {}),
    ...(given.flag('equalised') ? { sharing: 'equalised' as const } : {}),
  }
}

/** Bars of the drawing that have a path. */
function listedBars({ drawing }: Panel, distance: number): KeptClear[] {
  return (drawing.steel ?? []).flatMap((steel) =>
    isListed(steel) && steel.path !== undefined ? [{ what: steel.bar, path: steel.path, distance }] : [],
  )
}

function picksTable({ inserts, peak, before, classical, gain, unknown }: Picks): string {
  return [
    textTable([
      ...inserts.map(({ mark, at, load }) => [
        `Insert ${mark} at ${numberText(at[0])}, ${numberText(at[1], 'mm')}`,
        numberText(load, 'kN'),
      ]),
      ['Peak tension', numberText(peak.stress, 'MPa')],
      ...(before === null
        ? []
        : [['Peak with the drawn inserts', `${numberText(before, 'MPa')}${percent(gain.before)}`]]),
      ...(classical === null
        ? []
        : [['Peak by the classical rule', `${numberText(classical.peak, 'MPa')}${percent(gain.classical)}`]]),
    ]),
    ...unknown.map((gap) => `Not known: ${gap}`),
    'Positions for the least bending when lifted flat; insert, concrete and rigging are checked apart.',
  ].join('\n')
}

function percent(gain: number | null): string {
  return gain === null ? '' : ` (the places found: ${numberText(100 * gain)} % less)`
}
