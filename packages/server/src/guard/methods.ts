export interface ListedRoute {
  readonly method: string
  /** As in the document: `/api/files/{sha256}`. */
  readonly path: string
}

/** The methods that an address takes by the listed routes; empty where there is no such address. */
export function methodsAt(address: string, routes: readonly ListedRoute[]): string[] {
  const methods = routes.filter(({ path }) => fits(address, path)).map(({ method }) => method.toUpperCase())
  return [...new Set(methods)].sort()
}

function fits(address: string, path: string): boolean {
  const found = address.split('/')
  const wanted = path.split('/')
  return (
    found.length === wanted.length &&
    wanted.every((part, i) => (part.startsWith('{') ? found[i] !== '' : part === found[i]))
  )
}
