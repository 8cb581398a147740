/** Hands a file to the browser's own saving. */
export function saveFile(bytes: Uint8Array | string, name: string, type: string): void {
  const address = URL.createObjectURL(new Blob([bytes as BlobPart], { type }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), 10_000)
}

/** A name that every file system takes. */
export function fileName(...parts: readonly string[]): string {
  return parts
    .map((part) => part.replace(/[^\p{L}\p{N}._-]+/gu, '-').replace(/^[-.]+|-+$/g, ''))
    .filter((part) => part !== '')
    .join('-')
}
