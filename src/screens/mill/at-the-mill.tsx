import { useState } from 'preact/hooks';
import type { OnWork } from '../../engine/cut/cut.ts';
import { COME_UP, MILL_CAUTION, sayEdgeFinder } from '../../engine/cut/mill-dial.ts';
import { sayHoleStep } from '../../engine/cut/say-cuts-hole.ts';
import { sayCoordinate } from '../../engine/cut/say-spot.ts';
import { sayStrengthOfCut } from '../../engine/cut/say-strength.ts';
import { dividedBy, isZero } from '../../engine/length/length.ts';
import { figure, type ShownUnit } from '../../engine/length/show.ts';
import { cutName } from '../../engine/thread/tap-name.ts';
import type { Cut } from '../../store/base/records.ts';
import { setMade } from '../../store/kept/mill-cuts.ts';
import { goInstead, hrefOf } from '../address.ts';
import { announce, tick } from '../common/announce.ts';
import { LinkButton } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { useTwoPlaces } from '../common/two-places.ts';
import { UndoKey } from '../common/undo-key.tsx';
import { useWakeLock } from '../common/wake-lock.ts';
import { OlderBasis } from '../cuts/cut-basis.tsx';
import { LeftToTake } from '../lathe/left-to-take.tsx';
import { Message } from '../lathe/measured-pad.tsx';
import { NextPass, Setting } from '../lathe/next-pass.tsx';
import { SpeedSetting } from '../lathe/speed-setting.tsx';
import type { LatheCut } from '../lathe/use-lathe-cut.ts';
import { useMeasured } from '../lathe/use-measured.ts';
import { DialSettings } from './dial-settings.tsx';
import { isDrilled, lastDrilled, nextHole, setFor, useAtMill, type AtMill } from './mill-hole.ts';
import { MillHoles, MillKeys } from './mill-keys.tsx';
import '../lathe/at-the-lathe.css';
import '../lathe/next-cut.css';
import './at-the-mill.css';

/** One hole fills the screen: where it stands, the dials, its tool and speed. Ticked, the next one is there. */
export function AtTheMill({ at }: { at: LatheCut }) {
  const mill = useAtMill(at.cut);
  const place = setFor(at.cut);
  if (!mill || !place) return <Page title=" ">{null}</Page>;
  return <HoleAtMill key={at.cut.id} at={at} mill={mill} place={place} />;
}

type HoleProps = { readonly at: LatheCut; readonly mill: AtMill; readonly place: OnWork };

// What was done here and can be taken back here, by how its words begin.
const OWN_ACTS = ['Drilled', 'Zero'] as const;

function HoleAtMill(props: HoleProps) {
  const { at, mill } = props;
  const { cut, job } = at;
  const measured = useMeasured(at, { isAloud: false, onLogged: () => goOn(mill, cut) });
  const drilling = useDrilling(at, mill);
  useWakeLock();
  const { holes } = mill;
  const here = holes.findIndex(({ id }) => id === cut.id) + 1;
  return (
    <Page
      title={cutName(cut)}
      subtitle={`${here} of ${holes.length}, ${holes.filter(isDrilled).length} drilled`}
      back={{ href: hrefOf({ at: 'cuts', jobId: job.id }), to: 'the cuts' }}
    >
      <div class="at-the-lathe at-the-mill">
        {at.older && <OlderBasis cut={cut} atTheLathe />}
        <PlaceRead {...props} measured={measured} drilling={drilling} />
        <div class="at-the-lathe-do">
          <ToSet {...props} unit={measured.unit} />
          <KeysAndNote cut={cut} measured={measured} drilling={drilling} />
        </div>
        <div class="at-the-mill-undo">
          {OWN_ACTS.map((begins) => (
            <UndoKey key={begins} jobId={job.id} only={begins} />
          ))}
          <LinkButton href={hrefOf({ at: 'lathe', jobId: job.id, cutId: cut.id, field: 'zero' })}>
            Zero was off
          </LinkButton>
        </div>
        <MillHoles holes={holes} here={cut.id} />
        <MillCautions at={at} mill={mill} unit={measured.unit} />
      </div>
    </Page>
  );
}

type Doing = {
  readonly measured: ReturnType<typeof useMeasured>;
  readonly drilling: ReturnType<typeof useDrilling>;
};

/** Both coordinates, to be read from the mill; the first is touched to light the key, and takes what a gauge types. */
function PlaceRead({ at: { cut }, place, measured, drilling }: HoleProps & Doing) {
  const { half, unit, message } = measured;
  return (
    <div class="at-the-lathe-read">
      <LeftToTake
        label={isDrilled(cut) ? 'x, drilled' : 'x'}
        figure={sayCoordinate(place.x, unit)}
        unit={unit}
        spoken={`${spokenPlace(place, unit)} Touch it to light the keys, or type the size just measured.`}
        isLit={drilling.isLit}
        half={half}
        isRefused={message !== undefined}
        onTouch={drilling.touch}
        onTyped={(typed) => {
          drilling.tell('');
          measured.change(typed);
        }}
        onLog={(by) => void measured.commit(by)}
        onNext={() => void drilling.drilled()}
        onHeld={() => drilling.tell(`${half.typed} is half typed: Enter behind its last digit logs it.`)}
      />
      <p class="at-the-mill-place" aria-hidden="true">
        <span class="left-to-take-label">y</span>
        <span class="at-the-mill-figure">{sayCoordinate(place.y, unit)}</span>
      </p>
    </div>
  );
}

/** What is set next: the dials, the tool, the spindle; and what runs through the hole first. */
function ToSet({ at, mill, place, unit }: HoleProps & { readonly unit: ShownUnit }) {
  const { cut, progress } = at;
  const steps = progress.hole?.ok ? progress.hole.value.steps : [];
  return (
    <div class="next-cut">
      <NextPass {...(mill.mill.reads === 'dials' && { note: COME_UP })}>
        <DialSettings mill={mill.mill} place={place} before={beforeOf(mill, cut)} unit={unit} />
        <Setting
          label={toolWord(cut)}
          figure={cut.drill?.replace(/ mm$/, '') ?? figure(cut.target.exact, unit)}
        />
        <SpeedSetting at={at} />
      </NextPass>
      {steps.length > 1 && (
        <ol class="next-cut-steps">
          {steps.map((step, index) => (
            <li key={index}>{sayHoleStep(step, unit)}</li>
          ))}
        </ol>
      )}
    </div>
  );
}

function toolWord({ drill, of }: Cut): string {
  if (of === 'recess-depth') return 'deep';
  return drill === undefined ? 'bore to' : 'drill';
}

function KeysAndNote({ cut, measured, drilling }: { readonly cut: Cut } & Doing) {
  const { message } = measured;
  return (
    <div class="at-the-lathe-keys">
      {(message !== undefined || drilling.note !== '') && (
        <div class="at-the-lathe-note">
          {message ? <Message measured={measured} message={message} /> : <p>{drilling.note}</p>}
        </div>
      )}
      <Trouble bare>{drilling.trouble}</Trouble>
      <MillKeys
        cut={cut}
        isDrilled={isDrilled(cut)}
        isLit={drilling.isLit}
        onDrilled={drilling.drilledByFinger}
      />
    </div>
  );
}

function spokenPlace({ x, y }: OnWork, unit: ShownUnit): string {
  return `x ${sayCoordinate(x, unit)}, y ${sayCoordinate(y, unit)} ${unit} from the zero.`;
}

function beforeOf({ holes }: AtMill, cut: Cut): OnWork | undefined {
  const before = lastDrilled(holes, cut.id);
  return before && setFor(before);
}

/** To the next hole that is left; with none, back to the cuts. */
function goOn({ holes }: AtMill, { id, jobId }: Cut): void {
  const next = nextHole(holes, id);
  goInstead(next ? { at: 'lathe', jobId, cutId: next.id } : { at: 'cuts', jobId });
}

const PLACE_FIRST = 'Touch the place first, then the key.';

/** Ticking a hole: two places for a finger, one key for a keyboard or a foot switch. */
function useDrilling({ cut }: LatheCut, mill: AtMill) {
  const store = useStore();
  const places = useTwoPlaces();
  const [note, setNote] = useState('');
  const { trouble, told } = useTold();
  const tell = (sentence: string) => {
    setNote(sentence);
    if (sentence !== '') announce(sentence);
  };
  const drilled = async () => {
    if (isDrilled(cut)) return goOn(mill, cut);
    places.dim();
    tick();
    await told(setMade(store, cut.id, true), () => {
      announce(`${cutName(cut)} ticked as drilled. It can be undone.`);
      goOn(mill, cut);
    });
    return undefined;
  };
  return {
    note,
    tell,
    trouble,
    isLit: places.isLit,
    drilled,
    drilledByFinger: (event: MouseEvent) => (places.takes(event) ? void drilled() : tell(PLACE_FIRST)),
    touch: () => {
      setNote('');
      places.light();
    },
  };
}

type CautionsProps = Pick<HoleProps, 'at' | 'mill'> & { readonly unit: ShownUnit };

/** How the zero is set while no hole is drilled, what it was shifted by, and what to mind. */
function MillCautions({ at: { cut }, mill: { mill, holes }, unit }: CautionsProps) {
  const { edgeFinder } = mill;
  const { zeroShift } = cut;
  const shifts = (['x', 'y'] as const).flatMap((axis) =>
    zeroShift && !isZero(zeroShift[axis].exact)
      ? [`Zero of ${axis} shifted by ${sayCoordinate(zeroShift[axis].exact, unit)}: it is in the figure.`]
      : [],
  );
  const sentences = [
    ...shifts,
    ...(holes.some(isDrilled)
      ? []
      : [
          edgeFinder
            ? sayEdgeFinder(dividedBy(edgeFinder.exact, 2), unit)
            : 'Set both zeros first. Edge finder: half its diameter lies between edge and spindle.',
        ]),
    MILL_CAUTION,
    sayStrengthOfCut(cut),
  ].filter((sentence) => sentence !== '');
  return (
    <aside class="at-the-lathe-cautions" aria-label="Cautions">
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </aside>
  );
}
