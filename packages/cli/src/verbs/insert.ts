import { codeFamily } from '@castwright/engine/codes'
import { type AnchorFound, anchorReport, parseAnchorCase } from '@castwright/engine/lift'
import { numberText, textTable, type Verb } from '../verb.ts'

export const insertVerb: Verb = {
  name: 'insert',
  file: {
    name: 'CASE.json',
    about: 'inserts on a face, its concrete and the design forces; mm, mm², kN, MPa',
  },
  options: [
    {
      flags: '--supplementary',
      about: 'reinforcement holds the concrete of the failure together; taken as absent if not given',
    },
  ],
  example: 'castwright insert docs/examples/insert.json --code us',
  async run(given) {
    const family = codeFamily(given.code())
    const anchorCase = parseAnchorCase(await given.fileJson(), given.fileName)
    const supplementary = given.flag('supplementary')
    const { working, assumed, unknown, modes, ...found } = anchorReport({ anchorCase, family, supplementary })
    return {
      json: {
        modes: modes.map(({ working: _, ...mode }) => mode),
        ...found,
        ...(unknown.length > 0 ? { unknown } : {}),
      },
      working,
      assumed,
      verdict: found.verdict,
      table: () => insertTable({ working, assumed, unknown, modes, ...found }),
    }
  },
}

function insertTable({
  modes,
  notNeeded,
  interaction,
  governing,
  ratio,
  unknown,
  verdict,
}: AnchorFound): string {
  return [
    textTable([
      ['Mode', 'Of', 'Nominal, kN', 'Factor', 'Design, kN', 'Demand, kN', 'Verdict', 'Source'],
      ...modes.map((mode) => [
        `${mode.mode}, ${mode.action}`,
        mode.of === 'group' ? 'all inserts' : 'most loaded',
        numberText(mode.nominal),
        numberText(mode.factor),
        numberText(mode.design),
        numberText(mode.demand),
        mode.verdict,
        `${mode.source.standard} ${mode.source.clause} (${mode.source.status})`,
      ]),
    ]),
    ...interaction.map(
      ({ what, value, limit, verdict: together }) =>
        `${what}: ${numberText(value)} of ${numberText(limit)}: ${together}`,
    ),
    ...notNeeded.map(({ mode, why }) => `${mode}: not asked (${why})`),
    ...(governing === null ? [] : [`Governing: ${governing}, demand over design ${numberText(ratio)}`]),
    ...unknown.map((gap) => `Not known: ${gap}`),
    `Verdict: ${verdict}, of the anchor code alone: no lifting margin is in it, and it opens no hold. The maker's rating governs.`,
  ].join('\n')
}
