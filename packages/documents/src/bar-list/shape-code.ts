import { type ScheduledBar, shapeLabels } from '@castwright/engine/steel'

/**
 * Shape code of BS 8666 for a line of the schedule, 99 where none fits exactly; null where the line does not say which way each bend
 * turns. Example: an L of 12 mm, inside 48: 11.
 */
export function shapeCode(bar: ScheduledBar): string | null {
  const senses = sensesOf(bar)
  if (senses === null) return null
  const { diameter, inside, legs, turns } = bar
  const labels = shapeLabels({ diameter, inside, legs, turns, senses, outOfPlane: false })
  return labels.known ? labels.value.bs8666 : null
}

/** Side of each bend as the word of the shape tells it. */
function sensesOf({ shape, turns }: ScheduledBar): (1 | -1)[] | null {
  if (turns.length < 2 || shape === 'U' || shape === 'closed') return turns.map(() => 1)
  return shape === 'Z' ? [1, -1] : null
}
