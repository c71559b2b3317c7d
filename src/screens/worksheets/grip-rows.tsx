import { PAST_SOURCE, type GripAnswer, type GripQuestion } from '../../engine/thread/bolt-grip.ts';
import { lengthToBuy } from '../../engine/thread/bolt-length.ts';
import { isZero } from '../../engine/length/length.ts';
import {
  sayBottoming,
  sayHoleEnd,
  sayLengthRange,
  sayLengthToBuy,
  sayPastEnd,
  sayPlane,
  sayWorstOfGrip,
} from '../../engine/thread/say-grip.ts';
import { figure, show, type ShownUnit } from '../../engine/length/show.ts';
import { THREAD_LENGTH_SOURCE } from '../../engine/thread/tables/bolt-threads.ts';
import type { Verdict } from '../../engine/reading/verdict.ts';
import { Row } from '../common/row.tsx';
import { VerdictMark } from '../common/verdict-band.tsx';
import { WorksheetBand } from './said-assumed.tsx';

type GripProps = { readonly grip: GripQuestion; readonly answer: GripAnswer; readonly unit: ShownUnit };

/** The length to buy, the shear planes, and what is known of the bolt on hand. */
export function GripRows({ grip, answer, unit }: GripProps) {
  const length = lengthToBuy(grip);
  const { planes, shankWanted, nutBottoms, past, hole } = answer;
  return (
    <section class="input-rows">
      <h2>{grip.held === 'stud' ? 'The stud' : 'The bolt'}</h2>
      <ul>
        {length && (
          <li>
            <Row
              title="Length to buy"
              detail={`${sayLengthRange(length, grip.held, unit).join(' ')} Grip ${show(answer.grip, unit)}.`}
              figure={sayLengthToBuy(length, unit)}
            />
          </li>
        )}
        {planes.map((plane) => (
          <Judged
            key={plane.between.join()}
            title="Shear plane"
            detail={sayPlane(plane, unit)}
            kind={plane.shank?.verdict.kind}
          />
        ))}
        {planes.length > 0 && !isZero(shankWanted.least) && (
          <li>
            <Row
              title="Plain shank wanted"
              detail="past the last plane, its run-out clear of what it clamps"
              figure={shankWords(shankWanted, unit)}
            />
          </li>
        )}
        {nutBottoms && (
          <Judged
            title="End of the thread"
            detail={sayBottoming(answer, grip.held, unit)}
            kind={nutBottoms.verdict.kind}
          />
        )}
        {past && (
          <Judged title="On hand" detail={sayPastEnd(answer, grip.held, unit)} kind={past.verdict.kind} />
        )}
        {hole && (
          <Judged
            title="End of the hole"
            detail={sayHoleEnd(answer, unit, grip.held)}
            kind={hole.verdict.kind}
          />
        )}
      </ul>
    </section>
  );
}

/** Beside a thread that is engaged enough: what is wrong with the bolt on hand. Nothing where nothing is. */
export function GripVerdict({ grip, answer, unit }: GripProps) {
  const worst = sayWorstOfGrip(answer, grip.held, unit);
  return worst ? (
    <WorksheetBand
      isSecond
      kind={worst.kind}
      headline={`${grip.held === 'stud' ? 'Stud' : 'Bolt'}: ${worst.words}`}
    />
  ) : null;
}

type JudgedProps = {
  readonly title: string;
  readonly detail: string;
  readonly kind: Verdict['kind'] | undefined;
};

function Judged({ title, detail, kind }: JudgedProps) {
  return (
    <li>
      <Row title={title} detail={detail} {...(kind && { mark: <VerdictMark kind={kind} /> })} />
    </li>
  );
}

function shankWords({ least, most, missing }: GripAnswer['shankWanted'], unit: ShownUnit): string {
  return missing ? `past ${show(least, unit)}` : `${figure(least, unit)} to ${show(most, unit)}`;
}

/** What the length to buy stands on. */
export function gripWhy({ grip, answer, unit }: GripProps) {
  return [
    {
      what: 'Length to buy',
      how: `grip ${show(answer.grip, unit)}; ${grip.held === 'tapped' ? 'whole thread in the part past the bolt’s point' : PAST_SOURCE}`,
      source: `${THREAD_LENGTH_SOURCE}; steps of 1/8 in or 5 mm, common practice, no source`,
    },
  ];
}
