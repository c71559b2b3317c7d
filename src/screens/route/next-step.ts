import { sayStrengthOfCuts } from '../../engine/cut/say-strength.ts';
import { figure, show } from '../../engine/length/show.ts';
import { isMore, zero } from '../../engine/length/length.ts';
import type { RouteNext } from '../../engine/job/route.ts';
import { sayNext, type SaidNext } from '../../engine/job/say-route.ts';
import { blocksOf } from '../../engine/worksheets/account.ts';
import { worksheetOf } from '../../engine/worksheets/all-worksheets.ts';
import type { Cut } from '../../store/base/records.ts';
import type { Address } from '../address.ts';
import { leftToTake } from '../cuts/cut-now.ts';
import { hasItsOwnSize, MACHINE_WORDS, materialWords, strengthOf } from '../cuts/cut-words.ts';
import type { SheetData } from '../sheet/sheet-data.ts';
import { worksheetDataOf } from '../sheet/worksheet-data-of.ts';
import { givenOf } from '../worksheets/given-of.ts';

/** The next act of a job: its words, and where it is done. */
export type NextStep = SaidNext & {
  readonly address: Address;
  /** That the part loses strength by it. */
  readonly strength?: string;
};

export function nextStep(next: RouteNext, data: SheetData): NextStep {
  const jobId = data.job.id;
  const said = sayNext(next);
  switch (next.is) {
    case 'check-failed':
    case 'check-older':
    case 'check':
      return { ...said, address: { at: 'check', jobId, checkId: next.of.id } };
    case 'cut':
      return cutStep(
        said,
        data.cuts.find(({ id }) => id === next.of.id),
        data,
      );
    case 'cut-over':
    case 'cut-older':
      return { ...said, address: { at: 'cut', jobId, cutId: next.of.id } };
    case 'doubt':
      return { ...said, address: { at: 'feature', jobId, featureId: next.of.id } };
    case 'worksheet-lacks':
    case 'worksheet-wrong':
      return { ...said, address: { at: 'worksheet', jobId, worksheetId: next.of.id } };
    case 'worksheet-cut':
      return worksheetStep(said, next.of.id, data);
    case 'new-check':
      return { ...said, address: { at: 'check', jobId, checkId: 'new' } };
    case 'get':
      return { ...said, address: { at: 'get', jobId } };
    case 'step':
    case 'step-again':
      return { ...said, address: { at: 'assembly', jobId } };
    case 'steps':
      return { ...said, address: { at: 'assembly', jobId, field: 'steps' } };
    case 'recheck':
      return { ...said, address: { at: 'assembly', jobId, field: `rechecks/${next.of.id}` } };
    case 'begin':
      return { ...said, address: { at: 'new-feature', jobId } };
    case 'decide':
      return { ...said, address: { at: 'worksheets', jobId } };
    case 'blockers':
    case 'sign':
    case 'sign-again':
      return { ...said, address: { at: 'sign-off', jobId } };
    case 'nothing':
      return { ...said, address: { at: 'sheet', jobId } };
    default:
      return next satisfies never;
  }
}

/** `Outer spacer, face to 1.123`, `.032 off · 303 stainless · lathe`. */
function cutStep(said: SaidNext, cut: Cut | undefined, { job, unit }: SheetData): NextStep {
  if (!cut) return { ...said, address: { at: 'cuts', jobId: job.id } };
  const at = { jobId: job.id, cutId: cut.id };
  const left = leftToTake(cut);
  const isByTool = hasItsOwnSize(cut);
  return {
    what: isByTool ? said.what : `${said.what} to ${figure(cut.target.exact, unit)}`,
    more: [
      ...(left && !isByTool && isMore(left, zero) ? [`${show(left, unit)} off`] : []),
      ...(cut.material === undefined ? [] : [materialWords(cut.material, unit)]),
      MACHINE_WORDS[cut.machine],
    ].join(' · '),
    key: `To the ${MACHINE_WORDS[cut.machine]}`,
    address: isByTool && !cut.stands ? { at: 'cut', ...at } : { at: 'lathe', ...at },
    strength: strengthOf(cut),
  };
}

/** The leading figure of its answer: what is to be cut by how much. */
function worksheetStep(said: SaidNext, worksheetId: string, data: SheetData): NextStep {
  const address = { at: 'worksheet', jobId: data.job.id, worksheetId } as const;
  const worksheet = data.worksheets.find(({ id }) => id === worksheetId);
  const kind = worksheet && worksheetOf(worksheet.kind);
  if (!worksheet || !kind) return { ...said, address };
  const given = givenOf(worksheetDataOf(worksheet, data));
  const [lead] = blocksOf(kind.account(given), 'lead');
  const strength = sayStrengthOfCuts(kind.cuts(given).flatMap(({ offers }) => offers)).join(' ');
  return lead
    ? { ...said, what: worksheet.title, more: `${lead.label} ${lead.figure} ${lead.unit}`, address, strength }
    : { ...said, address };
}
