import { createRootRoute, createRoute, createRouter, lazyRouteComponent } from '@tanstack/react-router'
import { NotFound, RoomFault, RoomLoading } from './faults.tsx'
import { Gate } from './gate.tsx'
import { Outer } from './outer.tsx'

const root = createRootRoute({ component: Outer, notFoundComponent: NotFound })

/** All that is read from the record stands behind the sign-in. */
const rooms = createRoute({ getParentRoute: () => root, id: 'rooms', component: Gate })

const day = createRoute({
  getParentRoute: () => rooms,
  path: '/',
  component: lazyRouteComponent(() => import('../day/day-screen.tsx'), 'DayScreen'),
})

const panels = createRoute({
  getParentRoute: () => rooms,
  path: '/panels',
  component: lazyRouteComponent(() => import('../panels/panels-screen.tsx'), 'PanelsScreen'),
})

const panel = createRoute({
  getParentRoute: () => rooms,
  path: '/panel/$job/$mark',
  /** `step`: whose card is open; the first step that is not done where it is absent. */
  validateSearch: (search: Record<string, unknown>): { step?: string } =>
    typeof search.step === 'string' ? { step: search.step } : {},
  component: lazyRouteComponent(() => import('../panel/panel-screen.tsx'), 'PanelScreen'),
})

const lifts = createRoute({
  getParentRoute: () => rooms,
  path: '/lifts',
  component: lazyRouteComponent(() => import('../lifts/lifts-screen.tsx'), 'LiftsScreen'),
})

const lift = createRoute({
  getParentRoute: () => rooms,
  path: '/lifts/$job/$mark',
  component: lazyRouteComponent(() => import('../lifts/lift-screen.tsx'), 'LiftScreen'),
})

const cuts = createRoute({
  getParentRoute: () => rooms,
  path: '/steel',
  /** `plan`: the plan at the shear that a cutting sheet's code leads to; it is shown first. */
  validateSearch: (search: Record<string, unknown>): { plan?: string } =>
    typeof search.plan === 'string' ? { plan: search.plan } : {},
  component: lazyRouteComponent(() => import('../steel/cut/cut-page.tsx'), 'CutPage'),
})

const steelIn = createRoute({
  getParentRoute: () => rooms,
  path: '/steel/in',
  component: lazyRouteComponent(() => import('../steel/in/in-page.tsx'), 'InPage'),
})

const bends = createRoute({
  getParentRoute: () => rooms,
  path: '/steel/bend',
  component: lazyRouteComponent(() => import('../steel/bend/bend-page.tsx'), 'BendPage'),
})

const barLists = createRoute({
  getParentRoute: () => rooms,
  path: '/steel/list',
  component: lazyRouteComponent(() => import('../steel/list/list-page.tsx'), 'ListPage'),
})

const laid = createRoute({
  getParentRoute: () => rooms,
  path: '/steel/laid',
  /** `panel`: job and mark with a slash between; the first with steel where it is absent. */
  validateSearch: (search: Record<string, unknown>): { panel?: string } =>
    typeof search.panel === 'string' ? { panel: search.panel } : {},
  component: lazyRouteComponent(() => import('../steel/laid/laid-page.tsx'), 'LaidPage'),
})

const pours = createRoute({
  getParentRoute: () => rooms,
  path: '/pours',
  component: lazyRouteComponent(() => import('../pours/pours-screen.tsx'), 'PoursScreen'),
})

const pour = createRoute({
  getParentRoute: () => rooms,
  path: '/pours/$job/$mark',
  component: lazyRouteComponent(() => import('../pours/pour-screen.tsx'), 'PourScreen'),
})

const strength = createRoute({
  getParentRoute: () => rooms,
  path: '/strength',
  component: lazyRouteComponent(() => import('../strength/strength-screen.tsx'), 'StrengthScreen'),
})

const strengthSpecimens = createRoute({
  getParentRoute: () => rooms,
  path: '/strength/specimens',
  component: lazyRouteComponent(() => import('../strength/specimens-screen.tsx'), 'SpecimensScreen'),
})

const strengthResults = createRoute({
  getParentRoute: () => rooms,
  path: '/strength/results',
  component: lazyRouteComponent(() => import('../strength/results-screen.tsx'), 'ResultsScreen'),
})

const panelStrength = createRoute({
  getParentRoute: () => rooms,
  path: '/strength/$job/$mark',
  component: lazyRouteComponent(() => import('../strength/panel-strength-screen.tsx'), 'PanelStrengthScreen'),
})

const newDrawing = createRoute({
  getParentRoute: () => rooms,
  path: '/drawing/new',
  component: lazyRouteComponent(() => import('../drawing/drawing-screen.tsx'), 'DrawingScreen'),
})

const reviseDrawing = createRoute({
  getParentRoute: () => rooms,
  path: '/drawing/$job/$mark',
  component: lazyRouteComponent(() => import('../drawing/drawing-screen.tsx'), 'DrawingScreen'),
})

const proof = createRoute({
  getParentRoute: () => rooms,
  path: '/proof',
  component: lazyRouteComponent(() => import('../proof/proof-screen.tsx'), 'ProofScreen'),
})

const yard = createRoute({
  getParentRoute: () => rooms,
  path: '/yard',
  component: lazyRouteComponent(() => import('../yard/yard-screen.tsx'), 'YardScreen'),
})

const weather = createRoute({
  getParentRoute: () => rooms,
  path: '/weather',
  component: lazyRouteComponent(() => import('../weather/weather-screen.tsx'), 'WeatherScreen'),
})

/** Needs no server, no sign-in and no record: a stranger checks a passport here. */
const verify = createRoute({
  getParentRoute: () => root,
  path: '/verify',
  component: lazyRouteComponent(() => import('../proof/verify-screen.tsx'), 'VerifyScreen'),
})

export const router = createRouter({
  routeTree: root.addChildren([
    rooms.addChildren([
      day,
      panels,
      panel,
      cuts,
      steelIn,
      bends,
      laid,
      barLists,
      lifts,
      lift,
      newDrawing,
      reviseDrawing,
      proof,
      yard,
      weather,
      pours,
      pour,
      strength,
      strengthResults,
      strengthSpecimens,
      panelStrength,
    ]),
    verify,
  ]),
  defaultPendingComponent: RoomLoading,
  defaultErrorComponent: RoomFault,
  defaultPreload: 'intent',
  scrollRestoration: true,
})

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router
  }
}
