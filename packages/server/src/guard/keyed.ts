/**
 * The one address that a device opens with a key of its own. It reads no cookie: who is signed in counts for nothing there, and since no browser adds
 * the key by itself, another site cannot use it in anybody's name.
 */
export const KEYED = 'POST /api/readings'
