import { inShopWords, isSameName } from '../../engine/length/american-words.ts';
import type { CheckBy } from '../../engine/reading/check.ts';
import type { CheckOffer } from '../../engine/reading/check-offer.ts';
import { sayWanted } from '../../engine/reading/say-check.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import { usualChecks, type UsualCheck } from '../../engine/job/tables/usual-checks.ts';
import { createCheck, type NewCheck } from '../../store/kept/checks.ts';
import type { Worksheet } from '../../store/base/records.ts';
import { goInstead, hrefOf } from '../address.ts';
import { EmptyLine } from '../common/empty-line.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { TextField } from '../common/text-field.tsx';
import { useTextDraft } from '../common/use-draft.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { FEATURE_KINDS } from '../readings/feature-kinds.ts';
import { worksheetData, type FitUpData } from './check-data.ts';
import { checkFromOffer, checkOfOffer, limitFields } from './check-from-offer.ts';
import { offersOf } from './offers.ts';
import './new-check-screen.css';

type NewCheckProps = { readonly data: FitUpData; readonly field?: string };

/** Where checks are made: from what the worksheets want, from the list of the trade, or one's own. */
export function NewCheckScreen({ data, field }: NewCheckProps) {
  const store = useStore();
  const { trouble, told } = useTold();
  const { job } = data;
  const make = (check: NewCheck, draftKey?: string) =>
    told(createCheck(store, check, draftKey), ({ id }) =>
      goInstead({ at: 'check', jobId: job.id, checkId: id }),
    );
  const props = { data, onMake: make };
  const here = { at: 'check', jobId: job.id, checkId: 'new' } as const;
  return (
    <Page
      title={TITLES[field ?? ''] ?? 'New check'}
      subtitle={job.name}
      back={
        field === undefined
          ? { href: hrefOf({ at: 'fit-up', jobId: job.id }), to: 'Fit-up' }
          : { href: hrefOf(here), to: 'New check' }
      }
    >
      <Trouble>{trouble}</Trouble>
      {field === 'list' && <UsualList {...props} />}
      {field === 'own' && <OwnCheck {...props} />}
      {field !== 'list' && field !== 'own' && <FromWorksheets {...props} />}
    </Page>
  );
}

const TITLES: Readonly<Record<string, string>> = { list: 'Usual checks', own: 'Your own check' };

type MakeProps = {
  readonly data: FitUpData;
  readonly onMake: (check: NewCheck, draftKey?: string) => unknown;
};

/** What the job's worksheets want proved, and the two other ways to a check. */
function FromWorksheets({ data, onMake }: MakeProps) {
  const unit = useShownUnit();
  const { job, worksheets } = data;
  const here = { at: 'check', jobId: job.id, checkId: 'new' } as const;
  const offering = worksheets
    .map((worksheet) => ({ worksheet, offers: offersOf(worksheetData(data, worksheet, unit)) }))
    .filter(({ offers }) => offers.length > 0);
  return (
    <>
      <ul>
        <li>
          <Row
            href={hrefOf({ ...here, field: 'list' })}
            title="Usual checks"
            detail="runout, steering stops, hoses, chain line, brake, cotter pins"
          />
        </li>
        <li>
          <Row
            href={hrefOf({ ...here, field: 'own' })}
            title="Your own check"
            detail="a name, how it is read, your limits"
          />
        </li>
      </ul>
      {offering.length === 0 && (
        <EmptyLine>
          Once a worksheet has its answer, what it wants proved on the machine is offered here with its
          limits.
        </EmptyLine>
      )}
      {offering.map(({ worksheet, offers }) => (
        <OffersOf
          key={worksheet.id}
          data={data}
          worksheet={worksheet}
          offers={offers}
          unit={unit}
          onMake={onMake}
        />
      ))}
    </>
  );
}

type OffersOfProps = MakeProps & {
  readonly worksheet: Worksheet;
  readonly offers: readonly CheckOffer[];
  readonly unit: ShownUnit;
};

function OffersOf({ data, worksheet, offers, unit, onMake }: OffersOfProps) {
  return (
    <section class="new-check">
      <h2>{worksheet.title}</h2>
      <ul>
        {offers.map((offer) => {
          const there = checkOfOffer(offer, worksheet.id, data.checks);
          const wanted = sayWanted({ by: offer.by, limits: offer.limits, unit });
          return (
            <li key={offer.name}>
              <Row
                title={offer.name}
                detail={there ? `${wanted}; made already` : wanted}
                {...(there
                  ? { href: hrefOf({ at: 'check', jobId: data.job.id, checkId: there.id }) }
                  : { onPress: () => onMake(checkFromOffer(offer, { ...data, worksheet, unit })) })}
              />
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** The trade's list; what belongs to the systems the job touches comes first. */
function UsualList({ data, onMake }: MakeProps) {
  const unit = useShownUnit();
  const { job, checks } = data;
  const isOurs = ({ systems }: UsualCheck) => systems.some((system) => job.systems.includes(system));
  const groups = [
    { title: 'For this job', rows: usualChecks.filter(isOurs) },
    { title: 'Others', rows: usualChecks.filter((row) => !isOurs(row)) },
  ].filter(({ rows }) => rows.length > 0);
  return (
    <>
      {groups.map(({ title, rows }) => (
        <section key={title} class="new-check">
          {groups.length > 1 && <h2>{title}</h2>}
          <ul>
            {rows.map((row) => {
              const { by } = row;
              const name = inShopWords(row.name, unit);
              const how = inShopWords(row.how, unit);
              const limits = row.limits[unit];
              const there = checks.find((check) => by === check.by && isSameName(check.name, row.name));
              const wanted =
                by !== 'by-eye' && !limits.lower && !limits.upper
                  ? limits.source
                  : sayWanted({ by, limits, unit });
              return (
                <li key={row.id}>
                  <Row
                    title={name}
                    detail={there ? `${wanted}; made already` : wanted}
                    {...(there
                      ? { href: hrefOf({ at: 'check', jobId: job.id, checkId: there.id }) }
                      : {
                          onPress: () =>
                            onMake({ jobId: job.id, name, by, how, ...limitFields(limits, unit) }),
                        })}
                  />
                </li>
              );
            })}
          </ul>
        </section>
      ))}
    </>
  );
}

const WAYS: readonly { readonly by: CheckBy; readonly name: string; readonly means: string }[] = [
  { by: 'by-eye', name: 'By eye', means: 'it holds or it doesn’t' },
  ...FEATURE_KINDS.map(({ kind, name, means }) => ({ by: kind, name, means })),
];

/** A check of the fitter's own: its name, then how it is read makes it; limits are given on the check. */
function OwnCheck({ data: { job, checks }, onMake }: MakeProps) {
  const draftKey = `new-check/${job.id}`;
  const draft = useTextDraft(draftKey);
  const make = (by: CheckBy) => {
    const name = draft.text.trim() === '' ? `Check ${checks.length + 1}` : draft.text.trim();
    onMake(
      { jobId: job.id, name, by, how: '', limitsFrom: by === 'by-eye' ? 'by eye' : 'your own limits' },
      draftKey,
    );
  };
  return (
    <>
      <TextField
        label="What is checked"
        hint="Lever clear of the grip"
        text={draft.text}
        onText={draft.change}
      />
      <section class="new-check">
        <h2>How is it read?</h2>
        <ul>
          {WAYS.map(({ by, name, means }) => (
            <li key={by}>
              <Row title={name} detail={means} onPress={() => make(by)} />
            </li>
          ))}
        </ul>
      </section>
    </>
  );
}
