import { type ReactElement, useEffect, useState } from 'react'
import { useStore } from '../record/index.ts'

export interface PhotosProps {
  readonly attachments: readonly { readonly sha256: string; readonly name: string; readonly type: string }[]
}

/** Pictures of an entry, from this device or from the record. */
export function Photos({ attachments }: PhotosProps): ReactElement {
  return (
    <ul className="photos">
      {attachments.map((attachment) => (
        <li key={attachment.sha256}>
          <PhotoView {...attachment} />
        </li>
      ))}
    </ul>
  )
}

function PhotoView({ sha256, name, type }: PhotosProps['attachments'][number]): ReactElement {
  const store = useStore()
  const [address, setAddress] = useState<string | null | undefined>(undefined)
  useEffect(() => {
    let made: string | null = null
    let left = false
    void store.file(sha256).then((bytes) => {
      if (left) return
      made = bytes === null ? null : URL.createObjectURL(bytes)
      setAddress(made)
    })
    return () => {
      left = true
      if (made !== null) URL.revokeObjectURL(made)
    }
  }, [store, sha256])
  if (address === undefined) return <span className="photo-wait">Reading {name} …</span>
  if (address === null)
    return <span className="photo-wait">{name}: not on this device, and no network to get it.</span>
  if (!type.startsWith('image/')) {
    return (
      <a href={address} download={name}>
        {name}
      </a>
    )
  }
  return (
    <a href={address} target="_blank" rel="noreferrer">
      <img src={address} alt={name} />
    </a>
  )
}
