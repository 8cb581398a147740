import { type Point, panelOf, parseDrawing, type Ring } from '@castwright/engine/panel'
import { ASSUMED_MARGIN, type Congested, chuteOf, compact, displacedBy } from '@castwright/engine/pour'
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
    { flags: '--vibrators <count>', about: 'vibrators at work at the same time; 1 if not given' },
    {
      flags: '--congested <x,y,width,height>',
      about:
        'rectangle of close steel, mm, beside those of the drawing, in which two thirds of the reach hold; four numbers more for each further one',
    },
  ],
  example: 'castwright compact docs/examples/wall.json --head 40',
  async run(given) {
    const head = given.optionalNumber('head', { above: 0, unit: 'mm' })
    const radius = given.optionalNumber('radius', { above: 0, unit: 'mm' })
    if (head === undefined && radius === undefined)
      throw given.fault('head', undefined, 'the diameter of the head, mm, or --radius')
    const margin = given.optionalNumber('margin', { least: 0, unit: 'mm' })
    const vibrators = given.optionalNumber('vibrators', { above: 0 })
    if (vibrators !== undefined && !Number.isInteger(vibrators))
      throw given.fault('vibrators', given.optionalText('vibrators'), 'a whole number')
    const chute = readChute(given)
    const congested = readCongested(given)
    const panel = panelOf(parseDrawing(await given.fileJson(), given.fileName), given.fileName)
    const found = compact({
      region: panel.region,
      thickness: panel.drawing.thickness,
      head,
      radius,
      margin,
      chute: chute ?? chuteOf(panel),
      vibrators,
      congested: [
        ...(panel.drawing.congested ?? []).map(
          ({ mark, outline, share }): Congested => ({ mark, outline: outline as unknown as Ring, share }),
        ),
        ...congested,
      ],
      displaced: displacedBy(panel),
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
            ['Covering radius', numberText(plan.radius, 'mm')],
            ['Radius of action', plan.action === null ? 'not used' : numberText(plan.action, 'mm')],
            ['Not reached', `${numberText(plan.uncovered, 'm²')}: ${verdict}`],
            ['Way', numberText(plan.path / 1000, 'm')],
            ['Vibrating', numberText(plan.minutes, 'min')],
            ['Layers', String(plan.layers.count)],
            ['Keeps up with', numberText(plan.pace, 'm³/h')],
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
          'Positions with --json. Close steel cuts the reach: give its place with --congested, or a smaller radius.',
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

function readCongested(given: Given): Congested[] {
  const numbers = given.optionalNumbers('congested') ?? []
  if (numbers.length % 4 !== 0)
    throw given.fault('congested', given.optionalText('congested'), 'x, y, width and height of each, mm')
  return Array.from({ length: numbers.length / 4 }, (_, i): Congested => {
    const [x = 0, y = 0, width = 0, height = 0] = numbers.slice(4 * i, 4 * i + 4)
    if (!(width > 0 && height > 0))
      throw given.fault('congested', given.optionalText('congested'), 'width and height above 0, mm')
    return {
      outline: [
        [x, y],
        [x + width, y],
        [x + width, y + height],
        [x, y + height],
      ],
    }
  })
}
