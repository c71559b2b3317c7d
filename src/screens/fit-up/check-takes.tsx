import { sayGo } from '../../engine/reading/say-check.ts';
import { toolBeside } from '../../engine/reading/say-readings.ts';
import { show, type ShownUnit } from '../../engine/length/show.ts';
import { foundBy } from '../../engine/reading/check.ts';
import { hrefOf } from '../address.ts';
import { Row } from '../common/row.tsx';
import { readingFigure } from '../readings/reading-figure.ts';
import '../worksheets/input-rows.css';
import type { KnownCheck, KnownTake } from './check-data.ts';
import { CheckMark } from './check-mark.tsx';
import { timeWords } from '../common/day-words.ts';

type CheckTakesProps = { readonly known: KnownCheck; readonly unit: ShownUnit };

/** What was read in the go that counts, and every go before it with what it was found to be. */
export function CheckTakes({ known, unit }: CheckTakesProps) {
  const { takes } = known;
  const last = takes.at(-1);
  const earlier = takes.slice(0, -1).toReversed();
  return (
    <>
      {last && last.readings.length > 0 && (
        <section class="input-rows">
          <h2>Readings</h2>
          <ul>
            <li>
              <TakeRow known={known} take={last} unit={unit} isLast />
            </li>
          </ul>
        </section>
      )}
      {earlier.length > 0 && (
        <section class="input-rows">
          <h2>Earlier</h2>
          <ul>
            {earlier.map((take) => (
              <li key={take.id}>
                <TakeRow known={known} take={take} unit={unit} />
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

type TakeRowProps = CheckTakesProps & { readonly take: KnownTake; readonly isLast?: boolean };

function TakeRow({ known, take, unit, isLast = false }: TakeRowProps) {
  const { check, limits } = known;
  const { jobId, id, name, by } = check;
  const detail = (
    <>
      {take.readings.length > 0 && <Read take={take} unit={unit} />}
      {take.seenNote !== undefined && <span class="row-detail">{take.seenNote}</span>}
      <span class="row-detail">{[timeWords(take.at), ...toolsOf(take)].join(' · ')}</span>
    </>
  );
  return (
    <Row
      title={isLast ? countWords(take) : sayGo(take.result, { name, by, limits, unit })}
      detail={detail}
      {...(!isLast && { mark: <CheckMark found={foundBy(take.result)} /> })}
      {...(take.featureId !== undefined && {
        href: hrefOf({ at: 'feature', jobId, featureId: take.featureId, choosing: `check/${id}/all` }),
      })}
    />
  );
}

function Read({ take, unit }: { readonly take: KnownTake; readonly unit: ShownUnit }) {
  return (
    <span class="one-check-read">
      {take.readings.map((reading) =>
        reading.struckOut ? (
          <s key={reading.id} aria-label={`struck out ${show(reading.exact, unit)}`}>
            {readingFigure(reading, unit)}
          </s>
        ) : (
          <span key={reading.id}>{readingFigure(reading, unit)}</span>
        ),
      )}
    </span>
  );
}

function countWords({ readings }: KnownTake): string {
  const counted = readings.filter(({ struckOut }) => struckOut === undefined).length;
  const struck = readings.length - counted;
  const count = counted === 1 ? '1 reading' : `${counted} readings`;
  return struck === 0 ? count : `${count}, ${struck} struck out`;
}

function toolsOf({ readings }: KnownTake): readonly string[] {
  return [...new Set(readings.map(toolBeside))];
}
