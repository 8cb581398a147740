import { describe, expect, it } from 'vitest'
import { faceFiles, faceRuns } from './face.ts'
import { Paper } from './paper.ts'
import { unpackedFont } from './woff.ts'

const MADE = '2026-05-12T09:00:00.000Z'

async function sample(rows: number): Promise<Uint8Array> {
  const paper = new Paper({ title: 'Sample', size: 'a4', made: MADE, foot: 'W1, drawing A' })
  paper.heading('Sample', 1)
  paper.cells([
    ['Mass', '6.75 t'],
    ['Size', '6.0 × 3.0 m'],
  ])
  paper.table(
    [
      { head: 'Mark', share: 1 },
      { head: 'Length, mm', share: 1, align: 'right' },
    ],
    Array.from({ length: rows }, (_, index) => [`T${index + 1}`, String(1000 + index)]),
  )
  paper.framed('Nobody under the panel.', 'The lead decides.')
  paper.signatures(['Lead', 'Engineer'])
  return paper.finish()
}

describe('a sheet of paper', () => {
  it('is tagged PDF with a title and a language', async () => {
    const text = Buffer.from(await sample(3)).toString('latin1')
    expect(text.startsWith('%PDF-1.7')).toBe(true)
    expect(text).toContain('/MarkInfo')
    expect(text).toContain('/StructTreeRoot')
    expect(text).toContain('pdfuaid')
  })

  it('is the same to the byte when made again', async () => {
    expect(Buffer.from(await sample(3)).equals(Buffer.from(await sample(3)))).toBe(true)
  })

  it('breaks a long table into pages', async () => {
    const pages = (bytes: Uint8Array): number =>
      (
        Buffer.from(bytes)
          .toString('latin1')
          .match(/\/Type \/Page\b/g) ?? []
      ).length
    expect(pages(await sample(3))).toBe(1)
    expect(pages(await sample(120))).toBeGreaterThan(2)
  })
})

describe('faces', () => {
  it('keeps letters of other alphabets of Europe and names signs that no face has', () => {
    expect(faceRuns('Łódź', false).map((run) => run.face)).toContain('regular-ext')
    expect(faceRuns('日', true)).toEqual([{ face: 'bold', text: '[U+65E5]' }])
  })

  it('writes out what formulas need: Greek letters, roots and powers', () => {
    const said = (text: string): string =>
      faceRuns(text, false)
        .map((run) => run.text)
        .join('')
    expect(said('σ = 6 m / t²')).toBe('sigma = 6 m / t²')
    expect(said('√(L² − r²) / 10⁶')).toBe('root (L² − r²) / 10^6')
    expect(said('ΣR 10⁻¹²')).toBe('sum R 10^-12')
    expect(said('αβγδεηθλμνπρστφψωΔΣ∫')).not.toContain('U+')
  })
})

describe('an unpacked font', () => {
  it('has its tables one after the other, each as long as its entry says', () => {
    for (const bytes of faceFiles().values()) {
      const count = bytes.readUInt16BE(4)
      const tags: string[] = []
      let end = 12 + 16 * count
      for (let at = 12; at < 12 + 16 * count; at += 16) {
        tags.push(bytes.toString('latin1', at, at + 4))
        expect(bytes.readUInt32BE(at + 8)).toBe(end)
        end += Math.ceil(bytes.readUInt32BE(at + 12) / 4) * 4
      }
      expect(end).toBe(bytes.length)
      expect(tags).toEqual(expect.arrayContaining(['cmap', 'glyf', 'head', 'hmtx', 'loca', 'maxp']))
    }
  })

  it('refuses what is no font', () => {
    expect(() => unpackedFont(Buffer.from('nothing of the kind'))).toThrow(/expected a WOFF file/)
  })
})
