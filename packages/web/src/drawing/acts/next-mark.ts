/** The first mark of a letter with a number that none of the items has: `D1`, `D2` … */
export function nextMark(letter: string, items: readonly { readonly mark: string }[]): string {
  const taken = new Set(items.map(({ mark }) => mark))
  let number = 1
  while (taken.has(`${letter}${number}`)) number += 1
  return `${letter}${number}`
}

/** The first letter that none of the items has: `A` to `Z`, then `A1` … */
export function nextLetter(items: readonly { readonly mark: string }[]): string {
  const taken = new Set(items.map(({ mark }) => mark))
  const free = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].find((letter) => !taken.has(letter))
  return free ?? nextMark('A', items)
}
