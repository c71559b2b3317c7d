import type { GripAnswer, Held, ShearPlane } from '../../thread/grip-question.ts';
import { absolute, isZero } from '../../length/length.ts';
import { show, type ShownUnit } from '../../length/show.ts';
import { sayBottoming, sayHoleEnd, sayPastEnd } from '../../thread/say-grip.ts';
import type { Verdict } from '../../reading/verdict.ts';
import type { VerdictBlock } from '../account.ts';
import type { JointAnswer } from './joint.ts';
import { sayEngagement } from './say-engagement.ts';

/** All that is judged, the worst of it first: of two that are as bad the engaged thread. */
export function jointVerdicts(
  { thread, bolt }: JointAnswer,
  held: Held,
  unit: ShownUnit,
): readonly VerdictBlock[] {
  const found = [
    ...(thread.engaged ? [verdict(thread.engaged.verdict.kind, sayEngagement(thread, unit))] : []),
    ...(bolt?.verdict ? gripVerdicts(bolt.grip, held, unit) : []),
  ];
  return (['no-good', 'too-close', 'good'] as const).flatMap((kind) =>
    found.filter((block) => block.kind === kind),
  );
}

/** What is wrong with the bolt on hand, one line each; where nothing is, one line of what was found good. */
function gripVerdicts(grip: GripAnswer, held: Held, unit: ShownUnit): readonly VerdictBlock[] {
  const judged = [
    { of: grip.past?.verdict, words: sayPastHead(grip, held, unit) },
    { of: grip.hole?.verdict, words: sayHoleEnd(grip, unit, held) },
    { of: grip.nutBottoms?.verdict, words: sayBottomingHead(grip, held, unit) },
    ...grip.planes.map((plane) => ({ of: plane.shank?.verdict, words: sayPlaneHead(plane, unit) })),
  ];
  const wrong = judged.flatMap(({ of, words }) =>
    of === undefined || of.kind === 'good' ? [] : [verdict(of.kind, words)],
  );
  return wrong.length > 0 ? wrong : [verdict('good', sayGoodGrip(grip, held))];
}

/** Only what was judged: a bolt whose shank nobody measured is not said to clamp. */
function sayGoodGrip({ past, nutBottoms, hole, planes }: GripAnswer, held: Held): string {
  const deeds = [
    ...(past ? ['holds'] : []),
    ...(nutBottoms ? ['clamps'] : []),
    ...(hole ? ['ends clear of its hole’s end'] : []),
    ...(planes.some(({ shank }) => shank) ? ['has shank in every plane'] : []),
  ];
  const said = deeds.join(', ').replace(/, ([^,]*)$/, ' and $1');
  return `Good: the ${held === 'stud' ? 'stud' : 'bolt'} ${said}.`;
}

function sayPlaneHead({ between: [above, below], shank }: ShearPlane, unit: ShownUnit): string {
  const where = `between ${above} and ${below}`;
  if (shank?.verdict.kind === 'too-close') return `Too close to call: shank or thread ${where}.`;
  return !shank || isZero(shank.past)
    ? `Thread lies ${where}: no plain shank.`
    : `Thread lies ${where}: shank ${show(absolute(shank.past), unit)} short.`;
}

/** Each in one short line; the figures that it stands on are among the rows. */
function sayBottomingHead(grip: GripAnswer, held: Held, unit: ShownUnit): string {
  const { nutBottoms } = grip;
  const what = held === 'tapped' ? 'bolt' : 'nut';
  if (nutBottoms?.usualThread)
    return `Its usual ${show(nutBottoms.usualThread, unit)} of thread stops the ${what} ${show(absolute(nutBottoms.room), unit)} short of clamping. Give its plain shank.`;
  if (nutBottoms?.verdict.kind !== 'too-close' || isZero(nutBottoms.runOut))
    return sayBottoming(grip, held, unit);
  return `Too close to call: the ${what} may meet the run-out before it clamps. Run a nut up by hand and give where it stops.`;
}

function sayPastHead(grip: GripAnswer, held: Held, unit: ShownUnit): string {
  const { past } = grip;
  if (held !== 'tapped' || past?.verdict.kind !== 'too-close') return sayPastEnd(grip, held, unit);
  return `Too close to call: ${show(past.over, unit)} over the least, and the point takes some.`;
}

function verdict(kind: Verdict['kind'], headline: string): VerdictBlock {
  return { is: 'verdict', kind, headline };
}
