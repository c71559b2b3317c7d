import { show, type ShownUnit } from '../../length/show.ts';
import type { RowsBlock, WayBlock } from '../account.ts';
import type { LeggedAnswer } from './insert-in-legs.ts';
import { sayDrillSize, sayPercent } from './say-insert.ts';
import { needsDrill } from './thread-insert.ts';

/** Other drills on hand with the thread each leaves, longer inserts with what comes off, a bush where the hole is too wide. */
export function waysOfInsert(answer: LeggedAnswer, unit: ShownUnit): readonly (WayBlock | RowsBlock)[] {
  return [
    ...(answer.hole.state === 'over' ? [bushFirst] : []),
    ...(needsDrill(answer) ? otherDrills(answer) : [drillRows(answer)]),
    ...longerInserts(answer, unit),
  ];
}

const bushFirst: WayBlock = {
  is: 'way',
  title: 'Bush the hole first',
  detail: 'then drill and tap the bush',
  stands: 'open',
};

const sayInside = (isInside: boolean) => `${isInside ? 'inside' : 'outside'} the hole’s limits`;

function otherDrills({ drill: { below, above } }: LeggedAnswer): readonly WayBlock[] {
  return [below, above].flatMap((other): readonly WayBlock[] =>
    other
      ? [
          {
            is: 'way',
            title: `Drill ${sayDrillSize(other.drill)}`,
            detail: `${sayPercent(other.percent)} of thread, ${sayInside(other.insideLimits)}`,
            stands: 'open',
          },
        ]
      : [],
  );
}

/** Where no drill goes through they are still there to be looked up. */
function drillRows({ drill }: LeggedAnswer): RowsBlock {
  return {
    is: 'rows',
    title: 'Drills for this insert',
    rows: [drill.below, { ...drill, isListed: true }, drill.above].flatMap((one) =>
      one
        ? [
            {
              what: `${sayDrillSize(one.drill)}${'isListed' in one ? ', the usual one' : ''}`,
              figure: sayPercent(one.percent),
              more: sayInside(one.insideLimits),
            },
          ]
        : [],
    ),
  };
}

/** More thread than the longest that fits: one longer, taken flush. Nothing of a blind hole, where it would have to go deeper. */
function longerInserts({ legs }: LeggedAnswer, unit: ShownUnit): readonly WayBlock[] {
  return legs.flatMap(({ lengths, chosen, blindDepth }, index): readonly WayBlock[] => {
    const longer = lengths[lengths.indexOf(chosen) + 1];
    if (!longer?.trimOff || blindDepth || chosen.trimOff) return [];
    return [
      {
        is: 'way',
        title: `${longer.times} insert${legs.length > 1 ? ` in leg ${index + 1}` : ''}`,
        detail: `${show(longer.nominal, unit)}: trim or grind ${show(longer.trimOff, unit)} off`,
        stands: 'open',
      },
    ];
  });
}
