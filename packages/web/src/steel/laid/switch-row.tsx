import type { ReactElement } from 'react'
import { Button } from '../../look/index.ts'

export interface SwitchRowProps<Key extends string> {
  /** What is chosen among, for screen readers. */
  readonly name: string
  readonly choices: readonly { readonly key: Key; readonly name: string }[]
  readonly chosen: Key
  readonly onChoose: (key: Key) => void
}

/** One of several views: a row of buttons, the chosen one pressed. */
export function SwitchRow<Key extends string>({
  name,
  choices,
  chosen,
  onChoose,
}: SwitchRowProps<Key>): ReactElement {
  return (
    <fieldset className="switch-row row no-print">
      <legend className="only-read">{name}</legend>
      {choices.map((choice) => (
        <Button
          key={choice.key}
          look={choice.key === chosen ? 'main' : 'frame'}
          aria-pressed={choice.key === chosen}
          onClick={() => onChoose(choice.key)}
        >
          {choice.name}
        </Button>
      ))}
    </fieldset>
  )
}
