import { marked } from '../../engine/length/decimal-text.ts';
import type { Slide } from '../../engine/cut/dial.ts';
import { readEntry, type Entry } from '../../engine/length/entry.ts';
import { isMore, lengthOf, sameLength, times } from '../../engine/length/length.ts';
import { saySlide } from '../../engine/cut/say-cuts.ts';
import { asTyped, show } from '../../engine/length/show.ts';
import type { KeptSlide } from '../../store/base/records.ts';
import { changeSetting } from '../../store/kept/settings.ts';
import { go, hrefOf } from '../address.ts';
import { AskedSize } from '../common/asked-size.tsx';
import { Button } from '../common/button.tsx';
import { Choice } from '../common/choice.tsx';
import { PadScreen } from '../common/pad-screen.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { keptSlide, SLIDE_NAMES, SLIDES, withSlide } from '../common/slides.ts';
import { useStore } from '../common/store-context.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { useSizeDraft } from '../common/use-draft.ts';
import { useDial, usualDial } from '../common/use-dial.ts';
import { NumberEntry } from '../worksheets/number-entry.tsx';
import './lathe-speeds.css';

// Usual graduations of a lathe's dials. Common practice, no source.
const GRADUATIONS: readonly string[] = [
  '.0005 in',
  '.001 in',
  '.002 in',
  '.005 in',
  '0.01 mm',
  '0.02 mm',
  '0.05 mm',
  '0.1 mm',
];
const MARKS = { least: 2, most: 2000, unit: 'marks', whole: true } as const;
// Chosen, not published: a slide looser than this is to be mended, not reckoned with.
const MOST_BACKLASH = lengthOf('3 mm');

/** The slide a field of Shop is about: `slide-compound`, `marks-compound`, `backlash-compound`; `dial-marks` the cross slide's. */
export function slideField(
  field: string,
): { readonly what: 'slide' | 'marks' | 'backlash'; readonly slide: Slide } | undefined {
  if (field === 'dial-marks') return { what: 'marks', slide: 'cross' };
  const [, what, name] = /^(slide|marks|backlash)-(.+)$/.exec(field) ?? [];
  const slide = SLIDES.find((one) => one === name);
  if (!slide) return undefined;
  return what === 'slide' || what === 'marks' || what === 'backlash' ? { what, slide } : undefined;
}

export function SlideFieldScreen({ what, slide }: NonNullable<ReturnType<typeof slideField>>) {
  if (what === 'slide') return <SlideScreen slide={slide} />;
  return what === 'marks' ? <MarksScreen slide={slide} /> : <BacklashScreen slide={slide} />;
}

/** What a slide's dial is, in a line: `.001 in a mark, 125 marks: .125 in a turn`. */
export function slideWords(kept: KeptSlide | undefined): string {
  if (!kept) return 'not given: no turns are counted';
  const { graduation, marksPerTurn } = kept;
  const mark = `${asTyped(graduation)} a mark`;
  if (marksPerTurn === undefined) return `${mark}, no turns are counted`;
  const unit = graduation.unit === 'mm' ? 'mm' : 'in';
  return `${mark}, ${marksPerTurn} marks: ${show(times(graduation.exact, marksPerTurn), unit)} a turn`;
}

function useSlide(slide: Slide) {
  const store = useStore();
  const kept = keptSlide(useDial(), slide);
  const answer = useTold();
  const keep = (change: (now: KeptSlide) => KeptSlide) =>
    answer.told(
      changeSetting(store, 'dial', (dial = usualDial) =>
        withSlide(dial, slide, change(slideOnly(keptSlide(dial, slide) ?? usualDial))),
      ),
    );
  return { kept, keep, answer };
}

// The cross slide's dial is kept together with the other slides'.
function slideOnly({ graduation, marksPerTurn, backlash }: KeptSlide): KeptSlide {
  return {
    graduation,
    ...(marksPerTurn !== undefined && { marksPerTurn }),
    ...(backlash && { backlash }),
  };
}

function SlideScreen({ slide }: { slide: Slide }) {
  const { kept, keep, answer } = useSlide(slide);
  const choose = (text: string) => {
    const entry = readEntry(text, { unit: 'in' });
    if (entry.ok) void keep((now) => ({ ...now, graduation: entry.value }));
  };
  return (
    <Page
      title={SLIDE_NAMES[slide]}
      subtitle={slideWords(kept)}
      back={{ href: hrefOf({ at: 'shop' }), to: 'the shop' }}
    >
      <Choice title="One mark of its dial moves it by">
        {GRADUATIONS.map((text) => (
          <Button
            key={text}
            chosen={kept !== undefined && sameLength(kept.graduation.exact, lengthOf(text))}
            onPress={() => choose(text)}
          >
            {marked(text)}
          </Button>
        ))}
      </Choice>
      <ul>
        <li>
          <Row
            href={hrefOf({ at: 'shop', field: `marks-${slide}` })}
            title="Marks round the dial"
            detail={
              kept?.marksPerTurn === undefined ? 'not given' : 'past one turn a setting is said in turns'
            }
            {...(kept?.marksPerTurn !== undefined && { figure: String(kept.marksPerTurn) })}
          />
        </li>
        <li>
          <Row
            href={hrefOf({ at: 'shop', field: `backlash-${slide}` })}
            title="Backlash"
            detail={kept?.backlash ? 'how far it turns before it moves' : 'not given'}
            {...(kept?.backlash && { figure: asTyped(kept.backlash) })}
          />
        </li>
      </ul>
      <Trouble>{answer.trouble}</Trouble>
    </Page>
  );
}

/** How many marks the dial has round its ring: past one turn a setting is said in turns. */
function MarksScreen({ slide }: { slide: Slide }) {
  const { kept, keep, answer } = useSlide(slide);
  const marks = kept?.marksPerTurn;
  const use = async (next: number | undefined) => {
    const isKept = await keep(({ marksPerTurn: _now, ...rest }) => ({
      ...rest,
      ...(next !== undefined && { marksPerTurn: next }),
    }));
    if (isKept) go({ at: 'shop' });
    return isKept;
  };
  return (
    <PadScreen
      title="Marks round the dial"
      subtitle={`in one whole turn of the ${saySlide(slide)}`}
      back={{ href: hrefOf({ at: 'shop' }), to: 'the shop' }}
      aside={marks !== undefined && <Button onPress={() => use(undefined)}>Leave out</Button>}
    >
      <div class="lathe-speeds">
        <p>{marks === undefined ? 'None given: settings are not said in turns.' : `It has ${marks} now.`}</p>
      </div>
      <NumberEntry
        label="Marks round the dial"
        draftKey={`lathe-rpm/${slide === 'cross' ? 'dial-marks' : `marks-${slide}`}`}
        bounds={MARKS}
        onNumber={(count) => use(Number(count))}
      />
      <Trouble>{answer.trouble}</Trouble>
    </PadScreen>
  );
}

/** How far the handle turns before the slide moves, read on its own dial. */
function BacklashScreen({ slide }: { slide: Slide }) {
  const { kept, keep, answer } = useSlide(slide);
  const unit = (kept ?? usualDial).graduation.unit === 'mm' ? 'mm' : 'in';
  const draft = useSizeDraft(`backlash/${slide}`, unit);
  const leaveOut = async () => {
    if (await keep(({ backlash: _now, ...rest }) => rest)) go({ at: 'shop' });
  };
  const take = async (backlash: Entry) => {
    if (isMore(backlash.exact, MOST_BACKLASH))
      return answer.say(
        `No more than ${show(MOST_BACKLASH, unit)}: a slide looser than that wants its nut seen to.`,
      );
    if (!(await keep((now) => ({ ...now, backlash })))) return undefined;
    draft.clear();
    return go({ at: 'shop' });
  };
  return (
    <PadScreen
      title="Backlash"
      subtitle={`how far the ${saySlide(slide)} turns before it moves`}
      back={{ href: hrefOf({ at: 'shop' }), to: 'the shop' }}
      aside={kept?.backlash && <Button onPress={() => void leaveOut()}>Leave out</Button>}
    >
      <AskedSize label="Backlash" draft={draft} answer={answer} onSize={take} />
    </PadScreen>
  );
}
