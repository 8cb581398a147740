import type { CodeFamily } from '@castwright/engine/codes'

/** How a yard calls a size. Example: `12 mm`, in the United States `No. 5 (15.9 mm)`. */
export function sizeName({ steel }: CodeFamily, diameter: number): string {
  const size = steel.barSize({ diameter })
  const mm = `${Number(diameter.toFixed(1))} mm`
  return size.known && size.value.name.startsWith('No.') ? `${size.value.name} (${mm})` : mm
}
