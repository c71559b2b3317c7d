import { cutName } from '../../engine/thread/tap-name.ts';
import { toText } from '../../engine/length/length.ts';
import { signOff, type SignOffAnswer } from '../../engine/job/sign-off.ts';
import type { Finding, FindingCode } from '../../engine/job/finding.ts';
import type { SignOffQuestion } from '../../engine/job/sign-off-question.ts';
import { bandOf, typedEstimate } from '../../engine/reading/estimate.ts';
import { canProve } from '../../engine/reading/settle.ts';
import { countedAt20 } from '../../store/kept/read-at-20.ts';
import { lastPassOf } from '../../store/kept/cut-state.ts';
import { readBy } from '../../store/kept/pass-tool.ts';
import { doneAs, inShort } from '../../store/kept/done-again.ts';
import type { Store } from '../../store/opening/open-store.ts';
import { withoutStart } from '../../store/kept/rechecks.ts';
import type { AssemblyStep, Cut, Id, Job, Recheck, Worksheet } from '../../store/base/records.ts';
import { unlistedReadings, unreadableOfJob } from '../../store/kept/unreadable.ts';
import type { Address } from '../address.ts';
import { isOlderThanSizes } from '../older/older-than-sizes.ts';
import { foundNow, knownChecks, withoutCheck, type KnownCheck } from '../fit-up/check-data.ts';
import { checkOfOffer } from '../fit-up/check-from-offer.ts';
import { offersOf } from '../fit-up/offers.ts';
import { readSheet, type SheetData } from '../sheet/sheet-data.ts';
import { worksheetDataOf } from '../sheet/worksheet-data-of.ts';
import { assumedElsewhere } from '../worksheets/assumed-elsewhere.ts';
import { assumedIn } from '../worksheets/assumed.ts';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';
import { basisNow } from '../worksheets/new-cuts.ts';
import { provedVerdict, provesSize } from '../worksheets/proved-verdict.ts';
import { isMockUpIn } from './parts-list.tsx';
import { isStepChanged } from './step-standing.ts';
import { engineStep } from './step-words.ts';

export type SignOffData = {
  readonly job: Job;
  readonly rechecks: readonly Recheck[];
  readonly answer: SignOffAnswer;
};

/** What stands in the way of signing a job off, as all that is kept of it says now. */
export async function loadSignOff(store: Store, jobId: Id, now: number): Promise<SignOffData | undefined> {
  const data = await readSheet(store, jobId);
  if (!data) return undefined;
  const unreadable = (await unreadableOfJob(store, jobId)) + (await unlistedReadings(store, jobId));
  return { job: data.job, rechecks: data.rechecks, answer: signOffOf(data, { now, unreadable }) };
}

type AsOf = { readonly now: number; readonly unreadable: number };

/** The same of a job that was read whole. */
export function signOffOf(data: SheetData, { now, unreadable }: AsOf): SignOffAnswer {
  const { job, steps, parts, cuts, worksheets, rechecks } = data;
  const checks = knownChecks(data);
  const isUsed = ({ id }: Worksheet) =>
    [...cuts, ...steps, ...data.checks].some(({ worksheetId }) => worksheetId === id);
  return signOff({
    systems: job.systems,
    touchesNone: job.touchesNone === true,
    now,
    steps: steps.map((step) => ({
      ...engineStep(step),
      changed: isStepChanged(step, data),
      as: stepAs(step, data),
    })),
    parts: parts.map((part) => ({
      id: part.id,
      name: part.name,
      isMockUp: isMockUpIn(part),
      as: inShort([part.name, part.origin]),
    })),
    worksheets: worksheets.map((worksheet) => ({
      id: worksheet.id,
      title: worksheet.title,
      ...provedVerdict(worksheetDataOf(worksheet, data), { checks, cuts }),
      used: isUsed(worksheet),
      checked: isChecked(worksheetDataOf(worksheet, data), checks),
      ...assumedOfGood(worksheetDataOf(worksheet, data)),
      ...ofAnother(worksheetDataOf(worksheet, data), checks),
      as: inShort(basisNow({ worksheet, readings: data.readings })),
    })),
    checks: checks.map((known) => ({
      id: known.check.id,
      name: known.check.name,
      found: known.state.found,
      older: known.older,
      readBefore: known.readBefore && known.state.found !== 'not-done',
      as: checkAs(known, data),
    })),
    unchecked: withoutCheck(data).map((worksheet) => ({
      id: worksheet.id,
      title: worksheet.title,
      used: [...cuts, ...steps].some(({ worksheetId }) => worksheetId === worksheet.id),
      as: inShort(basisNow({ worksheet, readings: data.readings })),
    })),
    cuts: cuts.map((cut) => ({
      id: cut.id,
      name: cutName(cut),
      state: cut.state,
      older: isOlderThanSizes({ of: 'cut', cut }, data),
      ...coarselyMeasured(cut),
      as: cutAs(cut, data),
    })),
    ...(job.reasons && { reasons: job.reasons }),
    unreadable,
    lacksOdometer: job.odometer === undefined && withoutStart(rechecks).length > 0,
  } satisfies SignOffQuestion);
}

/** Every check that it offers was made, and holds for what is there now. */
function isChecked(data: WorksheetData, checks: readonly KnownCheck[]): boolean {
  const offers = offersOf(data);
  const good = checks.filter((known) => foundNow(known) === 'good').map(({ check }) => check);
  return (
    offers.length > 0 && offers.every((offer) => checkOfOffer(offer, data.worksheet.id, good) !== undefined)
  );
}

/** What a worksheet's verdict hangs on as nobody said it; the first of it is where it is said. */
function assumedOfGood(data: WorksheetData): { readonly assumed?: { words: string; field: string } } {
  const assumed = assumedIn(data);
  const [first] = assumed;
  return first
    ? { assumed: { words: assumed.map(({ words }) => words).join(', '), field: first.field } }
    : {};
}

/** A size that was never read on this part, unless a check of the joint itself is good. */
function ofAnother(
  data: WorksheetData,
  checks: readonly KnownCheck[],
): { readonly ofAnother?: { words: string; field: string } } {
  const all = assumedElsewhere(data);
  const [first] = all;
  const isProved = checks.some((known) => known.check.worksheetId === data.worksheet.id && provesSize(known));
  return first && !isProved
    ? { ofAnother: { words: all.map(({ words }) => words).join(', '), field: first.field } }
    : {};
}

type Coarse = Pick<SignOffQuestion['cuts'][number], 'tooCoarse'>;

/** The tool it was measured with last, named or assumed, where that can't prove its limits wherever between them it reads. */
function coarselyMeasured(cut: Cut): Coarse {
  const pass = lastPassOf(cut)?.[1];
  if (!pass) return {};
  const { tool, toolAssumed } = readBy(cut, pass);
  if (!tool) return { tooCoarse: { isAssumed: true } };
  const { exact, doubt } = countedAt20(pass.measured.exact, pass);
  const { halfWidth } = bandOf(typedEstimate(exact, tool, doubt ? { warmthDoubt: doubt } : {}));
  const limits = { lower: cut.lower.exact, upper: cut.upper.exact, source: cut.limitsFrom };
  if (canProve({ limits, halfWidth })) return {};
  return { tooCoarse: { tool: tool.name, ...(toolAssumed && { isAssumed: true }) } };
}

function worksheetOf({ worksheetId }: { readonly worksheetId?: Id | undefined }, { worksheets }: SheetData) {
  return worksheets.find(({ id }) => id === worksheetId);
}

/** How each thing stands, for the reason that was written about it: whatever its figures hang on. */
function stepAs(step: AssemblyStep, data: SheetData): string {
  const worksheet = worksheetOf({ worksheetId: step.workedOut?.worksheetId ?? step.worksheetId }, data);
  return inShort([
    doneAs('steps', step),
    step.torque?.source,
    step.cureHours,
    step.done?.at,
    worksheet && basisNow({ worksheet, readings: data.readings }),
  ]);
}

function checkAs({ check, limits, state, takes, worksheet }: KnownCheck, { readings }: SheetData): string {
  const last = takes.at(-1);
  return inShort([
    state.found,
    limits.lower && toText(limits.lower),
    limits.upper && toText(limits.upper),
    check.how,
    last?.id,
    last?.seen,
    last?.readings.flatMap(({ id, struckOut }) => (struckOut ? [] : [id])),
    worksheet && basisNow({ worksheet, readings }),
  ]);
}

function cutAs(cut: Cut, data: SheetData): string {
  const worksheet = worksheetOf(cut, data);
  const { state, target, lower, upper } = cut;
  return inShort([
    state,
    [target, lower, upper].map(({ exact }) => toText(exact)),
    lastPassOf(cut)?.[0],
    worksheet && basisNow({ worksheet, readings: data.readings }),
  ]);
}

const STEP_FIELDS: Partial<Record<FindingCode, string>> = {
  'no-torque-figure': 'torque',
  'no-torque-source': 'torque/source',
  'no-cure-time': 'cure',
};

/** Where a finding is put right. */
export function placeOf({ code, place, field }: Finding, jobId: Id): Address {
  switch (place.at) {
    case 'step': {
      const ofStep = STEP_FIELDS[code];
      // What only has to be done, or to cure, is done on the list itself.
      return ofStep === undefined
        ? { at: 'assembly', jobId }
        : { at: 'step', jobId, stepId: place.id, field: ofStep };
    }
    case 'worksheet':
      return { at: 'worksheet', jobId, worksheetId: place.id, ...(field !== undefined && { field }) };
    case 'part':
      return { at: 'assembly', jobId, field: `parts/${place.id}` };
    case 'check':
      return { at: 'check', jobId, checkId: place.id };
    case 'cut':
      return { at: 'cut', jobId, cutId: place.id, ...(field !== undefined && { field }) };
    case 'fit-up':
      // A worksheet's check that was never made is made there.
      return code === 'check-missing' || code === 'check-offered'
        ? { at: 'check', jobId, checkId: 'new' }
        : { at: 'fit-up', jobId };
    case 'assembly':
      // Steps that are there want a torque on one of them.
      return code === 'no-steps' ? { at: 'assembly', jobId, field: 'steps' } : { at: 'assembly', jobId };
    case 'odometer':
      return { at: 'assembly', jobId, field: 'odometer' };
    case 'job':
      return { at: 'job', jobId };
    default:
      return place satisfies never;
  }
}
