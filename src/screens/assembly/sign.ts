import { sayFinding } from '../../engine/job/say-sign-off.ts';
import { canBeNow, timeToKeep } from '../../store/base/clock.ts';
import type { Store } from '../../store/opening/open-store.ts';
import type { Id, SheetNode } from '../../store/base/records.ts';
import { sayStore } from '../../store/base/say-store.ts';
import { signSheet } from '../../store/kept/sheets.ts';
import { appVersion } from '../../version.ts';
import { cutsCsv, readingsCsv } from '../sheet/csv.ts';
import { countsStill } from '../cuts/cut-words.ts';
import { olderAmong } from '../older/job-ground.ts';
import { freeze } from '../sheet/freeze.ts';
import type { SheetData } from '../sheet/sheet-data.ts';
import { wholeTimeWords } from '../common/day-words.ts';
import { loadSignOff } from './sign-off-data.ts';

type Signing = {
  readonly data: SheetData;
  /** The sheet as it is drawn on the page. */
  readonly drawn: Element;
  /** The mark of what it is drawn from (`drawnMark`). */
  readonly drawnFrom: string;
  readonly by: string;
};

export type Signed =
  | { readonly ok: true; readonly sheetId: Id }
  | { readonly ok: false; readonly why: string };

/**
 * Signs a job off: the sheet is frozen as it is drawn, with who signed, when, with which Slipfit, and what was known to be
 * open; its readings and cuts go with it as CSV. Asked once more right before, as another tab may have changed the job, and
 * again in the act that signs. Where it has, and this tab heard nothing of it, all that is drawn is read again.
 */
export async function sign(store: Store, signing: Signing): Promise<Signed> {
  const signed = await signIfAsDrawn(store, signing);
  if (!signed.ok) store.channel.announce([{ store: 'jobs', id: signing.data.job.id }]);
  return signed;
}

async function signIfAsDrawn(store: Store, { data, drawn, drawnFrom, by }: Signing): Promise<Signed> {
  const { job } = data;
  const found = await loadSignOff(store, job.id, timeToKeep());
  if (!found || found.answer.blockers.length > 0)
    return {
      ok: false,
      why: 'Something in the job has changed meanwhile. Look at what stands in the way now.',
    };
  // Of the phone's own clock a record keeps only what could be right, and so does the sheet: it says the act's own time.
  const sheetSignedAt = (at: number) => ({
    jobId: job.id,
    signedBy: by,
    engineVersion: appVersion,
    content: withSignature(freeze(drawn), [
      `Signed off by ${by}, ${wholeTimeWords(at)}. Slipfit ${appVersion}.`,
      ...(canBeNow(Date.now())
        ? []
        : ['The phone’s clock was wrong: its dates of that day are not to be relied on.']),
      ...found.answer.standing.map(
        (one) => `Stands by a written reason: ${sayFinding(one).what}. ${one.why.replace(/\.+$/, '')}.`,
      ),
      ...found.answer.warnings.map(sayFinding).map(({ what }) => `Known when it was signed: ${what}.`),
    ]),
    readingsCsv: readingsCsv(data),
    cutsCsv: cutsCsv(data.cuts, olderAmong(data.cuts.filter(countsStill), data)),
  });
  const signed = await signSheet(store, sheetSignedAt, drawnFrom);
  return signed.ok ? { ok: true, sheetId: signed.value.id } : { ok: false, why: sayStore(signed.refusal) };
}

/** The sheet's own first lines say that it is signed, so that no copy of it goes without. */
function withSignature(content: readonly SheetNode[], lines: readonly string[]): readonly SheetNode[] {
  const signature: SheetNode = {
    tag: 'section',
    attributes: { class: 'frozen-sheet-signature' },
    children: lines.map((line, index) => ({
      tag: 'p',
      attributes: {},
      children: index === 0 ? [{ tag: 'strong', attributes: {}, children: [line] }] : [line],
    })),
  };
  return content.map((node) =>
    typeof node !== 'string' && node.tag === 'article'
      ? { ...node, children: [signature, ...node.children] }
      : node,
  );
}
