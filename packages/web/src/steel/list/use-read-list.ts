import {
  type BarList,
  type BarListMap,
  barsOf,
  EMPTY_MAP,
  readTable,
  type Table,
} from '@castwright/documents/bar-list'
import { codeFamily, type FamilyId } from '@castwright/engine/codes'
import { InputError } from '@castwright/engine/working'
import { useCallback, useMemo, useState } from 'react'
import { keepMap, readKeptMap } from './kept-map.ts'

/** A file as it was chosen. */
interface Chosen {
  /** Rises with every file and sheet that is read. */
  readonly id: number
  readonly name: string
  readonly bytes: Uint8Array
  readonly table: Table
}

export interface ReadList {
  /** Another one for every file and sheet that is read. */
  readonly id: number
  readonly table: Table | null
  /** Every row checked; null while there is no file, or it is none that can be read. */
  readonly list: BarList | null
  readonly map: BarListMap
  /** Why the file was not read, a line each; null where it was. */
  readonly faults: readonly string[] | null
  readonly busy: boolean
  /** Whose rows are meant; null where that is not said. */
  readonly panel: string | null
  /** Reads another file, or another sheet of the same. */
  readonly take: (file: File) => void
  readonly takeSheet: (sheet: string) => void
  readonly setMap: (map: BarListMap) => void
  readonly setPanel: (panel: string | null) => void
}

/** A bar list that was chosen on this device, read and checked here: nothing leaves it. */
export function useReadList(family: FamilyId): ReadList {
  const [chosen, setChosen] = useState<Chosen | null>(null)
  const [map, changeMap] = useState<BarListMap>(EMPTY_MAP)
  const [panel, setPanel] = useState<string | null>(null)
  const [faults, setFaults] = useState<readonly string[] | null>(null)
  const [busy, setBusy] = useState(false)
  const read = useCallback(async (name: string, bytesOf: () => Promise<Uint8Array>, sheet?: string) => {
    setBusy(true)
    setFaults(null)
    try {
      const bytes = await bytesOf()
      const table = await readTable({ bytes, name, sheet })
      setChosen((before) => ({ id: (before?.id ?? 0) + 1, name, bytes, table }))
      changeMap(readKeptMap(localStorage, table) ?? EMPTY_MAP)
      setPanel(null)
    } catch (error) {
      setChosen(null)
      setFaults(
        error instanceof InputError
          ? error.message.split('\n')
          : [error instanceof Error ? error.message : String(error)],
      )
    } finally {
      setBusy(false)
    }
  }, [])
  const list = useMemo(
    () =>
      chosen === null
        ? null
        : barsOf({
            table: chosen.table,
            rules: codeFamily(family).steel,
            map,
            panel: panel ?? undefined,
          }),
    [chosen, family, map, panel],
  )
  return {
    id: chosen?.id ?? 0,
    table: chosen?.table ?? null,
    list,
    map,
    faults,
    busy,
    panel,
    take: useCallback(
      (file) => void read(file.name, async () => new Uint8Array(await file.arrayBuffer())),
      [read],
    ),
    takeSheet: useCallback(
      (sheet) => {
        if (chosen !== null) void read(chosen.name, async () => chosen.bytes, sheet)
      },
      [chosen, read],
    ),
    setMap: useCallback(
      (next) => {
        changeMap(next)
        if (chosen !== null) keepMap(localStorage, chosen.table, next)
      },
      [chosen],
    ),
    setPanel,
  }
}
