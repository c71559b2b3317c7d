import { foundBy } from '../../engine/reading/check.ts';
import { sayGo, sayWanted } from '../../engine/reading/say-check.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import { VerdictBand } from '../common/verdict-band.tsx';
import { foundNow, knownChecks, type KnownCheck, type KnownTake } from '../fit-up/check-data.ts';
import { ReadingsTable } from './readings-sheet.tsx';
import type { SheetData } from './sheet-data.ts';
import { WriteLine } from './sheet-table.tsx';
import { dayOf, OLDER_ON_PAPER } from './sheet-words.ts';
import { capital } from '../../engine/length/say-words.ts';

/** Every check with its limits, where they come from, and each go at it: the one that failed as well. */
export function ChecksSheet({ data }: { data: SheetData }) {
  if (data.checks.length === 0) return null;
  return (
    <section class="sheet-section">
      <h3>Fit-up checks</h3>
      {knownChecks(data).map((known) => (
        <CheckSheet key={known.check.id} known={known} unit={data.unit} />
      ))}
    </section>
  );
}

type CheckSheetProps = { readonly known: KnownCheck; readonly unit: ShownUnit };

function CheckSheet({ known, unit }: CheckSheetProps) {
  const { check, limits, takes, older, readBefore } = known;
  const wanted = sayWanted({ by: check.by, limits, unit });
  const source = limits.source === '' || limits.source === wanted ? '' : ` (${limits.source})`;
  return (
    <section class="sheet-part">
      <h4>{check.name}</h4>
      <p>{`${capital(wanted)}${source}.`}</p>
      {check.how !== '' && <p>{check.how}</p>}
      {(older || readBefore) && (
        <p>
          <strong>{OLDER_ON_PAPER}</strong>
        </p>
      )}
      {takes.map((take, index) => (
        <TakeSheet
          key={take.id}
          known={known}
          take={take}
          name={takes.length > 1 ? `Try ${index + 1}, ${dayOf(take.at)}` : dayOf(take.at)}
          unit={unit}
        />
      ))}
    </section>
  );
}

type TakeSheetProps = CheckSheetProps & { readonly take: KnownTake; readonly name: string };

function TakeSheet({ known, take, name, unit }: TakeSheetProps) {
  return (
    <div class="sheet-take">
      <p>{name}</p>
      <TakeVerdict known={known} take={take} unit={unit} />
      {take.readings.length > 0 && <ReadingsTable readings={take.readings} unit={unit} />}
    </div>
  );
}

function TakeVerdict({ known, take, unit }: Omit<TakeSheetProps, 'name'>) {
  const { name, by } = known.check;
  const { result } = take;
  if (result.kind === 'nothing-yet')
    return <WriteLine label={by === 'by-eye' ? 'Good or no good' : 'Not read yet'} />;
  const said = sayGo(result, { name, by, limits: known.limits, unit });
  const found = foundBy(result);
  const isOfBefore = take === known.takes.at(-1) && foundNow(known) !== known.state.found;
  if (found === 'not-done' || isOfBefore) return <p>{said}</p>;
  return (
    <VerdictBand kind={found} headline={said}>
      {take.seenNote !== undefined && <p>{take.seenNote}</p>}
    </VerdictBand>
  );
}
