import { type Drawing, type DrawnBar, type DrawnMat, isListed, isMat } from '../../panel/drawing.ts'
import type { Point } from '../../panel/point.ts'
import { distanceToSegment } from '../../panel/polygon.ts'
import { commonPractice, type Source, STATICS } from '../../working/source.ts'
import { known, type Step, unknown, type Worked } from '../../working/worked.ts'
import type { CornerBars, StagePeak } from './stage.ts'

/** Bar stress at which cracks of handling stay near 0.2 mm on faces that are seen: the lower end of the usual 150 to 200, MPa. */
export const BAR_STRESS_LIMIT = 150
export const BAR_STRESS_SOURCE: Source = commonPractice('bar stress in handling, cracks near 0.2 mm')

/** Concrete that the ratio of moduli is taken at, MPa: weaker than a panel is lifted at, so that bar stress comes out high. */
const WEAK = 10
const STEEL_MODULUS = 200_000

/**
 * Bars across a re-entrant corner under the moment averaged over its disc, the concrete cracked: bar stress by the elastic section with one
 * layer of steel on the face in tension. Mats count by their steel per width, listed bars by what passes within one thickness of the corner over that width; both by the
 * square of the cosine between bar and tension.
 *
 * Unknown where the cover of that face is not given. Source of the section: elastic cracked section, statics.
 */
export function cornerBars({
  drawing,
  peak,
}: {
  readonly drawing: Drawing
  readonly peak: StagePeak
}): Worked<CornerBars> {
  const t = drawing.thickness
  const cover = peak.face === 'mould' ? drawing.cover?.mould : drawing.cover?.top
  const along = tensionAxis(peak)
  const found = { at: peak.at, area: 0, stress: null, limit: BAR_STRESS_LIMIT, source: BAR_STRESS_SOURCE }
  let [area, diameter] = [0, 0]
  for (const steel of drawing.steel ?? []) {
    const here = isMat(steel)
      ? matArea(steel, peak.face, along)
      : isListed(steel)
        ? barArea(steel, peak, along, t)
        : 0
    if (here > 0) diameter = Math.max(diameter, steel.diameter)
    area += here
  }
  if (area <= 0) return known(found, [])
  if (cover === undefined) return unknown(`cover.${peak.face}: depth of the bars across the corner`)
  const d = t - cover - 1.5 * diameter
  if (!(d > 0)) return unknown('cover: more than the thickness')
  const moment = (peak.stress * t * t) / 6000
  const n = STEEL_MODULUS / (4700 * Math.sqrt(WEAK))
  const r = area / 1000 / d
  const k = Math.sqrt((r * n) ** 2 + 2 * r * n) - r * n
  const stress = (moment * 1e6) / (area * d * (1 - k / 3))
  const step = (
    symbol: string,
    formula: string,
    given: Step['given'],
    result: number,
    unit: string,
    note?: string,
  ): Step => ({
    symbol,
    formula,
    given,
    result,
    unit,
    source: STATICS,
    ...(note === undefined ? {} : { note }),
  })
  return known({ ...found, area, stress }, [
    step(
      'm',
      'σ t² / 6000',
      { σ: peak.stress, t },
      moment,
      'kN·m/m',
      'principal moment of the disc at the corner',
    ),
    step('d', 't − c − 1.5 ø', { t, c: cover, ø: diameter }, d, 'mm', 'bars of the second layer'),
    step(
      'n',
      'Es / (4700 √f)',
      { Es: STEEL_MODULUS, f: WEAK },
      n,
      '',
      'at weak concrete: bar stress on the high side',
    ),
    step('r', 'A / 1000 / d', { A: area, d }, r, ''),
    step('k', '√((r n)² + 2 r n) − r n', { r, n }, k, ''),
    step('fs', 'm · 10⁶ / (A d (1 − k / 3))', { m: moment, A: area, d, k }, stress, 'MPa'),
  ])
}

/** Whether the bars across a re-entrant corner carry its tension with the concrete cracked. */
export function carriedByBars(peak: StagePeak, corners: readonly CornerBars[]): boolean {
  if (peak.of !== 'corner') return false
  const bars = corners.find(({ at }) => at[0] === peak.at[0] && at[1] === peak.at[1])
  return bars !== undefined && bars.stress !== null && bars.stress <= bars.limit
}

/** Unit vector of the greatest tension on the face that has it. */
function tensionAxis({ mx, my, mxy, face }: StagePeak): Point {
  const angle = Math.atan2(2 * mxy, mx - my) / 2 + (face === 'mould' ? 0 : Math.PI / 2)
  return [Math.cos(angle), Math.sin(angle)]
}

function matArea(
  { layer, direction, diameter, spacing }: DrawnMat,
  face: 'mould' | 'top',
  along: Point,
): number {
  if (layer !== face) return 0
  const cosine = direction === 'x' ? along[0] : along[1]
  return ((Math.PI * diameter ** 2) / 4 / spacing) * 1000 * cosine ** 2
}

function barArea(bar: DrawnBar, { at, face }: StagePeak, along: Point, width: number): number {
  if (bar.layer !== face || bar.path === undefined) return 0
  let area = 0
  for (let i = 0; i + 1 < bar.path.length; i += 1) {
    const [a, b] = [bar.path[i]!, bar.path[i + 1]!]
    if (distanceToSegment(at, [a, b]) > width) continue
    const length = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (!(length > 0)) continue
    const cosine = ((b[0] - a[0]) * along[0] + (b[1] - a[1]) * along[1]) / length
    area = Math.max(area, ((Math.PI * bar.diameter ** 2) / 4 / width) * 1000 * cosine ** 2)
  }
  return area
}
