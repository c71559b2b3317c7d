import type { Joint } from '../../fit/joint-limits.ts';
import { minus, type Length } from '../../length/length.ts';
import { show, type ShownUnit } from '../../length/show.ts';
import { sayDrillSize, sayPercent } from '../thread-insert/say-insert.ts';
import type { RouteReason } from './hole-and-pin-routes.ts';

type InsertReason = Extract<
  RouteReason,
  {
    code:
      | 'insert-not-for-this-joint'
      | 'insert-needs-a-bolt'
      | 'thread-not-known'
      | 'no-insert-made'
      | 'hole-past-insert-thread'
      | 'shank-must-pass'
      | 'closer-than-thread-play'
      | 'threads-in-shear'
      | 'faces-carry'
      | 'straight-to-tap'
      | 'drill-first'
      | 'drill-anyway'
      | 'hole-over'
      | 'too-little-thread'
      | 'ask-shank-passes'
      | 'ask-clamped-faces'
      | 'ask-metal';
  }
>;

/** Why a thread insert is in, out, or waits for an answer. */
export function sayInsertReason(reason: InsertReason, unit: ShownUnit): string {
  const size = (length: Length): string => show(length, unit);
  switch (reason.code) {
    case 'insert-not-for-this-joint':
      return `${NOT_IN_THREADS[reason.joint]} A thread insert is only for a bolt that stands still, held by its nut.`;
    case 'insert-needs-a-bolt':
      return 'A plain pin has no thread to screw into an insert. Say which thread it has if it is a bolt.';
    case 'thread-not-known':
      return `Which thread is ${reason.thread}? Pick it from the list, such as 7/16-20 UNF or M8x1.25.`;
    case 'no-insert-made':
      return `No wire insert is usually made for ${reason.thread}.`;
    case 'hole-past-insert-thread':
      return `The hole is ${size(reason.hole)}, ${size(minus(reason.hole, reason.major))} past the thread of an insert for ${reason.thread}: nothing is left to tap.`;
    case 'shank-must-pass':
      return `The plain shank has to pass this hole, and it can't pass a ${reason.thread} thread.`;
    case 'closer-than-thread-play':
      return `This joint has to be held within ${size(reason.upper)}, and in its thread a bolt can shift ${size(reason.play)}.`;
    case 'threads-in-shear':
      return `The clamped faces don't carry this joint, so the ${reason.thread} thread lies in the shear plane and takes the load.`;
    case 'faces-carry':
      return 'The faces the nut clamps carry the joint; the thread only has to clamp.';
    case 'straight-to-tap':
      return `The hole is already to size for the STI tap: ${sayPercent(reason.percent)} of thread.`;
    case 'drill-first':
      return `The hole is too small for the STI tap. After ${sayDrillSize(reason.drill)} it has ${sayPercent(reason.percent)} of thread.`;
    case 'drill-anyway':
      return `The hole is too close to the tap's least to call. Run ${sayDrillSize(reason.drill)} through anyway: ${sayPercent(reason.percent)} of thread.`;
    case 'hole-over':
      return `The hole is ${size(reason.overBy)} over what the insert wants and leaves ${sayPercent(reason.percent)} of thread. Accept that, or bush the hole.`;
    case 'too-little-thread':
      return `The hole leaves ${sayPercent(reason.percent)} of thread for an insert; under ${reason.leastPercent} % a hole is bushed (common practice).`;
    case 'ask-shank-passes':
      return `Does the plain shank have to pass this hole? It can't pass a ${reason.thread} thread.`;
    case 'ask-clamped-faces':
      return 'Which faces does the nut clamp? Only if those faces carry the joint is the thread spared the load.';
    case 'ask-metal':
      return `What is the part made of? Aluminium wants drill ${sayDrillSize(reason.aluminium)}, steel ${sayDrillSize(reason.steel)}.`;
    default:
      return reason satisfies never;
  }
}

const NOT_IN_THREADS: Readonly<Record<Exclude<Joint, 'located'>, string>> = {
  'turns-under-load': 'This pin turns under load and would wear a thread out.',
  turns: 'This pin turns and would wear a thread out.',
  slides: 'This pin slides, and a thread is no bearing.',
  pressed: 'This pin is pressed in and needs a plain bore.',
};
