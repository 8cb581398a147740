export { isStepId, type PanelStep, panelStep, STEP_IDS, STEPS, type StepId } from './steps.ts'
