import { steelLayerPicture, steelParts, steelPicture, steelSection } from '@castwright/documents/picture'
import { type ReactElement, useMemo, useState } from 'react'
import { Notice, Sheet } from '../../look/index.ts'
import { PictureView } from '../../panel/picture-view.tsx'
import type { LaidProps } from './laid-page.tsx'
import { SwitchRow } from './switch-row.tsx'

/** Bars layer by layer, all together, and in section. */
export function LayersPart({ drawing, plan }: LaidProps): ReactElement {
  const { steel } = plan
  const parts = useMemo(() => steelParts(steel), [steel])
  const [chosen, setChosen] = useState('all')
  const part = parts.find(({ key }) => key === chosen)
  const section = chosen === 'section-x' ? 'x' : chosen === 'section-y' ? 'y' : null
  return (
    <Sheet title="Layer by layer" note="In the order in which they are laid, from the mould up.">
      <div className="stack">
        <SwitchRow
          name="What the picture shows"
          chosen={chosen}
          onChoose={setChosen}
          choices={[
            { key: 'all', name: 'All' },
            ...parts.map(({ key, name }, index) => ({ key, name: `${index + 1}. ${name}` })),
            { key: 'section-x', name: 'Section along x' },
            { key: 'section-y', name: 'Section along y' },
          ]}
        />
        {section !== null ? (
          <Section drawing={drawing} steel={steel} along={section} />
        ) : (
          <PictureView
            layOut={(frame) =>
              part === undefined
                ? steelPicture({ drawing, steel, frame })
                : steelLayerPicture({ drawing, part, frame })
            }
          />
        )}
      </div>
    </Sheet>
  )
}

function Section({
  drawing,
  steel,
  along,
}: Pick<LaidProps, 'drawing'> & {
  readonly steel: LaidProps['plan']['steel']
  readonly along: 'x' | 'y'
}): ReactElement {
  const known = steel.placed.some(({ centreline }) => centreline !== null)
  if (!known) {
    return (
      <Notice kind="unknown" title="No section">
        cover.mould and cover.top set the heights of the bars; the drawing gives neither.
      </Notice>
    )
  }
  return (
    <PictureView
      height={320}
      layOut={(frame) => {
        const picture = steelSection({ drawing, steel, frame, along })
        return picture ?? steelPicture({ drawing, steel: { ...steel, placed: [], laps: [] }, frame })
      }}
    />
  )
}
