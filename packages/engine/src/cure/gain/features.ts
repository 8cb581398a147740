import type { MixProportions } from './open-mixes.ts'

/** What the model looks at in a mix: ratios that govern strength, then amounts. In order of `FEATURES`. */
export const FEATURES = [
  'ln water / binder',
  'ln water / cement',
  'slag / binder',
  'fly ash / binder',
  'superplasticizer / binder',
  'coarse',
  'fine',
  'binder',
  'water',
] as const

/** Raw features of a mix; cement and water above 0. */
export function featuresOf(mix: MixProportions): number[] {
  const binder = mix.cement + mix.slag + mix.flyAsh
  return [
    Math.log(mix.water / binder),
    Math.log(mix.water / mix.cement),
    mix.slag / binder,
    mix.flyAsh / binder,
    mix.superplasticizer / binder,
    mix.coarse,
    mix.fine,
    binder,
    mix.water,
  ]
}

export interface FeatureScale {
  readonly mean: readonly number[]
  readonly deviation: readonly number[]
}

/** Mean and standard deviation of each feature among some mixes; 1 for a feature in which they are all alike. */
export function scaleOf(mixes: readonly (readonly number[])[]): FeatureScale {
  const mean = FEATURES.map((_, at) => mixes.reduce((sum, mix) => sum + (mix[at] ?? 0), 0) / mixes.length)
  const deviation = FEATURES.map((_, at) =>
    Math.sqrt(mixes.reduce((sum, mix) => sum + ((mix[at] ?? 0) - (mean[at] ?? 0)) ** 2, 0) / mixes.length),
  )
  return { mean, deviation: deviation.map((each) => (each > 0 ? each : 1)) }
}

export function scaled(features: readonly number[], { mean, deviation }: FeatureScale): number[] {
  return features.map((value, at) => (value - (mean[at] ?? 0)) / (deviation[at] ?? 1))
}
