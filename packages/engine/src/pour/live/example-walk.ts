import type { Point } from '../../panel/point.ts'
import type { CompactionPlan } from '../pour-plan.ts'
import { reachedOf } from './reached.ts'
import { stopsOf } from './stops.ts'
import { goTo, newWalk, pulledOut, type Visit, type Walk } from './walk.ts'
import { goOn, type WalkState, walkState } from './walk-state.ts'

/** An invented plan for tests: insertions 300 mm apart in a line, radius 200, zones of `zoneOf`, dealt to `vibrators`, in `layers`. */
export function examplePlan({
  count = 6,
  zoneOf = 3,
  vibrators = 1,
  layers = 1,
}: {
  readonly count?: number
  readonly zoneOf?: number
  readonly vibrators?: number
  readonly layers?: number
} = {}): CompactionPlan {
  const insertions = Array.from({ length: count }, (_, i): Point => [150 + i * 300, 100])
  return {
    insertions,
    radius: 200,
    action: 231,
    uncovered: 0,
    path: 0,
    minutes: 1,
    close: [],
    zones: Array.from({ length: Math.ceil(count / zoneOf) }, (_, z) => {
      const own = insertions.map((_, i) => i).slice(z * zoneOf, (z + 1) * zoneOf)
      const [from, to] = [z * zoneOf * 300, (z * zoneOf + own.length) * 300]
      return {
        id: `${from}-${to}`,
        order: z + 1,
        outlines: [
          [
            [from, 0],
            [to, 0],
            [to, 200],
            [from, 200],
          ] as Point[],
        ],
        volume: 0.1,
        insertions: own,
        minutes: 0.5,
        shares: Array.from({ length: vibrators }, (_, k) => own.filter((_, i) => i % vibrators === k)),
      }
    }),
    reduced: [],
    layers: { count: layers, depth: 150 },
    seconds: { in: 10, moving: 3 },
    pace: 3,
    zoneMinutes: 1,
    headRate: null,
  }
}

/** A walk on one device, tapped in tests; others' visits come in `recorded`. */
export class ExampleWalk {
  walk: Walk = newWalk('test')

  constructor(
    readonly plan: CompactionPlan,
    readonly vibrator: number | null = null,
    readonly recorded: readonly Visit[] = [],
    readonly ticked: ReadonlySet<string> = new Set(),
  ) {}

  state(now: number): WalkState {
    return walkState(this.input(now))
  }

  onward(now: number): this {
    this.walk = goOn(this.input(now))
    return this
  }

  /** To a stop, by index. */
  to(stop: number, now: number): this {
    const place = stopsOf(this.plan)[stop]
    if (place !== undefined) this.walk = goTo(this.walk, place, now)
    return this
  }

  out(now: number): this {
    this.walk = pulledOut(this.walk, now)
    return this
  }

  private input(now: number) {
    const { walk, plan, vibrator, ticked } = this
    const visits = [...walk.visits, ...this.recorded]
    return { walk, plan, vibrator, now, reached: reachedOf({ plan, visits, rings: RINGS, ticked }) }
  }
}

const RINGS: readonly (readonly Point[])[] = [
  [
    [0, 0],
    [9000, 0],
    [9000, 200],
    [0, 200],
  ],
]
