export type { Card, CardRow } from './card.ts'
export type {
  Defect,
  EnteredLimit,
  PanelFacts,
  Recorded,
  Signed,
  Signer,
  SpecimenResult,
  StepFacts,
  TemperatureLog,
  YardFacts,
} from './facts.ts'
export { isStepId, type PanelStep, panelStep, STEP_IDS, STEPS, type StepId } from './steps.ts'
