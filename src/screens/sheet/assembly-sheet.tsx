import { grouped } from '../../engine/length/decimal-text.ts';
import { sayAfter } from '../../engine/job/say-recheck.ts';
import { otherTorques, sayTorque } from '../../engine/thread/torque.ts';
import type { AssemblyStep, Recheck } from '../../store/base/records.ts';
import type { SheetData } from './sheet-data.ts';
import { SheetFacts, WriteLine } from './sheet-table.tsx';
import { asItStands, isStepChanged } from '../assembly/step-standing.ts';
import { dayOf, momentOf, OLDER_ON_PAPER } from './sheet-words.ts';
import { capital } from '../../engine/length/say-words.ts';

/** The order it goes together in, with who did what when. */
export function AssemblySheet({ data }: { data: SheetData }) {
  if (data.steps.length === 0) return null;
  return (
    <section class="sheet-section">
      <h3>Assembly</h3>
      <ol class="sheet-steps">
        {data.steps
          .map((kept) => ({ kept, step: asItStands(kept, data) }))
          .map(({ kept, step }) => (
            <li key={step.id} class="sheet-step">
              <p class="sheet-step-text">{step.text}</p>
              {isStepChanged(kept, data) && (
                <p>
                  <strong>{OLDER_ON_PAPER}</strong>
                </p>
              )}
              <SheetFacts facts={factsOf(step, data)} />
              {step.done ? (
                <p>{`${doneBy(step.done.by)}, ${momentOf(step.done.at)}.`}</p>
              ) : (
                <>
                  {kept.done && step.wasDone && (
                    <p>{`${doneBy(step.wasDone.by)}, ${momentOf(step.wasDone.at)}, before that.`}</p>
                  )}
                  <WriteLine label="Done by, when" />
                </>
              )}
            </li>
          ))}
      </ol>
    </section>
  );
}

function factsOf(step: AssemblyStep, { parts, worksheets }: SheetData) {
  const names = step.partIds.flatMap((id) => parts.find((part) => part.id === id)?.name ?? []);
  const worksheet = worksheets.find(({ id }) => id === step.worksheetId);
  const facts: readonly (readonly [string, string | undefined])[] = [
    ['Parts', names.length > 0 ? names.join(', ') : undefined],
    ['Drawing', worksheet && `see worksheet ${worksheet.title}`],
    ['Which way round', step.orientation],
    ['Grease', step.grease],
    ['Locker', lockerOf(step)],
    ['Torque', torqueOf(step)],
    ['Cotter pin', step.cotterPin === true ? 'a new one, ends bent over' : undefined],
  ];
  return facts.flatMap(([name, value]) =>
    value === undefined || value === '' ? [] : [[name, value] as const],
  );
}

function lockerOf({ locker, cureHours }: AssemblyStep): string | undefined {
  if (locker === undefined || locker === '') return undefined;
  return cureHours === undefined ? locker : `${locker}, cures ${cureHours} h`;
}

/** The manual's figure first, as it stands there. */
function torqueOf({ torque }: AssemblyStep): string | undefined {
  if (!torque) return undefined;
  if (torque.typed === '') return 'figure not given yet';
  const others = otherTorques(torque);
  const source = torque.source === '' ? 'source not given yet' : torque.source;
  return `${sayTorque(torque)}${others.length > 0 ? ` = ${others.join(' = ')}` : ''} (${source})`;
}

/** What is looked at again, and when it was. */
export function RechecksSheet({ data: { rechecks, job } }: { data: SheetData }) {
  if (rechecks.length === 0) return null;
  return (
    <section class="sheet-section">
      <h3>Re-checks</h3>
      <ul class="sheet-steps">
        {rechecks.map((recheck) => (
          <li key={recheck.id} class="sheet-step">
            <p class="sheet-step-text">{recheck.what}</p>
            <p>{`${capital(sayAfter(afterOf(recheck, job.odometer?.unit)))}, from ${dayOf(recheck.from)}.`}</p>
            {recheck.done ? (
              <p>{doneWords(recheck.done, recheck.unit ?? job.odometer?.unit ?? 'mi')}</p>
            ) : (
              <WriteLine label="Done by, when, odometer" />
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

function afterOf({ afterDays, afterDistance, unit: own }: Recheck, unit: 'mi' | 'km' = 'mi') {
  return {
    unit: own ?? unit,
    ...(afterDays !== undefined && { days: afterDays }),
    ...(afterDistance !== undefined && { distance: afterDistance }),
  };
}

function doneBy(by: string): string {
  return by === '' ? 'Done, by whom is not named' : `Done by ${by}`;
}

function doneWords({ by, at, odometer }: NonNullable<Recheck['done']>, unit: 'mi' | 'km'): string {
  const read = odometer === undefined ? '' : `, odometer ${grouped(odometer)} ${unit}`;
  return `${doneBy(by)}, ${dayOf(at)}${read}.`;
}
