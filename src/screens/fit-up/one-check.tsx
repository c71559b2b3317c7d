import { useState } from 'preact/hooks';
import { isSafetyCritical } from '../../engine/job/safety.ts';
import { sayCheckState } from '../../engine/reading/say-check.ts';
import { uncapital } from '../../engine/length/say-words.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import { changeCheck, retake, sayCheckSeen } from '../../store/checks.ts';
import type { Job } from '../../store/records.ts';
import { sayStore } from '../../store/say-store.ts';
import type { StoreResult } from '../../store/store-refusal.ts';
import { measuringTools } from '../../store/tools.ts';
import { setSize } from '../../store/worksheets.ts';
import { go, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { LinkButton } from '../common/button.tsx';
import { SafetyCaution } from '../common/caution.tsx';
import { NumberLine } from '../common/number-line.tsx';
import { Page } from '../common/page.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { useTextDraft } from '../common/use-draft.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { PhotoStrip } from '../photos/photo-strip.tsx';
import { CheckActions } from './check-actions.tsx';
import { foundNow, type KnownCheck, type KnownTake } from './check-data.ts';
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
  const store = useStore();
  const unit = useShownUnit();
  const [trouble, setTrouble] = useState('');
  const { check, limits, state, takes, worksheet } = known;
  const { id, jobId, name, by } = check;
  const last = takes.at(-1);
  const note = useTextDraft(`check/${id}/${last?.id ?? ''}/note`);
  const said = (result: StoreResult<unknown>, words?: string): boolean => {
    setTrouble(result.ok ? '' : sayStore(result.refusal));
    if (result.ok && words !== undefined) announce(words);
    return result.ok;
  };
  const again = async () => void said(await retake(store, id), `${name} is to be taken again.`);
  const toWorksheet = async (take: KnownTake) => {
    if (!worksheet) return;
    const { sizeName } = check;
    const given =
      sizeName === undefined || take.featureId === undefined
        ? true
        : said(await setSize(store, worksheet.id, sizeName, { from: 'feature', featureId: take.featureId }));
    if (given) go({ at: 'worksheet', jobId, worksheetId: worksheet.id });
  };
  const seen = async (take: KnownTake, says: 'holds' | 'fails') => {
    const words = note.text.trim() === '' ? (take.seenNote ?? '') : note.text.trim();
    const kept = await sayCheckSeen(store, id, take.id, says, words);
    if (said(kept, `${name}: ${says === 'holds' ? 'good' : 'no good'}.`)) note.clear();
  };
  const takeOver = async () => {
    if (!known.newLimits || !known.newBasis) return;
    const fields = limitFields(known.newLimits, unit);
    const { lower, upper, limitsFrom } = fields;
    said(
      await changeCheck(store, id, { lower, upper, limitsFrom, basis: known.newBasis }),
      'New limits taken over.',
    );
  };
  return (
    <Page
      title={name}
      subtitle={worksheet?.title ?? job.name}
      back={{ href: hrefOf({ at: 'fit-up', jobId }), to: 'Fit-up' }}
      aside={
        <LinkButton href={hrefOf({ at: 'check', jobId, checkId: id, field: 'about' })}>About</LinkButton>
      }
      foot={
        <CheckActions
          known={known}
          onRetake={again}
          onWorksheet={() => last && toWorksheet(last)}
          onSeen={(says) => last && void seen(last, says)}
        />
      }
    >
      <CheckBand
        found={foundNow(known)}
        headline={saidNow(known, sayCheckState(state, { name, by, limits, unit }))}
      />
      {trouble !== '' && (
        <p role="alert" class="text-field-trouble">
          {trouble}
        </p>
      )}
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
