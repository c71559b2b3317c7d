import { useState } from 'preact/hooks';
import type { DistanceUnit } from '../../engine/job/recheck-due.ts';
import { sayAfter, sayRecheckDue } from '../../engine/job/say-recheck.ts';
import { usualRechecks, type UsualRecheck } from '../../engine/job/tables/usual-rechecks.ts';
import { timeToKeep } from '../../store/base/clock.ts';
import { addRecheck, changeRecheck, removeRecheck, type RecheckChanges } from '../../store/kept/rechecks.ts';
import type { Job, Recheck } from '../../store/base/records.ts';
import { go, goInstead, hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { KeptField } from '../common/kept-field.tsx';
import { NotHere } from '../common/not-here.tsx';
import { PadScreen } from '../common/pad-screen.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { TextField } from '../common/text-field.tsx';
import { useTextDraft } from '../common/use-draft.ts';
import { NumberEntry } from '../worksheets/number-entry.tsx';
import { dayWords, timeWords } from '../common/day-words.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { againWords } from './step-words.ts';
import { DistanceUnits } from './odometer-screen.tsx';
import { dueNow, startIn, unitOf } from './recheck-data.ts';
import type { Assembly } from './use-assembly.ts';

const MOST_DAYS = 3650;
const MOST_DISTANCE = 1_000_000;

/** A new re-check: one of the usual ones, or one's own words. */
export function NewRecheckScreen({ assembly }: { assembly: Assembly }) {
  const { job, rechecks } = assembly;
  const unit = job.odometer?.unit ?? 'mi';
  const { what, add, trouble } = useNewRecheck(job, unit);
  const isOpen = (usual: UsualRecheck) =>
    !rechecks.some(({ what: words, done }) => words === usual.what && !done);
  return (
    <Page
      title="New re-check"
      subtitle={job.name}
      back={{ href: hrefOf({ at: 'assembly', jobId: job.id }), to: 'the assembly' }}
      foot={
        <Button kind="main" onPress={() => add(undefined)}>
          Add the re-check
        </Button>
      }
    >
      <TextField
        label="What is looked at again"
        hint="Wheel nuts, say"
        text={what.text}
        onText={what.change}
      />
      <Trouble>{trouble}</Trouble>
      <UsualOnes usual={usualRechecks.filter(isOpen)} unit={unit} onAdd={add} />
    </Page>
  );
}

function useNewRecheck(job: Job, unit: DistanceUnit) {
  const store = useStore();
  const what = useTextDraft(`assembly/${job.id}/rechecks/new/what`);
  const { trouble, told, say } = useTold();
  const here = { at: 'assembly', jobId: job.id } as const;
  const add = async (usual: UsualRecheck | undefined) => {
    const words = usual?.what ?? what.text.trim();
    if (words === '') return say('Say what is to be looked at again.');
    const recheck = {
      jobId: job.id,
      what: words,
      unit,
      ...(usual?.days !== undefined && { afterDays: usual.days }),
      ...(usual?.distance && { afterDistance: usual.distance[unit] }),
    };
    return told(addRecheck(store, recheck), ({ id }) => {
      if (usual) return goInstead(here);
      what.clear();
      return goInstead({ ...here, field: `rechecks/${id}` });
    });
  };
  return { what, add, trouble };
}

type UsualOnesProps = {
  readonly usual: readonly UsualRecheck[];
  readonly unit: DistanceUnit;
  readonly onAdd: (usual: UsualRecheck) => unknown;
};

function UsualOnes({ usual, unit, onAdd }: UsualOnesProps) {
  if (usual.length === 0) return null;
  return (
    <section class="assembly-section" aria-label="Usual ones">
      <h2>Usual ones</h2>
      <ul>
        {usual.map((recheck) => (
          <li key={recheck.what}>
            <Row
              onPress={() => onAdd(recheck)}
              title={`${recheck.what}: ${usualAfter(recheck, unit)}`}
              detail={recheck.source}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}

function usualAfter({ days, distance }: UsualRecheck, unit: DistanceUnit): string {
  return sayAfter({
    unit,
    ...(days !== undefined && { days }),
    ...(distance && { distance: distance[unit] }),
  });
}

type RecheckScreenProps = {
  readonly assembly: Assembly;
  readonly recheckId: string;
  /** `days` or `distance` while that is typed. */
  readonly asked: string;
};

export function RecheckScreen({ assembly, recheckId, asked }: RecheckScreenProps) {
  const recheck = assembly.rechecks.find(({ id }) => id === recheckId);
  if (!recheck) return <NotHere what="re-check" />;
  if (asked === 'days' || asked === 'distance')
    return <AfterScreen job={assembly.job} recheck={recheck} asked={asked} />;
  return <RecheckForm key={recheck.id} job={assembly.job} recheck={recheck} />;
}

function RecheckForm({ job, recheck }: { job: Job; recheck: Recheck }) {
  const store = useStore();
  const { trouble, told } = useTold();
  const here = { at: 'assembly', jobId: job.id } as const;
  const field = `rechecks/${recheck.id}`;
  const { afterDays, afterDistance, from, fromOdometer } = recheck;
  const unit = unitOf(recheck, job);
  const keep = (changes: RecheckChanges) => told(changeRecheck(store, recheck.id, changes));
  const rename = async (what: string) => what !== '' && keep({ what });
  const remove = () => told(removeRecheck(store, recheck.id), () => goInstead(here));
  const start = [dayWords(from), ...(fromOdometer === undefined ? [] : [`${fromOdometer} ${unit}`])].join(
    ', ',
  );
  return (
    <Page
      title={recheck.what}
      subtitle={
        recheck.done
          ? `done by ${recheck.done.by}, ${timeWords(recheck.done.at)}`
          : (againWords(recheck) ?? sayRecheckDue(dueNow(recheck, job, timeToKeep())))
      }
      back={{ href: hrefOf(here), to: 'the assembly' }}
    >
      <KeptField label="What is looked at again" kept={recheck.what} onWords={rename} />
      <ul>
        <li>
          <Row
            href={hrefOf({ ...here, field: `${field}/days` })}
            title="After so many days"
            {...(afterDays === undefined ? { detail: 'not set' } : { figure: String(afterDays) })}
          />
        </li>
        <li>
          <Row
            href={hrefOf({ ...here, field: `${field}/distance` })}
            title="After so many miles or kilometres"
            {...(afterDistance === undefined
              ? { detail: 'not set' }
              : { figure: `${afterDistance} ${unit}` })}
          />
        </li>
      </ul>
      {recheck.done && (
        <p class="assembly-note">It is done as it stands here. Change it, and it has to be done again.</p>
      )}
      <p class="assembly-note">{`Counted from ${start}; from the sign-off once it is signed. The manual’s own interval rules.`}</p>
      <Trouble>{trouble}</Trouble>
      <div class="assembly-keys">
        <Button onPress={() => remove()}>Remove this re-check</Button>
      </div>
    </Page>
  );
}

type AfterScreenProps = {
  readonly job: Job;
  readonly recheck: Recheck;
  readonly asked: 'days' | 'distance';
};

function AfterScreen({ job, recheck, asked }: AfterScreenProps) {
  const store = useStore();
  const [unit, setUnit] = useState<DistanceUnit>(unitOf(recheck, job));
  const { trouble, told } = useTold();
  const here = { at: 'assembly', jobId: job.id, field: `rechecks/${recheck.id}` } as const;
  const isDays = asked === 'days';
  const take = (number: number | undefined) => {
    const changes = isDays
      ? { afterDays: number }
      : { afterDistance: number, ...startIn(unit, recheck, job) };
    return told(changeRecheck(store, recheck.id, changes), () => go(here));
  };
  const isGiven = (isDays ? recheck.afterDays : recheck.afterDistance) !== undefined;
  return (
    <PadScreen
      title={isDays ? 'After how many days?' : 'After how far?'}
      subtitle={recheck.what}
      back={{ href: hrefOf(here), to: 'the re-check' }}
      aside={isGiven && <Button onPress={() => take(undefined)}>Leave out</Button>}
    >
      <Trouble>{trouble}</Trouble>
      <NumberEntry
        label={isDays ? 'Days' : 'Distance'}
        draftKey={`assembly/${recheck.id}/${asked}`}
        bounds={{
          ...(isDays ? { most: MOST_DAYS, unit: 'days' } : { most: MOST_DISTANCE, unit }),
          least: 1,
          whole: true,
        }}
        onNumber={(text) => take(Number(text))}
      >
        {!isDays && <DistanceUnits unit={unit} onUnit={setUnit} />}
      </NumberEntry>
    </PadScreen>
  );
}
