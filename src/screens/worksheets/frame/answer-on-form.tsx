import type { ComponentChildren, VNode } from 'preact';
import { isSafetyCritical } from '../../../engine/job/safety.ts';
import { blocksOf, withoutMetal } from '../../../engine/worksheets/account.ts';
import type { AnyWorksheet } from '../../../engine/worksheets/worksheet.ts';
import { hrefOf } from '../../address.ts';
import { LinkButton } from '../../common/button.tsx';
import { SafetyCaution } from '../../common/caution.tsx';
import { WorksheetChecks } from '../../fit-up/worksheet-checks.tsx';
import { extras } from '../all-extras.ts';
import { givenOf } from '../given-of.ts';
import { isCutSince, useCutSince } from '../cut-since.ts';
import { MadeSinceLead } from '../made-since.tsx';
import { ReadAgain, whereToRead } from '../read-again.tsx';
import { SinceCut, SinceCutAction } from '../since-cut.tsx';
import { ReadingDoubts } from '../reading-doubts.tsx';
import { WithAssumed } from '../said-assumed.tsx';
import { WarmthKey } from '../warm-sizes-screen.tsx';
import { doubtsOf, setAside, type WorksheetData } from '../worksheet-data.ts';
import { UndoChange } from '../undo-change.tsx';
import { AccountCaution } from './account-caution.tsx';
import { AccountOnPhone } from './account-on-phone.tsx';
import { countGiven, SizeRows } from './size-rows.tsx';

type AnswerProps = {
  readonly data: WorksheetData;
  readonly definition: AnyWorksheet;
  readonly page: (parts: {
    readonly aside: VNode;
    readonly foot?: VNode;
    readonly hasRows: boolean;
    readonly children: ComponentChildren;
  }) => VNode;
};

/** What a worksheet that lacks nothing comes to, with its one main key. */
export function AnswerOnForm({ data, definition, page }: AnswerProps) {
  const { job, worksheet } = data;
  const since = useCutSince(data);
  const answer = answerOf({ data, definition, isDone: since !== undefined && isCutSince(since) });
  const { onward, isDone } = answer;
  const foot =
    since && isDone ? (
      <SinceCutAction data={data} since={since} />
    ) : (
      onward && (
        <LinkButton kind="main" href={hrefToAsk(data, onward.field)}>
          {onward.key}
        </LinkButton>
      )
    );
  const about = hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id, field: 'about' });
  return page({
    aside: <LinkButton href={about}>About</LinkButton>,
    ...(foot && { foot }),
    hasRows: blocksOf(answer.account, 'rows').some(({ leads }) => leads),
    children: (
      <>
        <ReadingDoubts data={data} />
        {answer.given.parts.length > 0 && <MadeSinceLead data={data} />}
        {!since?.gapReadBefore && <ReadAgain data={data} names={answer.readBefore} />}
        <Account data={data} definition={definition} answer={answer} since={since} />
        <WarmthKey data={data} />
        {blocksOf(answer.account, 'extra').map(({ name }) => {
          const Extra = extras[name];
          return Extra && <Extra key={name} data={data} />;
        })}
        <Cautions answer={answer} />
        <WorksheetChecks data={data} />
        {(isSafetyCritical(job) || definition.canKill) && <SafetyCaution />}
        <UndoChange jobId={job.id} />
      </>
    ),
  });
}

type Asked = Pick<AnswerProps, 'data' | 'definition'> & {
  /** What it asks for was cut since. */
  readonly isDone: boolean;
};

type Answer = ReturnType<typeof answerOf>;

/** All that a worksheet says, and what its main key leads to. */
function answerOf({ data, definition, isDone }: Asked) {
  const given = givenOf(data);
  const ways = definition.cuts(given);
  const account = isDone ? withoutMetal(definition.account(given)) : definition.account(given);
  // What was worked out from readings that contradict each other is not handed to the machine.
  const canBeCut = ways.length > 0 && doubtsOf(data).length === 0;
  // One main key: what is asked first, else the cut.
  const [onward = canBeCut ? { field: 'cuts', key: 'Cut it' } : undefined] = blocksOf(account, 'ask');
  // What the main key asks to be read again isn't said twice.
  const readBefore = Object.keys(definition.fieldsFor(given)).filter(
    (name) => given.readBefore(name) !== undefined && name !== onward?.field,
  );
  return { given, account, onward, readBefore, isDone };
}

type AccountProps = Pick<AnswerProps, 'data' | 'definition'> & {
  readonly answer: Answer;
  readonly since: ReturnType<typeof useCutSince>;
};

function Account({ data, definition, answer: { account, given, isDone }, since }: AccountProps) {
  const { job, worksheet, unit } = data;
  return (
    <WithAssumed data={data}>
      <AccountOnPhone
        account={account}
        unit={unit}
        {...(since && isDone && { inPlace: <SinceCut data={data} since={since} /> })}
        hrefFor={(field) => hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id, field })}
        sizes={{ count: countGiven(definition, given), rows: <SizeRows data={data} kind={definition} /> }}
      />
    </WithAssumed>
  );
}

/** What to mind of its cuts. */
function Cautions({ answer: { account } }: { readonly answer: Answer }) {
  return (
    <>
      {blocksOf(account, 'strength').map(({ sentence }) => (
        <p key={sentence} class="account-said">
          {sentence}
        </p>
      ))}
      {blocksOf(account, 'caution').map((block) => (
        <AccountCaution key={block.of} of={block.of} />
      ))}
    </>
  );
}

/** Where a size or a choice is given; what was read before a part was changed, where it was read. */
function hrefToAsk(data: WorksheetData, field: string): string {
  const aside = setAside(data, [field]);
  const { job, worksheet } = data;
  return aside
    ? whereToRead(data, aside)
    : hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id, field });
}
