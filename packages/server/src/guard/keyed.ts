const ADDRESSES: ReadonlySet<string> = new Set(['POST /api/readings', 'POST /api/weather'])

/**
 * The addresses that a device opens with a key of its own. They read no cookie: who is signed in counts for nothing there, and since no browser adds
 * the key by itself, another site cannot use them in anybody's name.
 */
export function isKeyed(method: string, path: string): boolean {
  return ADDRESSES.has(`${method} ${path}`)
}
