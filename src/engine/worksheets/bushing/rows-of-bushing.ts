import type { BushingAnswer } from '../../press/bushing.ts';
import { sayForce, sayHeatWay, sayHold, sayInterference, sayStress } from '../../press/say-bushing.ts';
import { sayLimits } from '../../fit/say-fit.ts';
import { sameLength } from '../../length/length.ts';
import { figure, show, signedFigure, type ShownUnit } from '../../length/show.ts';
import type { RowsBlock, WayBlock } from '../account.ts';

type Rows = RowsBlock['rows'];

/** How it goes in: the force on the press, and each way to drop it in that may be gone. */
export function pressItIn({ stress, heat, mostHeat, dropRoom }: BushingAnswer, unit: ShownUnit): RowsBlock {
  const force: Rows = stress?.force
    ? [
        {
          what: 'On the press, up to',
          figure: sayForce(stress.force.pressN, unit),
          more: sayHold(stress.force.holdN, unit),
        },
      ]
    : [{ what: 'On the press', figure: '?', more: 'give its length for the force' }];
  const drops = heat
    .filter(({ allowed }) => allowed)
    .map((way) => {
      const { title, detail } = sayHeatWay(way, mostHeat, unit);
      return {
        what: 'Or drop it in',
        figure: title,
        more: `${detail}, with ${show(dropRoom, unit)} to spare`,
      };
    });
  return {
    is: 'rows',
    title: 'Putting it in',
    leads: true,
    rows: [
      ...force,
      ...drops.map((row, index) => ({
        ...row,
        what: index === 0 ? row.what : `Or drop it in, ${index + 1}`,
      })),
    ],
  };
}

/** Ways to drop it in that may not be gone, with the reason. */
export function waysNotGone({ heat, mostHeat }: BushingAnswer, unit: ShownUnit): readonly WayBlock[] {
  return heat
    .filter(({ allowed }) => !allowed)
    .map((way): WayBlock => ({ is: 'way', ...sayHeatWay(way, mostHeat, unit), stands: 'out' }));
}

/** All the cuts in their order, with what they leave. */
export function cutRows(answer: BushingAnswer, unit: ShownUnit): RowsBlock {
  const { ream, reamTakes, turn, outside, inside, insideBefore, bushingWall, partWall } = answer;
  const isPlated = !sameLength(turn.upper, outside.upper);
  return {
    is: 'rows',
    title: 'Cuts',
    rows: [
      {
        what: 'Ream the bore',
        figure: ream.name === '' ? figure(ream.size, unit) : ream.name,
        more: `takes ${show(reamTakes, unit)}${partWall ? `, leaves ${show(partWall, unit)} of wall` : ''}`,
      },
      {
        what: 'Turn the bushing’s outside',
        figure: sayLimits(turn, unit),
        ...(isPlated && { more: `plated to ${sayLimits(outside, unit)}` }),
      },
      ...(insideBefore
        ? [
            {
              what: 'Its bore before pressing',
              figure: sayLimits(insideBefore, unit),
              more: 'it closes to size',
            },
          ]
        : []),
      {
        what: 'Bore it after pressing',
        figure: sayLimits(inside, unit),
        more: `leaves ${show(bushingWall, unit)} of its wall`,
      },
    ],
  };
}

/** What pressing it in does to both. */
export function pressedRows(answer: BushingAnswer, unit: ShownUnit): RowsBlock {
  const { interference, interferenceHot, interferenceCold, running, stress } = answer;
  const bedded = 'at least, surfaces bedded in';
  return {
    is: 'rows',
    title: 'Pressed in',
    rows: [
      { what: 'Interference', figure: sayInterference(interference.least, interference.greatest, unit) },
      ...(interferenceHot
        ? [{ what: 'Left when hot', figure: figure(interferenceHot, unit), more: bedded }]
        : []),
      ...(interferenceCold
        ? [{ what: 'Left when cold', figure: figure(interferenceCold, unit), more: bedded }]
        : []),
      ...(running?.hot
        ? [{ what: 'On the pin when hot', figure: signedFigure(running.hot, unit), more: 'least clearance' }]
        : []),
      ...(running?.cold
        ? [
            {
              what: 'On the pin when cold',
              figure: signedFigure(running.cold, unit),
              more: 'least clearance',
            },
          ]
        : []),
      ...(stress ? stressRows(stress, unit) : []),
    ],
  };
}

function stressRows(stress: NonNullable<BushingAnswer['stress']>, unit: ShownUnit): Rows {
  const { closes, pressureMpa, part, bushing } = stress;
  return [
    { what: 'Its bore closes by', figure: `${figure(closes.lower, unit)} to ${show(closes.upper, unit)}` },
    {
      what: 'Pressure',
      figure: `${sayStress(pressureMpa.low, unit)} to ${sayStress(pressureMpa.high, unit)}`,
    },
    { what: 'Part is pulled with', figure: sayStress(part.hoopMpa, unit) },
    { what: 'Bushing is squeezed with', figure: sayStress(bushing.equivalentMpa, unit) },
  ];
}
