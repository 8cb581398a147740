/** Thinnest wire of EN 10080 and of AS/NZS 4671, mm, from memory: nothing thinner is reinforcement. */
export const SMALLEST = 4
