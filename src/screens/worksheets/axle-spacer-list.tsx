import { isZero } from '../../engine/length/length.ts';
import {
  inWorkOrder,
  type LineUpAnswer,
  type LineUpQuestion,
  type Spacer,
} from '../../engine/worksheets/axle-line-up/line-up.ts';
import type { Give } from '../../engine/worksheets/axle-line-up/line-up-gives.ts';
import {
  NOTHING_GIVES,
  sayDeed,
  sayGive,
  sayGivesStrength,
} from '../../engine/worksheets/axle-line-up/say-line-up.ts';
import { spacerLetter, spacerName } from '../../engine/worksheets/axle-line-up/say-line-up-names.ts';
import { figure, showBand, type ShownUnit } from '../../engine/length/show.ts';
import { settlerSaid } from './axle-settler.ts';
import type { WorksheetData } from './worksheet-data.ts';
import './axle-spacer-list.css';

type SpacerListProps = {
  readonly data: WorksheetData;
  readonly question: LineUpQuestion;
  readonly answer: LineUpAnswer;
};

/** The lengths of all spacers in the order of work, large enough to be read from the lathe, each with what to do about it. */
export function AxleSpacerList({ data, question, answer }: SpacerListProps) {
  return (
    <ol>
      {inWorkOrder(answer).map((spacer) => (
        <li key={spacer.name} class="axle-spacer">
          <SpacerLine data={data} question={question} spacer={spacer} />
        </li>
      ))}
    </ol>
  );
}

function SpacerLine({
  data,
  question,
  spacer,
}: {
  data: WorksheetData;
  question: LineUpQuestion;
  spacer: Spacer;
}) {
  const { unit } = data;
  const letter = spacerLetter(spacer.name, question.layout);
  const { act, more } = sayDeed(spacer, unit);
  const { halfWidth } = spacer.band;
  const isLast = spacer.deed.kind === 'last';
  const size = isLast ? '—' : figure(spacer.fitted, unit);
  return (
    <>
      <p class="axle-spacer-name">
        <span>
          {letter !== '' && <span class="axle-spacer-letter">{`${letter} `}</span>}
          {spacerName(spacer.name, question)}
        </span>
        {!isZero(halfWidth) && <small>{showBand(halfWidth, unit)}</small>}
      </p>
      <p class="axle-spacer-size">
        <span class="axle-spacer-figure" data-long={size.length > 5}>
          {size}
          {!isLast && <small> {unit}</small>}
        </span>
        <span class="axle-spacer-act">{act}</span>
      </p>
      {more !== '' && <p class="axle-spacer-more">{more}</p>}
      {spacer.deed.kind === 'too-close' && (
        <p class="axle-spacer-more">{settlerSaid(data, question, spacer)}</p>
      )}
    </>
  );
}

/** What could give, one line a size, the plainest first. */
export function AxleGives({
  title,
  gives,
  unit,
}: {
  title: string;
  gives: readonly Give[];
  unit: ShownUnit;
}) {
  const strength = sayGivesStrength(gives);
  return (
    <section class="axle-gives">
      <h2>{title}</h2>
      {gives.length === 0 ? (
        <p>{NOTHING_GIVES}</p>
      ) : (
        <ul>
          {gives.map((give) => (
            <li key={give.of}>{sayGive(give, unit)}</li>
          ))}
        </ul>
      )}
      {strength !== '' && <p>{strength}</p>}
    </section>
  );
}
