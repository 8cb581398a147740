import {
  appendLeaf,
  canonicalBytes,
  checkChain,
  type Flag,
  leafHash,
  rootOfFrontier,
  type StoredEntry,
  type TreeNode,
  toHex,
} from '@castwright/record'

export interface DeviceSummary {
  readonly id: string
  readonly entries: number
  readonly lastSeen: string
  readonly lastPerson: string
}

/** What the log on this device comes to. */
export interface LogCheck {
  readonly size: number
  /** Root of the Merkle tree over the entries that are here, hex. */
  readonly root: string
  readonly devices: readonly DeviceSummary[]
  /** Entries whose device chain does not carry the hash of the one before. */
  readonly broken: readonly Flag[]
}

/** Hashes every entry that is here into the tree of RFC 9162 and follows each device's chain. */
export class LogChecker {
  #frontier: readonly TreeNode[] = []
  #size = 0
  readonly #entries: StoredEntry[] = []
  readonly #devices = new Map<string, DeviceSummary>()

  get size(): number {
    return this.#size
  }

  add(entries: readonly StoredEntry[]): void {
    for (const entry of entries) {
      this.#frontier = appendLeaf(this.#frontier, leafHash(canonicalBytes(entry))).frontier
      this.#size += 1
      this.#entries.push(entry)
      const before = this.#devices.get(entry.device.id)
      const later = before === undefined || entry.seen >= before.lastSeen
      this.#devices.set(entry.device.id, {
        id: entry.device.id,
        entries: (before?.entries ?? 0) + 1,
        lastSeen: later ? entry.seen : before.lastSeen,
        lastPerson: later ? entry.person.name : before.lastPerson,
      })
    }
  }

  result(): LogCheck {
    return {
      size: this.#size,
      root: toHex(rootOfFrontier(this.#frontier)),
      devices: [...this.#devices.values()].sort((a, b) => (a.lastSeen < b.lastSeen ? 1 : -1)),
      broken: checkChain(this.#entries),
    }
  }
}
