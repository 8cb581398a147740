import './loggers-part.css'
import { type ReactElement, useCallback, useEffect, useState } from 'react'
import { announce, Button, Notice, Sheet, VerdictMark } from '../look/index.ts'
import { type KeyedLogger, type ListedLogger, type LoggerChange, sentenceOf } from '../record/api.ts'
import { useNow, usePerson, useSnapshot, useStore, useYardState } from '../record/index.ts'
import { AddLogger } from './add-logger.tsx'
import { KeyOnce } from './key-once.tsx'
import { loggerWords } from './logger-words.ts'
import { PanelChoice } from './panel-choice.tsx'

/** Loggers that send their readings themselves: made, moved and closed here, with the last reading of each. */
export function LoggersPart(): ReactElement {
  const { api } = useStore()
  const { role } = usePerson()
  const { size } = useSnapshot()
  const [loggers, setLoggers] = useState<readonly ListedLogger[] | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  const [keyed, setKeyed] = useState<KeyedLogger | null>(null)
  const read = useCallback(() => {
    api.loggers().then(setLoggers, (error: unknown) => setFault(sentenceOf(error)))
  }, [api])
  // Whenever the record has grown there may be readings among what is new.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the size is why it is read again
  useEffect(read, [read, size])
  const act = async (work: () => Promise<KeyedLogger>): Promise<boolean> => {
    setFault(null)
    try {
      const done = await work()
      if (done.key !== undefined) setKeyed(done)
      announce(stands(done))
      read()
      return true
    } catch (error) {
      setFault(sentenceOf(error))
      return false
    }
  }
  const change = (id: string) => (to: LoggerChange) => act(() => api.changeLogger(id, to))
  const open = loggers?.filter(({ active }) => active) ?? []
  const closed = loggers?.filter(({ active }) => !active) ?? []
  return (
    <Sheet title="Loggers" note="Boxes that send temperatures themselves, each with a key of its own.">
      <div className="stack">
        {loggers === null && fault === null ? <p role="status">Asking …</p> : null}
        {loggers !== null && open.length === 0 ? <p>None yet.</p> : null}
        {open.length === 0 ? null : (
          <ul className="loggers" aria-label="Loggers">
            {open.map((logger) => (
              <LoggerRow key={logger.id} logger={logger} onChange={change(logger.id)} />
            ))}
          </ul>
        )}
        {keyed?.key === undefined ? null : (
          <KeyOnce name={keyed.name} value={keyed.key} onDone={() => setKeyed(null)} />
        )}
        {fault === null ? null : (
          <div role="alert">
            <Notice kind="fail" title="Not done">
              {fault}
            </Notice>
          </div>
        )}
        {role === 'lead' ? <AddLogger onAdd={(logger) => act(() => api.addLogger(logger))} /> : null}
        {role === 'lead' && closed.length > 0 ? (
          <details className="explain">
            <summary>Closed: {closed.length}</summary>
            <ul className="loggers explain-body">
              {closed.map(({ id, name }) => (
                <li key={id} className="logger">
                  <strong>{name}</strong>
                  <Button onClick={() => void change(id)({ active: true })}>
                    Open again<span className="only-read"> the logger {name}</span>
                  </Button>
                </li>
              ))}
            </ul>
          </details>
        ) : null}
      </div>
    </Sheet>
  )
}

function stands({ name, panel, active }: ListedLogger): string {
  if (!active) return `Logger ${name} is closed.`
  return `Logger ${name} reads for ${panel ?? 'no panel'}.`
}

function LoggerRow({
  logger,
  onChange,
}: {
  readonly logger: ListedLogger
  readonly onChange: (change: LoggerChange) => Promise<boolean>
}): ReactElement {
  const { role } = usePerson()
  const { panels } = useYardState()
  const now = useNow()
  const { name, panel } = logger
  const poured = panel !== null && (panels.get(panel)?.cast ?? null) !== null
  const { look, text } = loggerWords(logger, { poured, now })
  return (
    <li className="logger">
      <strong>{name}</strong>
      <span>
        {panel === null
          ? 'reads for no panel'
          : `reads for ${panel}${poured ? '' : ', which is not poured yet'}`}
      </span>
      <span className={look ? 'mark-line logger-look' : 'mark-line'}>
        {look ? <VerdictMark verdict="unknown" silent /> : null}
        <span>{text}</span>
      </span>
      {role === 'viewer' ? null : <Changes logger={logger} onChange={onChange} />}
    </li>
  )
}

function Changes({
  logger: { name, panel },
  onChange,
}: {
  readonly logger: ListedLogger
  readonly onChange: (change: LoggerChange) => Promise<boolean>
}): ReactElement {
  const { role } = usePerson()
  const [to, setTo] = useState(panel ?? '')
  useEffect(() => setTo(panel ?? ''), [panel])
  const moved = to !== (panel ?? '')
  return (
    <details className="explain">
      <summary>
        {role === 'lead' ? 'Move, new key, close' : 'Move'}
        <span className="only-read">: {name}</span>
      </summary>
      <div className="explain-body">
        <form
          className="stack"
          onSubmit={(event) => {
            event.preventDefault()
            if (moved) void onChange({ panel: to === '' ? null : to })
          }}
        >
          <PanelChoice
            label={`Panel that ${name} reads for`}
            note="What it read up to leaving a panel is not taken for the next one."
            value={to}
            onPanel={setTo}
          />
          <Button look="main" type="submit" shut={!moved}>
            {moved ? 'Move it' : 'Choose another panel'}
          </Button>
        </form>
        {role === 'lead' ? (
          <div className="row">
            <Button onClick={() => void onChange({ newKey: true })}>
              New key, the old one ends<span className="only-read">: {name}</span>
            </Button>
            <Button onClick={() => void onChange({ active: false })}>
              Close<span className="only-read"> the logger {name}</span>
            </Button>
          </div>
        ) : null}
      </div>
    </details>
  )
}
