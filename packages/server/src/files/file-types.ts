/** 20 MB: a photo of a phone is 3 to 8. */
export const MOST_FILE_BYTES = 20 * 1024 * 1024

/** What an attachment may be. Nothing that a browser would run; `shown` may open in the browser, the rest is saved. */
export const FILE_TYPES: Readonly<Record<string, { readonly ending: string; readonly shown: boolean }>> = {
  'image/jpeg': { ending: 'jpg', shown: true },
  'image/png': { ending: 'png', shown: true },
  'image/webp': { ending: 'webp', shown: true },
  'image/heic': { ending: 'heic', shown: false },
  'application/pdf': { ending: 'pdf', shown: false },
  'text/csv': { ending: 'csv', shown: false },
  'text/plain': { ending: 'txt', shown: false },
  'application/json': { ending: 'json', shown: false },
}
