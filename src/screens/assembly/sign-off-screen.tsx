import { canBeNow } from '../../store/base/clock.ts';
import { signedStores } from '../../store/base/stores.ts';
import { mayBeReasoned, type Blocker, type SignOffAnswer } from '../../engine/job/sign-off.ts';
import type { Finding } from '../../engine/job/finding.ts';
import { useRef, useState } from 'preact/hooks';
import { sayFinding, saySignOff } from '../../engine/job/say-sign-off.ts';
import { goInstead, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Caution, SafetyCaution } from '../common/caution.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { useSetting } from '../common/use-settings.ts';
import { TextField } from '../common/text-field.tsx';
import { useTextDraft } from '../common/use-draft.ts';
import { VerdictBand } from '../common/verdict-band.tsx';
import { Trouble, useTold } from '../common/told.tsx';
import { useSheetToSign, type SheetData } from '../sheet/sheet-data.ts';
import { SheetDocument } from '../sheet/sheet-document.tsx';
import type { Signer } from '../sheet/signing-sheet.tsx';
import { FindingMark } from './finding-mark.tsx';
import { ReasonScreen } from './reason-screen.tsx';
import { loadSignOff, placeOf, type SignOffData } from './sign-off-data.ts';
import { sign } from './sign.ts';
import { useNow } from './use-assembly.ts';
import './assembly-screen.css';

type SignOffScreenProps = { readonly jobId: string; readonly field?: string };

/** What stands in the way of signing, and once nothing does, the sheet that is signed with a name under it. */
export function SignOffScreen({ jobId, field = '' }: SignOffScreenProps) {
  const now = useNow();
  const found = useLive(`sign-off/${jobId}/${now}`, signedStores, async (store) => ({
    data: await loadSignOff(store, jobId, now),
  }));
  // The answer of half a minute ago stands until the new one is there.
  const [before, setBefore] = useState(found);
  if (found && found !== before) setBefore(found);
  const shown = found ?? before;
  const sheet = useSheetToSign(jobId);
  if (shown && !shown.data) return <NotHere what="job" />;
  if (!shown?.data || !sheet?.data) return <Page title=" ">{null}</Page>;
  const [place, ...key] = field.split('/');
  if (place === 'reason') return <ReasonScreen data={shown.data} about={key.join('/')} />;
  return <SignOff data={shown.data} sheet={sheet.data} drawnFrom={sheet.drawnFrom} now={now} />;
}

type SignOffProps = {
  readonly data: SignOffData;
  readonly sheet: SheetData;
  readonly drawnFrom: string;
  readonly now: number;
};

function SignOff({ data, sheet, drawnFrom, now }: SignOffProps) {
  const { job, answer } = data;
  const signing = useSigning({ sheet, drawnFrom });
  const isFree = answer.blockers.length === 0;
  return (
    <Page
      title="Sign-off"
      subtitle={job.name}
      back={{ href: hrefOf({ at: 'assembly', jobId: job.id }), to: 'the assembly' }}
      {...(isFree && {
        foot: (
          <button
            type="button"
            class="assembly-commit"
            disabled={signing.busy}
            onClick={() => void signing.commit()}
          >
            Sign off
          </button>
        ),
      })}
    >
      <Headline answer={answer} />
      <Blockers blockers={answer.blockers} jobId={job.id} />
      <Standing standing={answer.standing} jobId={job.id} />
      {answer.warnings.length > 0 && (
        <section class="assembly-section" aria-label="Know before you sign">
          <h2>Know before you sign</h2>
          <Findings findings={answer.warnings} jobId={job.id} />
        </section>
      )}
      {answer.safetyCritical && <SafetyCaution />}
      <Trouble>{signing.trouble}</Trouble>
      {isFree && <WhatIsSigned sheet={sheet} now={now} signing={signing} />}
    </Page>
  );
}

/** The name under it, and the press that signs the sheet as it is drawn. */
function useSigning({ sheet, drawnFrom }: Pick<SignOffProps, 'sheet' | 'drawnFrom'>) {
  const store = useStore();
  const { job } = sheet;
  const drawn = useRef<HTMLDivElement>(null);
  const { name, change, clear } = useName(job.id);
  const { trouble, say } = useTold();
  const [busy, setBusy] = useState(false);
  const commit = async () => {
    const by = name.trim();
    const article = drawn.current?.querySelector('article');
    if (by === '') return say('Type the name it is signed with.');
    if (!article || busy) return undefined;
    setBusy(true);
    const signed = await sign(store, { data: sheet, drawn: article, drawnFrom, by });
    setBusy(false);
    if (!signed.ok) return say(signed.why);
    clear();
    announce(`Signed off by ${by}`);
    return goInstead({ at: 'sheet', jobId: job.id, field: `signed/${signed.sheetId}` });
  };
  return { drawn, name, change, trouble, busy, commit };
}

function Headline({ answer }: { answer: SignOffAnswer }) {
  const isFree = answer.blockers.length === 0;
  // Nothing of it is good: it is let pass.
  if (isFree && answer.standing.length > 0)
    return <Caution heading={saySignOff(answer)}>Each reason is printed on the sheet.</Caution>;
  return (
    <VerdictBand kind={isFree ? 'good' : 'no-good'} headline={saySignOff(answer)}>
      {!isFree && <p>Each line leads to where it is put right.</p>}
    </VerdictBand>
  );
}

type WhatIsSignedProps = Pick<SignOffProps, 'sheet' | 'now'> & {
  readonly signing: ReturnType<typeof useSigning>;
};

function WhatIsSigned({ sheet, now, signing: { drawn, name, change } }: WhatIsSignedProps) {
  return (
    <>
      <TextField
        label="Signed by"
        hint="Name, and licence where one is asked for"
        text={name}
        onText={change}
      />
      <section class="assembly-section" aria-label="What is signed">
        <h2>What is signed</h2>
        <p class="assembly-note">
          This sheet, frozen as it stands. Later readings don’t change it; signing again makes another.
        </p>
        <div ref={drawn} class="assembly-sheet">
          <SheetDocument
            data={sheet}
            today={now}
            signer={name.trim() === '' ? undefined : signerNow(name.trim(), now)}
          />
        </div>
      </section>
    </>
  );
}

function signerNow(by: string, now: number): Signer {
  return { by, ...(canBeNow(Date.now()) && { at: now }) };
}

/** What stops the signing: each line leads to where it is mended, and the one under it to a reason why it may stand. */
function Blockers({ blockers, jobId }: { blockers: readonly Blocker[]; jobId: string }) {
  return (
    <ul>
      {blockers.map((blocker) => {
        const { what, todo } = sayFinding(blocker);
        const { key, wroteBefore } = blocker;
        return (
          <li key={key} class="sign-off-blocker">
            <Row
              href={hrefOf(placeOf(blocker, jobId))}
              title={what}
              detail={todo}
              mark={<FindingMark what="stops" />}
            />
            {wroteBefore !== undefined && (
              <p class="assembly-note assembly-again">{`Changed since you wrote “${wroteBefore}”.`}</p>
            )}
            {mayBeReasoned(blocker) && (
              <a
                class="sign-off-why"
                href={hrefOf({ at: 'sign-off', jobId, field: `reason/${key}` })}
                aria-label={`Or write why it may stand: ${what}`}
              >
                Or write why it may stand
              </a>
            )}
          </li>
        );
      })}
    </ul>
  );
}

function Standing({ standing, jobId }: { standing: SignOffAnswer['standing']; jobId: string }) {
  if (standing.length === 0) return null;
  return (
    <section class="assembly-section" aria-label="Stands by your reason">
      <h2>Stands by your reason</h2>
      <ul>
        {standing.map((one) => (
          <li key={one.key}>
            <Row
              href={hrefOf({ at: 'sign-off', jobId, field: `reason/${one.key}` })}
              title={sayFinding(one).what}
              detail={one.why}
              mark={<FindingMark what="stands" />}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Findings({ findings, jobId }: { findings: readonly Finding[]; jobId: string }) {
  return (
    <ul>
      {findings.map((finding) => {
        const { what, todo } = sayFinding(finding);
        return (
          <li key={finding.key}>
            <Row
              href={hrefOf(placeOf(finding, jobId))}
              title={what}
              detail={todo}
              mark={<FindingMark what="known" />}
            />
          </li>
        );
      })}
    </ul>
  );
}

/** The name under it: the fitter's own until another is typed, a licensed person's, say. */
function useName(jobId: string) {
  const fitter = useSetting('fitter');
  const draft = useTextDraft(`sign-off/${jobId}/name`);
  const [touched, setTouched] = useState(false);
  return {
    name: touched || draft.text !== '' ? draft.text : (fitter ?? ''),
    change: (text: string) => {
      setTouched(true);
      draft.change(text);
    },
    clear: draft.clear,
  };
}
