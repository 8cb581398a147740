/** Runs work while no other tab of this device runs work of the same name. */
export type Lock = <T>(name: string, work: () => Promise<T>) => Promise<T>

/** Web Locks; where the browser has none, tabs take turns through the database alone. */
export const browserLock: Lock = (name, work) =>
  'locks' in navigator ? navigator.locks.request(`castwright-${name}`, work) : work()
