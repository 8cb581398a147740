export { type KnownCut, knownCuts, severalStocks } from './known-optima.ts'
