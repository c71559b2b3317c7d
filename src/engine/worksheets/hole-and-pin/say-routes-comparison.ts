import { tapName } from '../../thread/tap-name.ts';
import type { ComparedRoute, RouteTool } from './route-comparison.ts';
import { isMore, zero } from '../../length/length.ts';
import { sayDrillSize } from '../thread-insert/say-insert.ts';
import { ROUTE_NAMES } from './say-routes.ts';
import { sayShare } from './say-routes-more.ts';
import { show, type ShownUnit } from '../../length/show.ts';
import { capital } from '../../length/say-words.ts';

export type SaidComparison = {
  readonly title: string;
  readonly restores: string;
  readonly metal: string;
  readonly tools: string;
  readonly undo: string;
  readonly goesWrong: string;
};

/** One route's line of the comparison, in a fitter's words. */
export function sayComparison(route: ComparedRoute, unit: ShownUnit): SaidComparison {
  const { restores, goesWrong } = WORDS[route.kind];
  return {
    title: ROUTE_NAMES[route.kind],
    restores,
    metal: sayMetal(route, unit),
    tools: sayTools(route),
    undo: sayUndo(route),
    goesWrong,
  };
}

type Kind = ComparedRoute['kind'];

// What each restores and where it most often fails: common practice, no source.
const WORDS: Readonly<Record<Kind, { readonly restores: string; readonly goesWrong: string }>> = {
  leave: {
    restores: 'Nothing',
    goesWrong: 'The wear goes on, and nobody looks again.',
  },
  'thread-insert': {
    restores: 'A good thread that holds the bolt',
    goesWrong: 'The tap starts crooked, and the bolt stands crooked for good.',
  },
  'larger-pin': {
    restores: 'The fit, on a new size',
    goesWrong: 'The bore is cut to the pin’s name before its shank is measured.',
  },
  bushing: {
    restores: 'The hole’s size and place, for the pin that is there',
    goesWrong: 'Its bore closes when it is pressed in: finish it after, not before.',
  },
  sleeve: {
    restores: 'The fit, by the pin; the hole is kept',
    goesWrong: 'Oil is left under the sleeve, the bond lets go, and it turns on the pin.',
  },
  'offset-bushing': {
    restores: 'The hole’s place and size',
    goesWrong: 'It turns in the part, and the hole wanders: lock it.',
  },
  plug: {
    restores: 'A new hole where it belongs',
    goesWrong: 'Welding heat warps, softens or cracks the part.',
  },
};

function sayMetal({ kind, metal }: ComparedRoute, unit: ShownUnit): string {
  if (!metal) return kind === 'plug' ? 'No figures: named only' : 'Not worked out';
  const { takes, wallLeft, turnPinTo, bendingLeft } = metal;
  const taken = isMore(takes, zero) ? `Takes ${show(takes, unit)} each side` : 'Takes none from the part';
  return [
    taken,
    ...(turnPinTo
      ? [
          `pin down to ${show(turnPinTo, unit)}${bendingLeft === undefined ? '' : `, ${sayShare(bendingLeft)} of its bending strength`}`,
        ]
      : []),
    wallLeft ? sayWall(wallLeft, unit) : 'wall not measured',
  ].join('; ');
}

function sayWall(wall: NonNullable<ComparedRoute['metal']>['takes'], unit: ShownUnit): string {
  return isMore(wall, zero) ? `wall left ${show(wall, unit)}` : 'no wall left';
}

function sayTools({ kind, tools }: ComparedRoute): string {
  if (kind === 'leave') return 'None';
  if (kind === 'plug') return 'Welder or press, and a mill';
  const words = tools.map(toolWords);
  return words.length === 0 ? 'Not worked out' : capital(words.join(', '));
}

function toolWords(tool: RouteTool): string {
  switch (tool.tool) {
    case 'drill':
      return `drill ${sayDrillSize(tool.drill)}`;
    case 'insert-tap':
      return tapName(tool.thread, 'insert');
    case 'insert-winder':
      return 'insert winder';
    case 'reamer':
      return `reamer ${tool.reamer.name}`;
    case 'boring':
      return 'boring head or adjustable reamer';
    case 'lathe':
      return 'lathe';
    case 'press':
      return 'press';
    case 'compound':
      return 'retaining compound';
    case 'mill':
      return 'mill with a boring head';
    default:
      return tool satisfies never;
  }
}

function sayUndo({ kind, undo }: ComparedRoute): string {
  switch (undo) {
    case 'nothing-cut':
      return 'Yes, nothing is cut';
    case 'sleeve-comes-off':
      return 'Yes: heat, and the sleeve comes off';
    case 'renewed':
      return RENEWED[kind] ?? 'No';
    case 'never':
      return 'No, the metal is gone';
    default:
      return undo satisfies never;
  }
}

const RENEWED: Partial<Record<Kind, string>> = {
  'thread-insert': 'No, but the insert can be renewed',
  bushing: 'No, but the bushing can be renewed',
  'offset-bushing': 'No, but the bushing can be renewed',
  sleeve: 'No, but the sleeve can be renewed',
};
