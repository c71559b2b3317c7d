import { heldPast } from '../../thread/grip-ends.ts';
import type { GripAnswer, GripQuestion, Held } from '../../thread/grip-question.ts';
import { clampNewtons, torqueNewtonMetres } from '../../thread/bolt-torque.ts';
import { sayAssumed } from '../../reading/say-assumed.ts';
import { isZero, sameLength } from '../../length/length.ts';
import { figure, show, type ShownUnit } from '../../length/show.ts';
import { sayBottoming, sayHoleEnd, sayInPlane, sayPastEnd } from '../../thread/say-grip.ts';
import { otherTorques, sayTorque, sayWorkedTorque, torqueIn } from '../../thread/torque.ts';
import type { RowsBlock } from '../account.ts';
import type { JointAnswer } from './joint.ts';
import type { JointQuestion } from './question.ts';
import { forceFigure } from './say-engagement.ts';

type Row = RowsBlock['rows'][number];

/** Grip, what lies in each plane from leg to leg, the shank wanted, and what goes past what is clamped. */
export function gripRows({ bolt }: JointAnswer, unit: ShownUnit): RowsBlock | undefined {
  if (!bolt) return undefined;
  const { asked, grip } = bolt;
  return {
    is: 'rows',
    title: 'Leg by leg',
    leads: true,
    rows: [
      { what: 'Grip', figure: show(grip.grip, unit), more: 'all that is clamped, washers counted' },
      ...grip.planes.map((plane) => ({
        what: plane.between.join(' on '),
        figure: isZero(plane.at) ? 'at its face' : show(plane.at, unit),
        more: `${plane.from === 'head' ? 'from under the head' : 'from the part’s face'}: ${sayInPlane(plane, unit)}`,
      })),
      ...shankRow(grip, unit),
      pastRow(asked, unit),
      ...onHandRows(grip, asked.held, unit),
    ],
  };
}

function shankRow({ planes, shankWanted }: GripAnswer, unit: ShownUnit): readonly Row[] {
  const { least, most, missing } = shankWanted;
  if (planes.length === 0 || isZero(least)) return [];
  return [
    {
      what: 'Plain shank wanted',
      figure: missing
        ? `past ${show(least, unit)}`
        : sameLength(least, most)
          ? show(least, unit)
          : `${figure(least, unit)} to ${show(most, unit)}`,
      more: 'past the last plane, its run-out clear of what it clamps',
    },
  ];
}

/** What the thread takes beyond the grip, before any bolt is there. */
function pastRow(q: GripQuestion, unit: ShownUnit): Row {
  const past = show(heldPast(q).most, unit);
  switch (q.held) {
    case 'nut':
      return { what: 'Past the grip', figure: past, more: 'the nut, two whole threads and the point' };
    case 'tapped':
      return { what: 'In the part', figure: past, more: 'what its thread needs, and the point' };
    case 'stud':
      return { what: 'Past the grip', figure: past, more: 'in the part, and in and past the nut' };
    default:
      return q.held satisfies never;
  }
}

/** What is known of the bolt that is there. */
function onHandRows(grip: GripAnswer, held: Held, unit: ShownUnit): readonly Row[] {
  const { nutBottoms, past, hole } = grip;
  return [
    ...(nutBottoms
      ? [
          {
            what: 'To the end of the thread',
            figure: show(nutBottoms.room, unit),
            more: sayBottoming(grip, held, unit),
          },
        ]
      : []),
    ...(past
      ? [
          {
            what: held === 'tapped' ? 'On hand, over the least' : 'On hand, past the nut',
            figure: show(past.over, unit),
            more: sayPastEnd(grip, held, unit),
          },
        ]
      : []),
    ...(hole?.room
      ? [
          {
            what: 'To the end of the hole',
            figure: show(hole.room, unit),
            more: sayHoleEnd(grip, unit, held),
          },
        ]
      : []),
  ];
}

/** Never a torque of our own: an estimate stands only beside the manual's figure. */
export function torqueRows(
  { thread, torque }: JointQuestion,
  { thread: { strength, stressAreaSquareMm } }: JointAnswer,
  unit: ShownUnit,
): RowsBlock | undefined {
  if (!torque) return undefined;
  const { manual, newtonMetres, nutFactor, isDryAssumed } = torque;
  const { major } = thread.thread;
  const clampN = clampNewtons({ torqueNewtonMetres: newtonMetres, major, nutFactor });
  const proofN = strength.proofMpa * stressAreaSquareMm;
  const byRuleNm = torqueNewtonMetres({ clampN: 0.75 * proofN, major, nutFactor });
  return {
    is: 'rows',
    title: 'Torque',
    leads: true,
    rows: [
      {
        what: 'The manual’s figure rules',
        figure: sayTorque(manual),
        more: otherTorques(manual).join(' · '),
      },
      {
        what: `Estimate of its clamp load${isDryAssumed ? `, ${sayAssumed(['dry'])}` : ''}`,
        figure: forceFigure(clampN, unit),
        more: `${((100 * clampN) / proofN).toFixed(0)} % of the bolt’s proof load`,
      },
      {
        what: 'Estimate for ¾ of proof load',
        figure: sayWorkedTorque(torqueIn(byRuleNm, 'Nm', manual.unit), manual.unit),
        more: 'only to see whether the manual’s figure was read right',
      },
    ],
  };
}
