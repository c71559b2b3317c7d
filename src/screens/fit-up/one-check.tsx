import { useRef } from 'preact/hooks';
import { isSafetyCritical } from '../../engine/job/safety.ts';
import { sayCheckState } from '../../engine/reading/say-check.ts';
import { uncapital } from '../../engine/length/say-words.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import { changeCheck, retake, sayCheckSeen } from '../../store/kept/checks.ts';
import type { Job } from '../../store/base/records.ts';
import { measuringTools } from '../../store/kept/tools.ts';
import { setSize } from '../../store/kept/worksheets.ts';
import { go, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { LinkButton } from '../common/button.tsx';
import { SafetyCaution } from '../common/caution.tsx';
import { NumberLine } from '../common/number-line.tsx';
import { Page } from '../common/page.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { useTextDraft } from '../common/use-draft.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { PhotoStrip } from '../photos/photo-strip.tsx';
import { CheckActions } from './check-actions.tsx';
import { foundNow, type KnownCheck } from './check-data.ts';
import { limitFields } from './check-from-offer.ts';
import { CheckBand } from './check-mark.tsx';
import { proofWords } from './check-proof.ts';
import { CheckRows } from './check-rows.tsx';
import { CheckTakes } from './check-takes.tsx';
import { OlderLimits } from './older-limits.tsx';
import { SeenNote } from './seen-by-eye.tsx';
import './one-check.css';

type OneCheckProps = { readonly job: Job; readonly known: KnownCheck };

/** One check: what it was found to be, how it is done, its limits, and every go at it. */
export function OneCheck({ job, known }: OneCheckProps) {
  const unit = useShownUnit();
  const { check, limits, state, takes, worksheet } = known;
  const { id, jobId, name, by } = check;
  const { trouble, note, again, toWorksheet, seen, takeOver, verdict } = useCheck(known);
  const last = takes.at(-1);
  return (
    <Page
      title={name}
      subtitle={worksheet?.title ?? job.name}
      back={{ href: hrefOf({ at: 'fit-up', jobId }), to: 'Fit-up' }}
      aside={
        <LinkButton href={hrefOf({ at: 'check', jobId, checkId: id, field: 'about' })}>About</LinkButton>
      }
      foot={<CheckActions known={known} onRetake={again} onWorksheet={toWorksheet} onSeen={seen} />}
    >
      <div ref={verdict} class="one-check-verdict">
        <CheckBand
          found={foundNow(known)}
          headline={saidNow(known, sayCheckState(state, { name, by, limits, unit }))}
        />
      </div>
      <Trouble>{trouble}</Trouble>
      <OlderLimits known={known} unit={unit} onTakeOver={takeOver} onRetake={again} />
      <Proof known={known} unit={unit} />
      {check.how !== '' && <p class="one-check-how">{check.how}</p>}
      {by === 'by-eye' && last && <SeenNote take={last} text={note.text} onText={note.change} />}
      {by !== 'by-eye' && <CheckRows known={known} unit={unit} />}
      <CheckTakes known={known} unit={unit} />
      <PhotoStrip jobId={jobId} owner={{ store: 'checks', id }} />
      {isSafetyCritical(job) && <SafetyCaution />}
    </Page>
  );
}

/** What is done with a check: taken again, handed to its worksheet, seen by eye, given the limits of today. */
function useCheck({ check, takes, worksheet, newLimits, newBasis }: KnownCheck) {
  const store = useStore();
  const unit = useShownUnit();
  const { trouble, told } = useTold();
  // The keys that say it are at the bottom; a note is typed far below what was found.
  const verdict = useRef<HTMLDivElement>(null);
  const { id, jobId, name, sizeName } = check;
  const last = takes.at(-1);
  const note = useTextDraft(`check/${id}/${last?.id ?? ''}/note`);
  const again = () => told(retake(store, id), () => announce(`${name} is to be taken again.`));
  const toWorksheet = () => {
    if (!worksheet || !last) return undefined;
    const onward = () => go({ at: 'worksheet', jobId, worksheetId: worksheet.id });
    if (sizeName === undefined || last.featureId === undefined) return onward();
    const size = { from: 'feature', featureId: last.featureId } as const;
    return told(setSize(store, worksheet.id, sizeName, size), onward);
  };
  const seen = (says: 'holds' | 'fails') => {
    if (!last) return;
    const words = note.text.trim() === '' ? (last.seenNote ?? '') : note.text.trim();
    void told(sayCheckSeen(store, id, last.id, says, words), () => {
      announce(`${name}: ${says === 'holds' ? 'good' : 'no good'}.`);
      note.clear();
      verdict.current?.scrollIntoView({ block: 'nearest' });
    });
  };
  const takeOver = () => {
    if (!newLimits || !newBasis) return undefined;
    const { lower, upper, limitsFrom } = limitFields(newLimits, unit);
    return told(changeCheck(store, id, { lower, upper, limitsFrom, basis: newBasis }), () =>
      announce('New limits taken over.'),
    );
  };
  return { trouble, note, again, toWorksheet, seen, takeOver, verdict };
}

/** A verdict of before says so, so that it is not taken for today's. */
function saidNow(known: KnownCheck, said: string): string {
  return foundNow(known) === known.state.found ? said : `Before a size changed: ${uncapital(said)}`;
}

/** The verdict as a picture, and what would settle it or could ever prove it, where that matters. */
function Proof({ known, unit }: { readonly known: KnownCheck; readonly unit: ShownUnit }) {
  const tools = useLive('tools', ['tools'], measuringTools);
  const { check, limits, state } = known;
  const { last } = state;
  if (last.kind !== 'judged' || check.by === 'by-eye') return null;
  const proof = tools ? proofWords({ ...last, by: check.by, limits, tools, unit }) : '';
  return (
    <>
      <NumberLine
        value={last.value}
        halfWidth={last.band.halfWidth}
        limits={limits}
        verdict={last.verdict.kind}
        unit={unit}
        label="read"
      />
      {proof !== '' && <p class="one-check-proof">{proof}</p>}
    </>
  );
}
