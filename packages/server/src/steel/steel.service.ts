import type { CuttingSheetInput } from '@castwright/documents'
import type { CutBar } from '@castwright/engine/steel'
import { type CutPlanFacts, leftAfterCut } from '@castwright/record'
import type { YardLog } from '../entries/yard-log.ts'
import { Problem } from '../problem.ts'

/**
 * What the cutting sheet of a plan at the shear is made from. `plan`: its entry; `address`: where the code on it leads.
 *
 * @throws Problem `not-found` where the record has no such plan.
 */
export async function planSheet(
  log: YardLog,
  { plan, paper, address }: { plan: string; paper: CuttingSheetInput['size']; address: string },
): Promise<CuttingSheetInput> {
  const state = await log.state()
  const facts = state.steel.plans.find(({ entry }) => entry === plan)
  if (facts === undefined) throw new Problem('not-found', `no cutting plan ${plan} in the record`)
  const { diameter, grade, kerf } = facts.plan
  return {
    list: { kerf },
    plan: sums(facts),
    address: `${address}/steel?plan=${plan}`,
    name: `${diameter} mm ${grade}`,
    timezone: state.yard.yard?.timezone ?? 'UTC',
    size: paper,
    made: log.now(),
  }
}

function sums({ plan }: CutPlanFacts): CuttingSheetInput['plan'] {
  const of = (rack: boolean): number =>
    plan.lines.reduce((sum, line) => sum + (line.rack === rack ? line.stock * line.count : 0), 0)
  return {
    bars: plan.lines.map((line): CutBar => {
      const { stock, count, offcut, pieces, rack } = line
      const kept = plan.keep !== null && offcut > 0
      return {
        stock,
        count,
        offcut,
        pieces: pieces as CutBar['pieces'],
        ...(rack ? { rack: true as const } : {}),
        ...(kept
          ? {
              offcutTo: leftAfterCut(plan, line) >= (plan.keep ?? 0) ? ('rack' as const) : ('scrap' as const),
            }
          : {}),
      }
    }),
    stockLength: of(false),
    rackLength: of(true),
    netLength: plan.lines.reduce(
      (sum, { pieces, count }) =>
        sum + count * pieces.reduce((net, piece) => net + piece.length * piece.count, 0),
      0,
    ),
  }
}
