import type { CheckFound } from '../reading/check.ts';
import type { SignOffStep, WorksheetFound, SignOffQuestion } from './sign-off-question.ts';
import { type FindingCode, type Finding, finding } from './finding.ts';
import { hoursOf, hoursLeft } from './locker-cure.ts';

export function unreadableFindings({ unreadable = 0 }: SignOffQuestion): readonly Finding[] {
  return unreadable === 0 ? [] : [{ ...finding('unreadable', '', { at: 'job' }), count: unreadable }];
}

export function worksheetFindings({ worksheets = [] }: SignOffQuestion): readonly Finding[] {
  return worksheets.flatMap(({ id, title, found, said, used, checked, assumed, ofAnother, as }) => {
    const code = codeOfWorksheet(found, { used, checked: checked === true });
    const place = { at: 'worksheet', id } as const;
    if (found === 'good' && ofAnother)
      return [
        {
          ...finding('worksheet-of-another', title, place, as),
          said: ofAnother.words,
          field: ofAnother.field,
        },
      ];
    if (found === 'good' && assumed)
      return [
        { ...finding('worksheet-assumed', title, place, as), said: assumed.words, field: assumed.field },
      ];
    return code === undefined ? [] : [{ ...finding(code, title, place, as), said }];
  });
}

function codeOfWorksheet(
  found: WorksheetFound,
  { used, checked }: { readonly used: boolean; readonly checked: boolean },
): FindingCode | undefined {
  switch (found) {
    case 'no-good':
      return 'worksheet-no-good';
    case 'too-close':
      return 'worksheet-too-close';
    case 'no-answer':
      return used ? 'worksheet-no-answer' : 'worksheet-unused';
    case 'not-judged':
      return checked ? undefined : 'worksheet-not-judged';
    case 'good':
      return undefined;
    default:
      return found satisfies never;
  }
}

export function stepFindings({ steps, now }: SignOffQuestion, safetyCritical: boolean): readonly Finding[] {
  if (steps.length === 0) return [finding('no-steps', '', { at: 'assembly' })];
  const torqued = steps.some(({ torque }) => torque !== undefined);
  return [
    ...(safetyCritical && !torqued
      ? [finding('no-torque-step', '', { at: 'assembly' }, `${steps.length}`)]
      : []),
    ...steps.flatMap((step, index) =>
      codesOfStep(step, now).map((code) => ({
        ...finding(code, step.text, { at: 'step', id: step.id }, step.as),
        number: index + 1,
        ...(code === 'locker-curing' && { hoursLeft: hoursLeft(step, now) }),
      })),
    ),
  ];
}

function codesOfStep(step: SignOffStep, now: number): readonly FindingCode[] {
  const { locker } = step;
  const torque = lackOfTorque(step);
  return [
    ...(step.doneAt === undefined ? (['step-not-done'] as const) : []),
    ...(step.doneAt !== undefined && step.changed === true ? (['step-changed'] as const) : []),
    ...(torque === undefined ? [] : [torque]),
    ...(hoursLeft(step, now) > 0 ? (['locker-curing'] as const) : []),
    ...(locker !== undefined && hoursOf(step.cureHours) === undefined ? (['no-cure-time'] as const) : []),
  ];
}

// Without the figure there is nothing yet whose source could be named.
function lackOfTorque({ torque }: SignOffStep): FindingCode | undefined {
  if (!torque) return undefined;
  // A figure of nothing holds nothing.
  if (!/[1-9]/.test(torque.typed)) return 'no-torque-figure';
  return torque.source.trim() === '' ? 'no-torque-source' : undefined;
}

export function partFindings({ parts }: SignOffQuestion): readonly Finding[] {
  return parts
    .filter(({ isMockUp }) => isMockUp)
    .map(({ id, name, as }) => finding('mock-up-in', name, { at: 'part', id }, as));
}

const CHECK_CODES: Readonly<Record<CheckFound, FindingCode | undefined>> = {
  'not-done': 'check-not-done',
  'no-good': 'check-failed',
  'too-close': 'check-too-close',
  good: undefined,
};

export function checkFindings(
  { checks, unchecked }: SignOffQuestion,
  safetyCritical: boolean,
): readonly Finding[] {
  const missing = unchecked
    .filter(({ used }) => used || safetyCritical)
    .map(({ id, title, used, as }) => {
      const found = finding(used ? 'check-missing' : 'check-offered', title, { at: 'fit-up' }, as);
      return { ...found, key: `${found.key} ${id ?? title}` };
    });
  // A job that can't kill needs no check; one that can needs one even where no worksheet asks for it.
  const none =
    safetyCritical && checks.length === 0 && !unchecked.some(({ used }) => used)
      ? [finding('no-check', '', { at: 'fit-up' })]
      : [];
  const found = checks.flatMap(({ id, name, found: state, older, readBefore, as }) => {
    const code = CHECK_CODES[state];
    const place = { at: 'check', id } as const;
    return [
      ...(code === undefined ? [] : [finding(code, name, place, as)]),
      ...(older ? [finding('check-older', name, place, as)] : []),
      ...(readBefore === true ? [finding('check-read-before', name, place, as)] : []),
    ];
  });
  return [...none, ...missing, ...found];
}

export function cutFindings({ cuts }: SignOffQuestion, safetyCritical: boolean): readonly Finding[] {
  return cuts.flatMap(({ id, name, state, older, tooCoarse, as }) => {
    const code = codeOfCut(state);
    const place = { at: 'cut', id } as const;
    const counts = state !== 'scrapped' && state !== 'made-again';
    return [
      ...(code === undefined ? [] : [finding(code, name, place, as)]),
      ...(older && counts ? [finding('cut-older', name, place, as)] : []),
      ...(safetyCritical && tooCoarse && state === 'to-size'
        ? [{ ...finding('cut-unproved', name, place, as), ...toolOf(tooCoarse), field: 'measured' }]
        : []),
    ];
  });
}

type TooCoarse = NonNullable<SignOffQuestion['cuts'][number]['tooCoarse']>;

function toolOf({ tool, isAssumed }: TooCoarse): Pick<Finding, 'said' | 'isAssumed'> {
  return { ...(tool !== undefined && { said: tool }), ...(isAssumed && { isAssumed }) };
}

function codeOfCut(state: SignOffQuestion['cuts'][number]['state']): FindingCode | undefined {
  switch (state) {
    case 'to-cut':
    case 'cutting':
      return 'cut-open';
    case 'over':
      return 'cut-over';
    case 'scrapped':
      return 'cut-scrapped';
    case 'to-size':
    case 'made-again':
      return undefined;
    default:
      return state satisfies never;
  }
}
