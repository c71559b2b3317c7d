import { marked } from '../../engine/length/decimal-text.ts';
import { cutName } from '../../engine/thread/tap-name.ts';
import { plus, sum } from '../../engine/length/length.ts';
import { onDial } from '../../engine/length/metal-on.ts';
import { asTyped, figure, show } from '../../engine/length/show.ts';
import { hrefOf } from '../address.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { PadScreen } from '../common/pad-screen.tsx';
import { isUnitKey } from '../common/pad-text.ts';
import { SizePad } from '../common/size-pad.tsx';
import { usePadSize } from '../common/use-settings.ts';
import { meant, type useMeasured } from './use-measured.ts';
import type { LatheCut } from './use-lathe-cut.ts';
import './measured-pad.css';

type MeasuredPadProps = {
  readonly at: LatheCut;
  readonly measured: ReturnType<typeof useMeasured>;
};

/** "I measured": the size just read on the part, typed or gauged, and what was cut before it. */
export function MeasuredPad({ at, measured }: MeasuredPadProps) {
  const padSize = usePadSize();
  const { cut, job, progress } = at;
  const { half, unit, message, tool, toolIsUsual } = measured;
  const last = progress.present && figure(progress.present, unit);
  return (
    <PadScreen
      title="I measured"
      subtitle={`${cutName(cut)} · ${tool ? `${tool.name}${toolIsUsual ? ', usual' : ''}` : 'no tool in Shop measures this'}`}
      back={{ href: hrefOf({ at: 'lathe', jobId: job.id, cutId: cut.id }), to: 'the lathe' }}
      aside={
        tool && (
          <LinkButton href={hrefOf({ at: 'lathe', jobId: job.id, cutId: cut.id, field: 'tool' })}>
            Tool
          </LinkButton>
        )
      }
    >
      <p class="measured-pad-caution">Spindle stopped?</p>
      <SizePad
        label="Size measured"
        half={half}
        padSize={padSize}
        twoPlaces
        onChange={(next) => {
          measured.change(next);
          if (isUnitKey(next, half.unit)) measured.changeMeasuring({ unit: next.unit });
        }}
        commit={{ text: 'Log it', onPress: measured.commit }}
        {...(last !== undefined && {
          resting: { figure: last, unit, note: 'measured last' },
        })}
        {...(message && { message: <Message measured={measured} message={message} /> })}
      >
        {!message?.slip && !message?.against && <CutBeforeKeys at={at} measured={measured} />}
      </SizePad>
    </PadScreen>
  );
}

/** What the dial was asked for before this measurement: it is guessed from the size, and said by a press. */
function CutBeforeKeys({ at, measured }: MeasuredPadProps) {
  const { cut, dial, dialUnit, dialled, progress } = at;
  if (!progress.next || !progress.present) return null;
  const all = sum(dialled);
  const figureOf = dialUnit === measured.unit ? figure : show;
  const words = (take: typeof all) => figureOf(onDial(cut.of, dial, take), dialUnit);
  const hasDialled = dialled.length > 0;
  return (
    <div class="measured-pad-before" role="group" aria-label="Cut before this measurement">
      <Button chosen={measured.cutBefore === 'shown'} onPress={() => measured.sayCutBefore('shown')}>
        cut {words(hasDialled ? plus(all, progress.next.asked) : progress.next.asked)}
      </Button>
      <Button chosen={measured.cutBefore === 'dialled'} onPress={() => measured.sayCutBefore('dialled')}>
        {hasDialled ? `cut ${words(all)}` : 'no cut'}
      </Button>
    </div>
  );
}

type MessageProps = Pick<MeasuredPadProps, 'measured'> & {
  readonly message: NonNullable<MeasuredPadProps['measured']['message']>;
};

/** Why a size can't be taken, or whether it was a slip. */
export function Message({ measured, message: { sentence, slip, against } }: MessageProps) {
  return (
    <>
      <p role="alert">{sentence}</p>
      {slip && (
        <p class="measured-pad-choice">
          <Button onPress={() => measured.settle(slip, 'meant')}>
            Log {asTyped(meant(slip.question, slip.entry))}
          </Button>
          <Button onPress={() => measured.settle(slip, 'typed')}>Keep {marked(slip.entry.typed)}</Button>
        </p>
      )}
      {against && (
        <p class="measured-pad-choice">
          <Button onPress={() => measured.settleBetween(against, 'before')}>
            {asTyped(against.before)} is wrong: strike it out
          </Button>
          <Button onPress={() => measured.settleBetween(against, 'now')}>
            {asTyped(against.now)} is wrong: measure again
          </Button>
        </p>
      )}
    </>
  );
}
