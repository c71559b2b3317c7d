import { useState } from 'preact/hooks';
import { readEntry, type Entry } from '../../engine/length/entry.ts';
import { asTyped, show, type ShownUnit } from '../../engine/length/show.ts';
import { isZero, type Length } from '../../engine/length/length.ts';
import { canMeasure, type MeasuringTool } from '../../engine/reading/measuring-tool.ts';
import {
  goesInSteps,
  slipQuestion,
  type Direction,
  type SlipQuestion,
} from '../../engine/reading/reading.ts';
import { sayOutOfRange, saySlipQuestion } from '../../engine/reading/say-readings.ts';
import { sayEntry } from '../../engine/length/say.ts';
import { logReading } from '../../store/readings.ts';
import type { Feature, Job, ReadingRecord } from '../../store/records.ts';
import { sayStore } from '../../store/say-store.ts';
import { hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import type { TypedBy } from '../common/hands-free.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { isUnitKey } from '../common/pad-text.ts';
import { SizePad } from '../common/size-pad.tsx';
import { useStore } from '../common/store-context.ts';
import { useSizeDraft } from '../common/use-draft.ts';
import { usePadSize, useShownUnit } from '../common/use-settings.ts';
import { roundedEntry } from '../cuts/entry-of-length.ts';
import { hasDirections, hasPlaces } from './feature-kinds.ts';
import { formOfReadings } from './feature-summary.ts';
import { PlaceKeys } from './place-keys.tsx';
import { ReadingsPanel } from './readings-panel.tsx';
import { readingFigure } from './reading-figure.ts';
import { StepKey, stepFault } from './step-key.tsx';
import type { useMeasuring } from './use-measuring.ts';
import { WhichStands } from './which-stands.tsx';
import { warmthToKeep } from './warmth.ts';
import { isZeroChecked } from './zero-checks.ts';
import './reading-pad.css';

type ReadingPadProps = {
  readonly job: Job;
  readonly feature: Feature;
  readonly readings: readonly ReadingRecord[];
  readonly measuring: ReturnType<typeof useMeasuring>['measuring'];
  /** Where it was opened from (`for/<worksheet>`), kept in the addresses behind the pad; empty from the readings. */
  readonly from: string;
  readonly back: { readonly href: string; readonly to: string };
  readonly onMeasuring: ReturnType<typeof useMeasuring>['change'];
  /** Where a foot switch steps on to: the next feature, or back to the worksheet. */
  readonly onNext?: (() => void) | undefined;
};

type Message = {
  readonly sentence: string;
  readonly slip?: { readonly question: SlipQuestion; readonly entry: Entry; readonly by: TypedBy };
};

/** The screen that is propped at the lathe: type or gauge a size, log it, see what the readings prove. */
export function ReadingPad({
  job,
  feature,
  readings,
  measuring,
  from,
  back,
  onMeasuring,
  onNext,
}: ReadingPadProps) {
  const store = useStore();
  const unit = useShownUnit();
  const padSize = usePadSize();
  const draftKey = `feature/${feature.id}`;
  const draft = useSizeDraft(draftKey, measuring?.unit ?? unit);
  const [message, setMessage] = useState<Message>();
  const [fromGauge, setFromGauge] = useState<string>();
  const behind = (what: 'tool' | 'all') =>
    hrefOf({
      at: 'feature',
      jobId: job.id,
      featureId: feature.id,
      choosing: [from, what].filter((part) => part !== '').join('/'),
    });
  const counted = readings.filter((reading) => !reading.struckOut);
  const last = counted.at(-1);
  const [goes, setGoes] = useState<Entry>();
  const inSteps = measuring !== undefined && goesInSteps(measuring.tool);
  const typedNow = readEntry(draft.half.typed, { unit: draft.half.unit });
  const contradiction =
    draft.half.typed === '' ? formOfReadings(feature.kind, readings)?.contradictions[0] : undefined;

  const keep = async (entry: Entry, by: TypedBy, stops?: Entry) => {
    if (!measuring)
      return setMessage({
        sentence: 'No tool in Shop measures this. Put one back there first; what is typed stays here.',
      });
    if (!canMeasure(measuring.tool, feature.kind, triedSize(measuring.tool, entry, stops)))
      return setMessage({ sentence: `${sayOutOfRange(measuring.tool, entry, unit)} Press Tool.` });
    // Emptied at once, so that a gauge can type the next one; the stored draft goes in the transaction that logs it.
    const typed = draft.half;
    draft.lift();
    setMessage(undefined);
    setGoes(undefined);
    const logged = await logReading(store, {
      featureId: feature.id,
      jobId: job.id,
      entry,
      tool: measuring.tool,
      ...(stops && { stops }),
      ...(hasPlaces(feature.kind) && measuring.place && { place: measuring.place }),
      ...(hasDirections(feature.kind) && measuring.direction && { direction: measuring.direction }),
      ...warmthToKeep(job, feature, Date.now()),
      zeroChecked: isZeroChecked(measuring.tool.id, Date.now()),
      draftKey,
    });
    if (!logged.ok) {
      draft.putBack(typed);
      if (stops) setGoes(entry);
      return setMessage({ sentence: `${asTyped(entry)} was not logged. ${sayStore(logged.refusal)}` });
    }
    if (by === 'gauge') setFromGauge(logged.value.id);
    announce(
      `Logged ${spoken(entry)}${stops ? ` goes, ${spoken(stops)} doesn’t` : ''}, reading ${counted.length + 1} of ${feature.name}${by === 'gauge' ? ', from the gauge' : ''}.`,
    );
  };
  const commit = (by: TypedBy) => {
    const entry = readEntry(draft.half.typed, { unit: draft.half.unit });
    if (!entry.ok) return setMessage({ sentence: sayEntry(entry.refusal) });
    if (goes && inSteps) {
      const fault = stepFault(feature.kind, goes, entry.value);
      return fault === undefined ? void keep(goes, by, entry.value) : setMessage({ sentence: fault });
    }
    const question = slipQuestion(
      entry.value.exact,
      counted.map((reading) => reading.exact),
    );
    if (question)
      return setMessage({
        sentence: saySlipQuestion(question, entry.value),
        slip: { question, entry: entry.value, by },
      });
    return void keep(entry.value, by);
  };
  return (
    <div class="pad-screen">
      <Page
        title={feature.name}
        subtitle={`${measuring ? `${measuring.tool.name} ±${show(measuring.tool.mpe, unit)}${measuring.isUsual ? ', usual' : ''}` : 'no tool in Shop measures this'} · ${job.name}`}
        back={back}
        aside={
          measuring ? (
            <LinkButton href={behind('tool')}>Tool</LinkButton>
          ) : (
            <LinkButton href={hrefOf({ at: 'shop' })}>Shop</LinkButton>
          )
        }
      >
        {!message && !contradiction && (
          <ReadingsPanel
            job={job}
            feature={feature}
            readings={readings}
            all={behind('all')}
            {...(measuring && { tool: measuring.tool })}
          />
        )}
        <SizePad
          readWith={measuring && (measuring.isUsual ? `usual: ${measuring.tool.name}` : measuring.tool.name)}
          label={
            goes && inSteps
              ? `${feature.name}: which doesn’t go?`
              : `${feature.name}, reading ${counted.length + 1}`
          }
          half={draft.half}
          padSize={padSize}
          onChange={(half) => {
            setMessage(undefined);
            draft.change(half);
            if (isUnitKey(half, measuring?.unit)) onMeasuring({ unit: half.unit });
          }}
          commit={{ text: 'Log reading', onPress: commit }}
          onNext={onNext}
          {...(last && { resting: restingOf(last, counted.length, unit, last.id === fromGauge) })}
          {...(!message &&
            contradiction && {
              message: <WhichStands contradiction={contradiction} unit={unit} />,
            })}
          {...(message && {
            message: (
              <MessageLine
                message={message}
                onMeant={(slip) => keep(meantEntry(slip.question, slip.entry), slip.by)}
                onAsTyped={(slip) => keep(slip.entry, slip.by)}
              />
            ),
          })}
        >
          {hasPlaces(feature.kind) && !message?.slip && (
            <PlaceKeys
              {...(measuring?.place && { place: measuring.place })}
              {...(measuring?.direction && { direction: measuring.direction })}
              onPlace={(place) => onMeasuring({ place })}
              {...(hasDirections(feature.kind) && {
                onDirection: (direction: Direction | 'none') => onMeasuring({ direction }),
              })}
            >
              {inSteps && measuring && (
                <StepKey
                  kind={feature.kind}
                  tool={measuring.tool}
                  typed={typedNow.ok && draft.half.typed !== '' ? typedNow.value : undefined}
                  goes={goes}
                  unit={unit}
                  onGoes={(entry) => {
                    setGoes(entry);
                    draft.change({ ...draft.half, typed: '' });
                  }}
                  onBack={() => {
                    if (goes) draft.change({ typed: goes.typed, unit: goes.unit });
                    setGoes(undefined);
                  }}
                />
              )}
            </PlaceKeys>
          )}
        </SizePad>
      </Page>
    </div>
  );
}

/** What the tool's range is asked for: where no leaf goes, the one that was tried. */
function triedSize(tool: MeasuringTool, { exact }: Entry, stops: Entry | undefined): Length {
  if (!goesInSteps(tool) || !isZero(exact)) return exact;
  return stops?.exact ?? tool.least ?? exact;
}

function restingOf(last: ReadingRecord, count: number, unit: ShownUnit, isFromGauge: boolean) {
  const note = `logged, reading ${count}${isFromGauge ? ' · gauge' : ''}`;
  return { figure: readingFigure(last, unit), unit, note };
}

/** As typed, but for a comma: every screen says a size with a point. */
function spoken(entry: Entry): string {
  return entry.typed.includes(',') ? show(entry.exact, entry.unit) : asTyped(entry);
}

// What the size would be without the slip, written out, since it was not typed so.
function meantEntry(question: SlipQuestion, typed: Entry): Entry {
  return roundedEntry(question.meant, typed.unit === 'thou' ? 'in' : typed.unit, 'nearest');
}

type MessageLineProps = {
  readonly message: Message;
  readonly onMeant: (slip: NonNullable<Message['slip']>) => unknown;
  readonly onAsTyped: (slip: NonNullable<Message['slip']>) => unknown;
};

function MessageLine({ message: { sentence, slip }, onMeant, onAsTyped }: MessageLineProps) {
  return (
    <>
      <p role="alert">{sentence}</p>
      {slip && (
        <p class="reading-pad-choice">
          <Button onPress={() => onMeant(slip)}>Log {asTyped(meantEntry(slip.question, slip.entry))}</Button>
          <Button onPress={() => onAsTyped(slip)}>Keep {slip.entry.typed}</Button>
        </p>
      )}
    </>
  );
}
