import { marked } from '../../engine/length/decimal-text.ts';
import { asTyped, show, type ShownUnit } from '../../engine/length/show.ts';
import type { Direction } from '../../engine/reading/reading.ts';
import type { ReadingRecord } from '../../store/base/records.ts';
import { hrefOf } from '../address.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { PadScreen } from '../common/pad-screen.tsx';
import { SizePad } from '../common/size-pad.tsx';
import { usePadSize, useShownUnit } from '../common/use-settings.ts';
import { hasDirections, hasPlaces } from './feature-kinds.ts';
import { formOfReadings } from './feature-summary.ts';
import { PlaceKeys } from './place-keys.tsx';
import { ReadingsPanel } from './readings-panel.tsx';
import { readingFigure } from './reading-figure.ts';
import { useProofNote, type ProofNote } from './use-proof-note.ts';
import { StepKey } from './step-key.tsx';
import { meantEntry, useReading, type ReadingAsked } from './use-reading.ts';
import { WhichStands } from './which-stands.tsx';
import './reading-pad.css';

type ReadingPadProps = ReadingAsked & {
  /** Where it was opened from (`for/<worksheet>`), kept in the addresses behind the pad; empty from the readings. */
  readonly from: string;
  readonly back: { readonly href: string; readonly to: string };
  /** Where a foot switch steps on to: the next feature, or back to the worksheet. */
  readonly onNext?: (() => void) | undefined;
};

/** The screen that is propped at the lathe: type or gauge a size, log it, see what the readings prove. */
export function ReadingPad({ from, back, onNext, ...asked }: ReadingPadProps) {
  const { job, feature, readings, measuring } = asked;
  const unit = useShownUnit();
  const padSize = usePadSize();
  const reading = useReading(asked);
  const { message, counted } = reading;
  const note = useProofNote(feature, measuring?.tool);
  const last = counted.at(-1);
  const behind = (what: 'tool' | 'all') => {
    const choosing = [from, what].filter((part) => part !== '').join('/');
    return hrefOf({ at: 'feature', jobId: job.id, featureId: feature.id, choosing });
  };
  const contradiction =
    reading.half.typed === ''
      ? formOfReadings(feature.kind, readings, feature.material)?.contradictions[0]
      : undefined;
  const whichStands =
    contradiction && !message ? <WhichStands contradiction={contradiction} unit={unit} /> : undefined;
  return (
    <PadScreen
      title={feature.name}
      subtitle={`${toolWords(measuring, unit)} · ${job.name}`}
      back={back}
      aside={<ToolKey measuring={measuring} href={behind('tool')} />}
    >
      {!message && !contradiction && (
        <ReadingsPanel
          job={job}
          feature={feature}
          readings={readings}
          all={behind('all')}
          note={note?.said}
        />
      )}
      <SizePad
        readWith={measuring && (measuring.isUsual ? `usual: ${measuring.tool.name}` : measuring.tool.name)}
        label={
          reading.step.goes
            ? `${feature.name}: which doesn’t go?`
            : `${feature.name}, reading ${counted.length + 1}`
        }
        asks={reading.step.goes ? 'Which doesn’t go?' : ''}
        half={reading.half}
        padSize={padSize}
        onChange={reading.change}
        commit={{ text: 'Log reading', onPress: reading.commit }}
        onNext={onNext}
        resting={last && reading.isLastShown ? restingOf(last, reading, unit, note?.verdict) : undefined}
        message={message ? <MessageLine message={message} onSettle={reading.settle} /> : whichStands}
      >
        {hasPlaces(feature.kind) && !message?.slip && <ReadingKeys {...asked} reading={reading} />}
      </SizePad>
    </PadScreen>
  );
}

type Measuring = ReadingAsked['measuring'];

function toolWords(measuring: Measuring, unit: ShownUnit): string {
  if (!measuring) return 'no tool in Shop measures this';
  const { tool, isUsual } = measuring;
  return `${tool.name} ±${show(tool.mpe, unit)}${isUsual ? ', usual' : ''}`;
}

function ToolKey({ measuring, href }: { measuring: Measuring; href: string }) {
  if (measuring) return <LinkButton href={href}>Tool</LinkButton>;
  return <LinkButton href={hrefOf({ at: 'shop' })}>Shop</LinkButton>;
}

type KeysProps = ReadingAsked & { readonly reading: ReturnType<typeof useReading> };

/** Where the reading is taken; with leaves and plugs also which one doesn't go. */
function ReadingKeys({ feature: { kind }, measuring, onMeasuring, reading }: KeysProps) {
  const unit = useShownUnit();
  const { step } = reading;
  return (
    <PlaceKeys
      {...(measuring?.place && { place: measuring.place })}
      {...(measuring?.direction && { direction: measuring.direction })}
      onPlace={(place) => onMeasuring({ place })}
      {...(hasDirections(kind) && {
        onDirection: (direction: Direction | 'none') => onMeasuring({ direction }),
      })}
    >
      {step.isInSteps && measuring && (
        <StepKey
          kind={kind}
          tool={measuring.tool}
          typed={reading.typed}
          goes={step.goes}
          unit={unit}
          onGoes={step.next}
          onBack={step.back}
        />
      )}
    </PlaceKeys>
  );
}

type Reading = ReturnType<typeof useReading>;

function restingOf(
  last: ReadingRecord,
  { counted, fromGauge }: Reading,
  unit: ShownUnit,
  verdict: ProofNote['verdict'],
) {
  const note = `logged, reading ${counted.length}${last.id === fromGauge ? ' · gauge' : ''}`;
  return { figure: readingFigure(last, unit), unit, note, verdict };
}

type MessageLineProps = {
  readonly message: NonNullable<Reading['message']>;
  readonly onSettle: Reading['settle'];
};

function MessageLine({ message: { sentence, slip }, onSettle }: MessageLineProps) {
  return (
    <>
      <p role="alert">{sentence}</p>
      {slip && (
        <p class="reading-pad-choice">
          <Button onPress={() => onSettle(slip, 'meant')}>
            Log {asTyped(meantEntry(slip.question, slip.entry))}
          </Button>
          <Button onPress={() => onSettle(slip, 'typed')}>Keep {marked(slip.entry.typed)}</Button>
        </p>
      )}
    </>
  );
}
