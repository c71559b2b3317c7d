import type { Drill } from '../../thread/drill-series.ts';
import type { Route, RouteStep } from './hole-and-pin-routes.ts';
import type { Length } from '../../length/length.ts';
import { bendingLeft } from './rank-routes.ts';
import type { Reamer } from '../../fit/tables/reamer-sizes.ts';

/** Something that has to be at hand for a route. */
export type RouteTool =
  | { readonly tool: 'drill'; readonly drill: Drill }
  | { readonly tool: 'insert-tap'; readonly thread: string }
  | { readonly tool: 'insert-winder' }
  | { readonly tool: 'reamer'; readonly reamer: Reamer }
  /** A bore no standard reamer makes. */
  | { readonly tool: 'boring' }
  | { readonly tool: 'lathe' | 'press' | 'compound' | 'mill' };

/** How much of a route can be taken back. */
export type Undo = 'nothing-cut' | 'sleeve-comes-off' | 'renewed' | 'never';

/** One route beside the others: what it takes, what it needs, whether it can be taken back. */
export type ComparedRoute = {
  readonly kind: Route['kind'];
  readonly state: Route['state'];
  readonly why: Route['why'];
  /** Left out where it wasn't worked out. */
  readonly metal?: {
    /** From each side of the hole. */
    readonly takes: Length;
    readonly wallLeft?: Length;
    /** From the pin's diameter. */
    readonly turnPinTo?: Length;
    /** Share of the pin's strength in bending. */
    readonly bendingLeft?: number;
  };
  readonly tools: readonly RouteTool[];
  readonly undo: Undo;
};

/** Every route with the figures that tell them apart, in the order they came. */
export function compareRoutes(routes: readonly Route[]): readonly ComparedRoute[] {
  return routes.map((route) => {
    const { kind, state, why, steps, takes, wallLeft, turnsPin } = route;
    const isWorkedOut = kind === 'leave' || steps.length > 0;
    return {
      kind,
      state,
      why,
      ...(isWorkedOut && {
        metal: {
          takes,
          ...(wallLeft && { wallLeft }),
          ...(turnsPin && { turnPinTo: turnsPin.to, bendingLeft: bendingLeft(turnsPin) }),
        },
      }),
      tools: once(steps.flatMap(toolsFor)),
      undo: undoOf(route),
    };
  });
}

function undoOf({ kind, irreversibleSteps }: Route): Undo {
  if (kind === 'leave') return 'nothing-cut';
  if (kind === 'sleeve' && irreversibleSteps === 0) return 'sleeve-comes-off';
  return kind === 'larger-pin' || kind === 'plug' ? 'never' : 'renewed';
}

function toolsFor(step: RouteStep): readonly RouteTool[] {
  switch (step.do) {
    case 'drill':
      return [{ tool: 'drill', drill: step.drill }];
    case 'tap-for-insert':
      return [{ tool: 'insert-tap', thread: step.thread }];
    case 'fit-insert':
      return [{ tool: 'insert-winder' }];
    case 'ream-for-bushing':
    case 'ream-true':
      return [{ tool: 'reamer', reamer: step.reamer }];
    case 'bore-on-axis':
      return [{ tool: 'boring' }];
    case 'open-bore':
    case 'finish-bushing':
      return [step.reamer ? { tool: 'reamer', reamer: step.reamer } : { tool: 'boring' }];
    case 'press-bushing':
    case 'press-blank':
      return [{ tool: 'lathe' }, { tool: 'press' }];
    case 'bore-offset':
      return [{ tool: 'mill' }];
    case 'turn-pin':
      return [{ tool: 'lathe' }];
    case 'fit-sleeve':
      return [{ tool: 'lathe' }, { tool: 'compound' }];
    case 'new-pin':
    case 'open-mating-holes':
      return [];
    default:
      return step satisfies never;
  }
}

// Only tools without a size of their own come twice.
function once(tools: readonly RouteTool[]): readonly RouteTool[] {
  return tools.filter(
    ({ tool }, at) => tool === 'reamer' || tools.findIndex((other) => other.tool === tool) === at,
  );
}
