import { countRibs, type Rib } from '@castwright/engine/steel/incoming'
import { type ReactElement, useState } from 'react'
import { Button } from '../../look/index.ts'

/** Two buttons for a finger that goes along the bar: each rib is tapped in as it passes. */
export function RibCounter({
  onCounts,
}: {
  readonly onCounts: (counts: readonly number[]) => void
}): ReactElement {
  const [ribs, setRibs] = useState<readonly Rib[]>([])
  const read = countRibs(ribs)
  const groups = read.counts.length === 0 ? 'none yet' : read.counts.join(', ')
  const usable = read.state === 'once' || read.state === 'twice'
  return (
    <fieldset className="rib-counter">
      <legend>Count the ribs along the bar</legend>
      <div className="row">
        <Button onClick={() => setRibs([...ribs, 't'])}>Thick rib</Button>
        <Button onClick={() => setRibs([...ribs, 'n'])}>Normal rib</Button>
        <Button look="plain" disabled={ribs.length === 0} onClick={() => setRibs(ribs.slice(0, -1))}>
          take back
        </Button>
        <Button look="plain" disabled={ribs.length === 0} onClick={() => setRibs([])}>
          start again
        </Button>
      </div>
      <svg className="rib-strip" role="img" aria-label={`${ribs.length} ribs tapped`} viewBox="0 0 320 32">
        {ribs.slice(-40).map((rib, index, shown) => (
          <line
            // biome-ignore lint/suspicious/noArrayIndexKey: ribs have no name but their place
            key={index}
            x1={312 - (shown.length - 1 - index) * 8}
            x2={308 - (shown.length - 1 - index) * 8}
            y1={3}
            y2={29}
            strokeWidth={rib === 't' ? 5 : 1.5}
          />
        ))}
      </svg>
      <p role="status">
        Groups of normal ribs: <strong className="number">{groups}</strong>. {read.next}
      </p>
      <p className="field-note">
        From the other end it reads{' '}
        {read.otherWay.length === 0 ? 'the same way round' : read.otherWay.join(', ')}: the mill’s sheet tells
        which end is the first.
      </p>
      <div>
        <Button disabled={!usable} onClick={() => onCounts(read.counts)}>
          Take these counts
        </Button>
      </div>
    </fieldset>
  )
}
