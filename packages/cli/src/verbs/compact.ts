import { type Point, panelOf, parseDrawing } from '@castwright/engine/panel'
import { ASSUMED_MARGIN, chuteOf, compact } from '@castwright/engine/pour'
import type { Given } from '../given.ts'
import { numberText, textTable, type Verb } from '../verb.ts'

export const compactVerb: Verb = {
  name: 'compact',
  file: { name: 'DRAWING', about: 'the drawing, JSON' },
  options: [
    { flags: '--head <mm>', about: 'diameter of the vibrator head, mm; not needed beside a radius' },
    {
      flags: '--radius <mm>',
      about: 'covering radius, mm, taken as given; 0.866 × the radius of action of the head if not given',
    },
    { flags: '--margin <mm>', about: `wanted distance from faces, mm; ${ASSUMED_MARGIN} if not given` },
    {
      flags: '--chute <x,y>',
      about: 'where the concrete comes from, mm; the corner nearest the origin if not given',
    },
  ],
  example: 'castwright compact docs/examples/wall.json --head 40',
  async run(given) {
    const head = given.optionalNumber('head', { above: 0, unit: 'mm' })
    const radius = given.optionalNumber('radius', { above: 0, unit: 'mm' })
    if (head === undefined && radius === undefined)
      throw given.fault('head', undefined, 'the diameter of the head, mm, or --radius')
    const margin = given.optionalNumber('margin', { least: 0, unit: 'mm' })
    const chute = readChute(given)
    const panel = panelOf(parseDrawing(await given.fileJson(), given.fileName), given.fileName)
    const found = compact({
      region: panel.region,
      thickness: panel.drawing.thickness,
      head,
      radius,
      margin,
      chute: chute ?? chuteOf(panel),
    })
    if (!found.known) {
      return {
        json: {
          insertions: null,
          radius: radius ?? null,
          uncovered: null,
          path: null,
          minutes: null,
          zones: null,
          verdict: 'unknown',
          unknown: found.gaps,
        },
        verdict: 'unknown',
        table: () => found.gaps.map((gap) => `Not known: ${gap}`).join('\n'),
      }
    }
    const plan = found.value
    const verdict = plan.uncovered === 0 ? 'pass' : 'fail'
    return {
      json: { ...plan, verdict },
      working: found.working,
      assumed: [
        ...(found.assumed ?? []),
        ...(chute === null
          ? [
              {
                field: 'chute',
                value: chuteOf(panel).join(', '),
                unit: 'mm',
                why: 'corner nearest the origin',
              },
            ]
          : []),
      ],
      verdict,
      table: () =>
        [
          textTable([
            ['Insertions', String(plan.insertions.length)],
            ['Radius', numberText(plan.radius, 'mm')],
            ['Not reached', `${numberText(plan.uncovered, 'm²')}: ${verdict}`],
            ['Way', numberText(plan.path / 1000, 'm')],
            ['Vibrating', numberText(plan.minutes, 'min')],
            ['Nearer a face than the margin', String(plan.close.length)],
          ]),
          textTable([
            ['zone', 'insertions', 'm³', 'min'],
            ...plan.zones.map((zone) => [
              String(zone.order),
              String(zone.insertions.length),
              numberText(zone.volume),
              numberText(zone.minutes),
            ]),
          ]),
          'Positions with --json. Congested steel cuts the reach: give a smaller radius.',
        ].join('\n\n'),
    }
  },
}

function readChute(given: Given): Point | null {
  const chute = given.optionalNumbers('chute')
  if (chute === undefined) return null
  const [x, y] = chute
  if (x === undefined || y === undefined || chute.length !== 2)
    throw given.fault('chute', given.optionalText('chute'), 'x and y with a comma between, mm')
  return [x, y]
}
