import { marked } from '../../engine/length/decimal-text.ts';
import { readEntry, type Entry } from '../../engine/length/entry.ts';
import { isMore, isZero, lengthOf, sameLength } from '../../engine/length/length.ts';
import { show } from '../../engine/length/show.ts';
import { go, hrefOf } from '../address.ts';
import { AskedSize } from '../common/asked-size.tsx';
import { Button } from '../common/button.tsx';
import { Choice } from '../common/choice.tsx';
import { MILL_AXES, MILL_NAMES, type MillAxis } from '../common/mill-slides.ts';
import { PadScreen } from '../common/pad-screen.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { useSizeDraft } from '../common/use-draft.ts';
import { changeMill, useMill } from '../common/use-mill.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { NumberEntry } from '../worksheets/number-entry.tsx';
import { slideWords } from './slide-screens.tsx';

// Usual marks of a mill's dials, and as many round one as the slides have. Common practice, no source.
const GRADUATIONS: readonly string[] = ['.001 in', '.0005 in', '0.02 mm', '0.01 mm', '0.025 mm', '0.05 mm'];
const MARKS = { least: 2, most: 2000, unit: 'marks', whole: true } as const;
// Chosen, not published: no edge finder of a shop has a thicker tip.
const MOST_TIP = lengthOf('1 in');
const toShop = { href: hrefOf({ at: 'shop' }), to: 'the shop' };

export type MillField =
  | { readonly is: 'dial' | 'marks'; readonly axis: MillAxis }
  | { readonly is: 'edge-finder' };

/** What of the mill a place of the shop is about; nothing where it is another place. */
export function millField(field: string): MillField | undefined {
  if (field === 'mill-edge-finder') return { is: 'edge-finder' };
  const [, marks, name] = /^mill-(marks-)?(x|y)$/.exec(field) ?? [];
  const axis = MILL_AXES.find((one) => one === name);
  return axis && { is: marks === undefined ? 'dial' : 'marks', axis };
}

export function MillFieldScreen({ of }: { readonly of: MillField }) {
  switch (of.is) {
    case 'dial':
      return <DialScreen axis={of.axis} />;
    case 'marks':
      return <MarksScreen axis={of.axis} />;
    case 'edge-finder':
      return <EdgeFinderScreen />;
    default:
      return of satisfies never;
  }
}

type AxisProps = { readonly axis: MillAxis };

function DialScreen({ axis }: AxisProps) {
  const store = useStore();
  const mill = useMill();
  const { trouble, told } = useTold();
  const slide = mill[axis];
  const choose = (text: string) => {
    const entry = readEntry(text, { unit: 'in' });
    if (!entry.ok) return;
    const { exact, typed, unit } = entry.value;
    void told(
      changeMill(store, mill, (now) => ({
        ...now,
        [axis]: { ...now[axis], graduation: { exact, typed, unit } },
      })),
    );
  };
  return (
    <Page title={MILL_NAMES[axis]} subtitle={slideWords(slide)} back={toShop}>
      <Choice title="One mark of its dial moves it by">
        {GRADUATIONS.map((text) => (
          <Button
            key={text}
            chosen={sameLength(slide.graduation.exact, lengthOf(text))}
            onPress={() => choose(text)}
          >
            {marked(text)}
          </Button>
        ))}
      </Choice>
      <ul>
        <li>
          <Row
            href={hrefOf({ at: 'shop', field: `mill-marks-${axis}` })}
            title="Marks round the dial"
            detail={
              slide.marksPerTurn === undefined ? 'not given: no turns are counted' : 'of one whole turn'
            }
            {...(slide.marksPerTurn !== undefined && { figure: String(slide.marksPerTurn) })}
          />
        </li>
      </ul>
      <Trouble>{trouble}</Trouble>
    </Page>
  );
}

function MarksScreen({ axis }: AxisProps) {
  const store = useStore();
  const mill = useMill();
  const { trouble, told } = useTold();
  const marks = mill[axis].marksPerTurn;
  const keep = (count: number) =>
    told(
      changeMill(store, mill, (now) => ({ ...now, [axis]: { ...now[axis], marksPerTurn: count } })),
      () => go({ at: 'shop', field: `mill-${axis}` }),
    );
  return (
    <PadScreen title="Marks round the dial" subtitle={MILL_NAMES[axis]} back={toShop}>
      <div class="lathe-speeds">
        <p>{marks === undefined ? 'None given: settings are not said in turns.' : `It has ${marks} now.`}</p>
      </div>
      <NumberEntry
        label="Marks round the dial"
        draftKey={`mill-marks/${axis}`}
        bounds={MARKS}
        onNumber={(count) => keep(Number(count))}
      />
      <Trouble>{trouble}</Trouble>
    </PadScreen>
  );
}

function EdgeFinderScreen() {
  const store = useStore();
  const mill = useMill();
  const unit = useShownUnit();
  const draft = useSizeDraft('mill/edge-finder', unit);
  const answer = useTold();
  const take = ({ exact, typed, unit: typedIn }: Entry) => {
    if (isZero(exact)) return answer.say('Its tip is more than nothing.');
    if (isMore(exact, MOST_TIP)) return answer.say(`No more than ${show(MOST_TIP, unit)}: check the figure.`);
    return answer.told(
      changeMill(store, mill, (now) => ({ ...now, edgeFinder: { exact, typed, unit: typedIn } })),
      () => {
        draft.clear();
        go({ at: 'shop' });
      },
    );
  };
  return (
    <PadScreen title="Edge finder’s tip" subtitle="its diameter, as measured" back={toShop}>
      <AskedSize label="Diameter of the edge finder’s tip" draft={draft} answer={answer} onSize={take} />
    </PadScreen>
  );
}
