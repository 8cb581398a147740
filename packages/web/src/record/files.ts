import type { Attachment } from '@castwright/record'
import type { DeviceDatabase } from './database.ts'

/** Longest side of a photo as it is kept, px: enough to read a bar's marks, small enough for a yard's network. */
export const PHOTO_SIDE = 2000
/** What the record takes at most, bytes. */
export const FILE_LIMIT = 20 * 1024 * 1024

export class FileTooLarge extends Error {
  constructor(name: string, size: number) {
    super(`${name} has ${(size / 1024 / 1024).toFixed(1)} MB; the record takes files up to 20 MB.`)
    this.name = 'FileTooLarge'
  }
}

/**
 * Keeps a file here and gives the attachment that an entry names it by. Photos are made smaller first, which also leaves
 * out the camera's own notes, place included.
 */
export async function keepFile(db: DeviceDatabase, file: Blob, name: string): Promise<Attachment> {
  const bytes = await smaller(file)
  if (bytes.size > FILE_LIMIT) throw new FileTooLarge(name, bytes.size)
  const sha256 = await sha256Of(bytes)
  const type = bytes.type === '' ? 'application/octet-stream' : bytes.type
  const attachment = {
    sha256,
    name: name.slice(0, 200) || 'file',
    type: type.slice(0, 100),
    size: bytes.size,
  }
  await db.transaction('rw', db.files, async () => {
    const known = await db.files.get(sha256)
    if (known === undefined) {
      await db.files.put({ ...attachment, bytes, state: 'waiting', tries: 0, fault: null })
    }
  })
  return attachment
}

export async function sha256Of(bytes: Blob): Promise<string> {
  const hash = await crypto.subtle.digest('SHA-256', await bytes.arrayBuffer())
  return [...new Uint8Array(hash)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}

/** A photo with its longest side at `PHOTO_SIDE`; anything that is no picture the browser can draw stays as it is. */
async function smaller(file: Blob): Promise<Blob> {
  if (!file.type.startsWith('image/') || file.type === 'image/svg+xml') return file
  if (typeof createImageBitmap !== 'function' || typeof OffscreenCanvas !== 'function') return file
  let picture: ImageBitmap
  try {
    picture = await createImageBitmap(file, { imageOrientation: 'from-image' })
  } catch {
    return file // a format that this browser cannot draw: kept as it came
  }
  const scale = Math.min(1, PHOTO_SIDE / Math.max(picture.width, picture.height))
  const [width, height] = [Math.round(picture.width * scale), Math.round(picture.height * scale)]
  const resized =
    scale < 1
      ? await createImageBitmap(picture, { resizeWidth: width, resizeHeight: height, resizeQuality: 'high' })
      : picture
  const canvas = new OffscreenCanvas(width, height)
  canvas.getContext('2d')?.drawImage(resized, 0, 0)
  const drawn = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.82 })
  picture.close()
  if (resized !== picture) resized.close()
  return drawn
}
