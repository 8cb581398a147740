import { ceilTo } from '@castwright/engine/working'

/** A load for reading, kN: rounded up to a tenth, as for a hook; a support that would have to push down keeps its sign. */
export function loadText(load: number): string {
  const up = load < 0 ? -ceilTo(-load, 0.1) : ceilTo(load, 0.1)
  return `${up.toFixed(1).replace('-', '−')} kN`
}
