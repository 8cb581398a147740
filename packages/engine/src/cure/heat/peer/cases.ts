import { parseHeatCase } from '../heat-case.ts'
import type { HeatProblem } from '../problem.ts'

const CONCRETE = {
  conductivity: 2.2,
  heatCapacity: 2400,
  binder: 400,
  heat: 450,
  ultimate: 0.7,
  tau: 14,
  beta: 0.9,
  activation: 40_000,
  reference: 23,
}

const STEEL = { thickness: 8, conductivity: 50, heatCapacity: 3600 }
const PLY = { thickness: 18, conductivity: 0.13, heatCapacity: 900 }
const FOAM = { thickness: 50, conductivity: 0.038, heatCapacity: 30 }
const NIGHT = [
  [0, 18],
  [3, 15],
  [9, 6],
  [12, 3],
  [15, 8],
  [20, 19],
  [24, 16],
]

/** Cases of the trade and of its edges, each a file of the verb `heat`. All invented. */
const FILES: Readonly<Record<string, unknown>> = {
  'wall panel on steel, cover off at 15.5 h': {
    ...{ thickness: 180, initial: 21, concrete: CONCRETE, air: NIGHT, hours: 24, every: 1 },
    top: {
      film: 10,
      resistance: [
        [0, 0],
        [4, 0.5],
        [15.5, 0],
      ],
    },
    bottom: { film: 8, layers: [{ ...STEEL, initial: 15 }] },
  },
  'bare panel in the wind, no film below': {
    ...{ thickness: 120, initial: 18, concrete: CONCRETE, air: NIGHT, hours: 24, every: 1 },
    top: {
      film: [
        [0, 10],
        [6, 25],
        [14, 12],
      ],
    },
    bottom: { film: 0 },
  },
  'thick panel between foam': {
    ...{ thickness: 400, initial: 25, concrete: { ...CONCRETE, binder: 450 }, air: 15, hours: 72, every: 2 },
    top: { film: 8, layers: [FOAM] },
    bottom: { film: 8, layers: [PLY, FOAM] },
  },
  'heated bed, ramped and held': {
    ...{ thickness: 150, initial: 18, concrete: CONCRETE, air: 10, hours: 20, every: 0.5 },
    top: { film: 8, resistance: 0.2 },
    bottom: {
      temperature: [
        [0, 18],
        [3, 18],
        [5, 55],
        [10, 55],
        [14, 20],
        [20, 15],
      ],
      resistance: 0.01,
    },
  },
  'hot bed met at once': {
    ...{ thickness: 200, initial: 15, concrete: CONCRETE, air: 12, hours: 16, every: 0.5 },
    top: { film: 12 },
    bottom: {
      temperature: {
        steps: [
          [0, 15],
          [4, 60],
          [9, 20],
        ],
      },
    },
  },
  'quick hot binder on ply': {
    ...{ thickness: 250, initial: 28, air: 30, hours: 24, every: 1 },
    concrete: { ...CONCRETE, binder: 480, heat: 480, ultimate: 0.8, tau: 8, beta: 1.4, activation: 46_000 },
    top: { film: 9, resistance: 0.1 },
    bottom: { film: 8, layers: [PLY] },
  },
  'sun and clear sky': {
    ...{ thickness: 160, initial: 20, concrete: CONCRETE, air: NIGHT, hours: 24, every: 1 },
    top: {
      film: 12,
      sun: [
        [0, 500],
        [3, 200],
        [5, 0],
        [15, 0],
        [17, 200],
        [21, 800],
        [24, 600],
      ],
      absorptivity: 0.65,
      sky: [
        [0, 0],
        [12, -12],
        [24, 2],
      ],
      emissivity: 0.9,
    },
    bottom: { film: 8, resistance: 0.13 },
  },
  'cold concrete, slow binder, heating mat': {
    ...{
      thickness: 140,
      initial: 6,
      air: [
        [0, 2],
        [10, -5],
        [36, 1],
      ],
      hours: 36,
      every: 1,
    },
    concrete: { ...CONCRETE, tau: 25, beta: 0.6, ultimate: 0.8 },
    top: { film: 10, resistance: 0.6 },
    bottom: {
      film: 4,
      gain: {
        steps: [
          [0, 0],
          [2, 250],
          [12, 0],
        ],
      },
      layers: [STEEL],
    },
  },
  'out of steam into frost, no heat of its own': {
    ...{
      thickness: 200,
      initial: 60,
      concrete: { ...CONCRETE, binder: 0 },
      air: [
        [0, 60],
        [2, 60],
        [2, -10],
        [24, -10],
      ],
      hours: 24,
      every: 0.5,
    },
    top: { film: 25 },
    bottom: { film: 6 },
  },
  'very thick, warm': {
    ...{ thickness: 900, initial: 25, concrete: CONCRETE, air: 20, hours: 96, every: 4 },
    top: { film: 15 },
    bottom: { film: 10 },
  },
}

export interface KnownCase {
  readonly name: string
  readonly problem: HeatProblem
}

export function heatCases(): KnownCase[] {
  return Object.entries(FILES).map(([name, file]) => ({ name, problem: parseHeatCase(file).problem }))
}
