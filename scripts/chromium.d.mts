/** Path of a Chromium, or null. */
export function findChromium(): string | null
/** Path of a Chromium; installs Debian's where there is none. @throws Error saying what to do. */
export function ensureChromium(): string
