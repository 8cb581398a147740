import { emptyPanelFacts, type PanelFacts } from '@castwright/engine/steps'
import type { Attachment, Entry, Person, YardState } from '@castwright/record'
import { createContext, useContext, useEffect, useMemo, useState, useSyncExternalStore } from 'react'
import type { KeptEntry, KeptFile } from './database.ts'
import type { EntryDraft } from './device.ts'
import type { Nights } from './nights.ts'
import type { Planner, PlanState } from './planner.ts'
import type { RecordSnapshot, RecordStore, SignOutcome } from './record-store.ts'
import type { SyncState } from './sync.ts'

export interface RecordRoom {
  readonly store: RecordStore
  readonly planner: Planner
  readonly nights: Nights
}

export const RecordContext = createContext<RecordRoom | null>(null)

export function useRoom(): RecordRoom {
  const room = useContext(RecordContext)
  if (room === null) throw new Error('a screen of the record stands outside <RecordContext>')
  return room
}

export function useStore(): RecordStore {
  return useRoom().store
}

export function useSnapshot(): RecordSnapshot {
  const { store } = useRoom()
  return useSyncExternalStore(store.subscribe, store.snapshot)
}

/** The folded state of the yard: what is in the record and what is kept here. Rooms are shown only once it is there. */
export function useYardState(): YardState {
  const { state } = useSnapshot()
  if (state === null) throw new Error('a room was shown before the record was read')
  return state
}

/** Facts of one panel, or null where the record has no such panel. */
export function usePanel(job: string, mark: string): PanelFacts | null {
  return useYardState().panels.get(`${job}/${mark}`) ?? null
}

/** The plan of a panel by its drawing in force and its pour, computed in a worker and kept until drawing, yard or pour change. */
export function usePlan(job: string, mark: string): PlanState {
  const { planner } = useRoom()
  useSyncExternalStore(planner.subscribe, planner.version)
  const state = useYardState()
  return planner.plan(state.panels.get(`${job}/${mark}`) ?? null, state.yard)
}

/** Plans of several panels, in their order. */
export function usePlans(panels: readonly PanelFacts[]): readonly PlanState[] {
  const { planner } = useRoom()
  const version = useSyncExternalStore(planner.subscribe, planner.version)
  const { yard } = useYardState()
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new version means that answers came in
  return useMemo(() => panels.map((panel) => planner.plan(panel, yard)), [panels, planner, yard, version])
}

/** The plan of a drawing that is not in the record yet, such as one being entered. */
export function useDraftPlan(drawing: PanelFacts['drawing']): PlanState {
  const { planner } = useRoom()
  useSyncExternalStore(planner.subscribe, planner.version)
  return planner.plan({ ...NO_PANEL, drawing }, useYardState().yard)
}

const NO_PANEL = emptyPanelFacts({ job: '', mark: '' })

export interface RecordHand {
  /** Keeps an entry here and sends it when it can. Throws where nobody is signed in. */
  readonly add: (draft: EntryDraft) => Promise<Entry>
  /** The same with several: all are kept, or none. */
  readonly addAll: (drafts: readonly EntryDraft[]) => Promise<Entry[]>
  /** Keeps a photo (made smaller) or file here and gives the attachment for an entry. */
  readonly addFile: (file: Blob, name: string) => Promise<Attachment>
  /** A file's bytes, from here or from the record; null where neither has it. */
  readonly file: (sha256: string) => Promise<Blob | null>
  /** Signs a hold: draft of kind `request`, the person who signs, their PIN. */
  readonly sign: (draft: EntryDraft, person: Person, pin: string) => Promise<SignOutcome>
  /** Null until the server was asked once. */
  readonly online: boolean | null
  /** How many entries are kept here and not in the record. */
  readonly waiting: number
  readonly kept: readonly KeptEntry[]
  readonly files: readonly Omit<KeptFile, 'bytes'>[]
  readonly sync: SyncState
}

export function useRecord(): RecordHand {
  const { store } = useRoom()
  const { kept, files, sync } = useSnapshot()
  return useMemo(
    () => ({
      add: (draft) => store.add(draft),
      addAll: (drafts) => store.addAll(drafts),
      addFile: (file, name) => store.addFile(file, name),
      file: (sha256) => store.file(sha256),
      sign: (draft, person, pin) => store.sign(draft, person, pin),
      online: sync.online,
      waiting: kept.length,
      kept,
      files,
      sync,
    }),
    [store, kept, files, sync],
  )
}

/** Who is signed in on this device. Rooms are shown only to somebody. */
export function usePerson(): Person {
  const person = useSnapshot().session?.person
  if (!person) throw new Error('a room was shown with nobody signed in')
  return person
}

/** The server's time as well as this device knows it; moves on by itself. */
export function useNow(everyMs = 15_000): Date {
  const { clockOffset } = useSnapshot()
  const [device, setDevice] = useState(() => Date.now())
  useEffect(() => {
    const timer = setInterval(() => setDevice(Date.now()), everyMs)
    return () => clearInterval(timer)
  }, [everyMs])
  return useMemo(() => new Date(device - (clockOffset ?? 0)), [device, clockOffset])
}

/** Asks for the server's time as well as this device knows it, at the moment of a tap. */
export function useInstant(): () => Date {
  const { clockOffset } = useSnapshot()
  return () => new Date(Date.now() - (clockOffset ?? 0))
}
