import { hrefOf } from '../address.ts';
import { Button, LinkButton } from '../common/button.tsx';
import type { KnownCheck } from './check-data.ts';
import { SeenKeys } from './seen-by-eye.tsx';
import './check-actions.css';

type CheckActionsProps = {
  readonly known: KnownCheck;
  readonly onRetake: () => unknown;
  readonly onWorksheet: () => unknown;
  readonly onSeen: (seen: 'holds' | 'fails') => void;
};

/** What comes next, under the thumb: the one thing to do, and what else can be done beside it. */
export function CheckActions(props: CheckActionsProps) {
  return (
    <div class="check-actions">
      {props.known.check.by === 'by-eye' ? <EyeActions {...props} /> : <ReadActions {...props} />}
    </div>
  );
}

function EyeActions({
  known: { state, takes, worksheet },
  onSeen,
  onRetake,
  onWorksheet,
}: CheckActionsProps) {
  const last = takes.at(-1);
  return (
    <>
      {last && <SeenKeys take={last} onSeen={onSeen} />}
      {state.last.kind === 'seen' && (
        <div class="check-actions-beside">
          <Button onPress={onRetake}>Take it again</Button>
          {state.found === 'no-good' && worksheet && (
            <Button onPress={onWorksheet}>Back to the worksheet</Button>
          )}
        </div>
      )}
    </>
  );
}

function ReadActions({ known, onRetake, onWorksheet }: CheckActionsProps) {
  const { check, state, worksheet } = known;
  const again = <Button onPress={onRetake}>Take it again</Button>;
  if (hasNoLimits(known))
    return (
      <>
        <LinkButton kind="main" href={hrefOf(place(known, 'upper'))}>
          Give its limits
        </LinkButton>
        <Beside known={known} />
      </>
    );
  if (state.found === 'no-good')
    return (
      <>
        {worksheet ? (
          <Button kind="main" onPress={onWorksheet}>
            {check.sizeName === undefined
              ? 'Back to the worksheet'
              : 'Back to the worksheet with this reading'}
          </Button>
        ) : (
          <Button kind="main" onPress={onRetake}>
            Take it again
          </Button>
        )}
        <Beside known={known}>{worksheet && again}</Beside>
      </>
    );
  if (state.found === 'good')
    return (
      <>
        {standsOnEarlier(known) && (
          <Button kind="main" onPress={onWorksheet}>
            Give the worksheet this reading
          </Button>
        )}
        <Beside known={known}>{again}</Beside>
      </>
    );
  return (
    <LinkButton kind="main" href={padHref(known)}>
      {state.found === 'too-close' ? 'Log another reading' : 'Log a reading'}
    </LinkButton>
  );
}

function Beside({
  known,
  children,
}: {
  readonly known: KnownCheck;
  readonly children?: preact.ComponentChildren;
}) {
  return (
    <div class="check-actions-beside">
      <LinkButton href={padHref(known)}>Log a reading</LinkButton>
      {children}
    </div>
  );
}

function hasNoLimits({ limits }: KnownCheck): boolean {
  return limits.lower === undefined && limits.upper === undefined;
}

/** Whether the worksheet was given what an earlier go read: since then it has been put right. */
function standsOnEarlier({ check, takes, worksheet }: KnownCheck): boolean {
  const input = check.sizeName === undefined ? undefined : worksheet?.sizes[check.sizeName];
  const last = takes.at(-1);
  return (
    input?.from === 'feature' &&
    takes.some(({ featureId }) => featureId === input.featureId) &&
    last?.featureId !== input.featureId
  );
}

function place({ check: { jobId, id } }: KnownCheck, field: string) {
  return { at: 'check', jobId, checkId: id, field } as const;
}

/** The pad that its readings are logged with; the way back leads here. */
export function padHref({ check: { jobId, id }, takes }: KnownCheck): string {
  const featureId = takes.at(-1)?.featureId ?? '';
  return hrefOf({ at: 'feature', jobId, featureId, choosing: `check/${id}` });
}
