import { useState } from 'preact/hooks';
import { readNumber, sayNumber, type NumberBounds } from '../../engine/length/number-entry.ts';
import type { KeptLathe } from '../../store/records.ts';
import { sayStore } from '../../store/say-store.ts';
import { changeSetting, putSetting } from '../../store/settings.ts';
import { go, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { SizePad } from '../common/size-pad.tsx';
import { useStore } from '../common/store-context.ts';
import { useSizeDraft } from '../common/use-draft.ts';
import { useLathe, usePadSize } from '../common/use-settings.ts';
import './lathe-speeds.css';

// Chosen, not published: no spindle of a shop lathe turns faster or slower.
const RPM = { least: 1, most: 20_000, unit: 'rpm' } as const;
const back = { href: hrefOf({ at: 'shop' }), to: 'the shop' };

/** The speeds the lathe's belts or levers give, typed one after the other; a press on one takes it out. */
export function SpeedsScreen() {
  const store = useStore();
  const lathe = useLathe();
  const [out, setOut] = useState<number>();
  const [trouble, setTrouble] = useState('');
  if (!lathe) return <Page title=" ">{null}</Page>;
  const keep = async (change: (speedsRpm: readonly number[]) => readonly number[]) => {
    const kept = await changeSetting(store, 'lathe', (now = lathe) => ({
      ...now,
      speedsRpm: [...new Set(change(now.speedsRpm))].toSorted((a, b) => a - b),
    }));
    setTrouble(kept.ok ? '' : sayStore(kept.refusal));
    return kept.ok;
  };
  const add = async (rpm: number) => {
    const isKept = await keep((speeds) => [...speeds, rpm]);
    if (isKept) announce(`${rpm} rpm is one of its speeds.`);
    setOut(undefined);
    return isKept;
  };
  const takeOut = async (rpm: number) => {
    if (!(await keep((speeds) => speeds.filter((one) => one !== rpm)))) return;
    setOut(rpm);
    announce(`Took out ${rpm} rpm. It can be put back.`);
  };
  return (
    <div class="pad-screen">
      <Page title="Speeds it has" subtitle="type each one; a press on a speed takes it out" back={back}>
        <div class="lathe-speeds">
          {lathe.speedsRpm.map((rpm) => (
            <Button key={rpm} label={`Take out ${rpm} rpm`} onPress={() => takeOut(rpm)}>
              {rpm}
            </Button>
          ))}
          {out !== undefined && (
            <Button kind="main" onPress={() => add(out)}>
              Put {out} back
            </Button>
          )}
          {lathe.speedsRpm.length === 0 && out === undefined && (
            <p>The speeds on the lathe’s plate go here, so that one it has is offered for each cut.</p>
          )}
        </div>
        <RpmPad label="A speed it has" name="speed" text="Add it" onRpm={add} />
        {trouble !== '' && (
          <p role="alert" class="text-field-trouble">
            {trouble}
          </p>
        )}
      </Page>
    </div>
  );
}

/** The most the lathe may turn. */
export function MostRpmScreen() {
  const store = useStore();
  const lathe = useLathe();
  const [trouble, setTrouble] = useState('');
  if (!lathe) return <Page title=" ">{null}</Page>;
  const keep = async (next: KeptLathe) => {
    const kept = await putSetting(store, 'lathe', next);
    if (kept.ok) go({ at: 'shop' });
    else setTrouble(sayStore(kept.refusal));
    return kept.ok;
  };
  const { mostRpm, ...rest } = lathe;
  return (
    <div class="pad-screen">
      <Page
        title="Most it may turn"
        subtitle="no cut is offered a faster speed"
        back={back}
        aside={mostRpm !== undefined && <Button onPress={() => keep(rest)}>Leave out</Button>}
      >
        <div class="lathe-speeds">
          <p>{mostRpm === undefined ? 'No limit is given.' : `It is ${mostRpm} rpm now.`}</p>
        </div>
        <RpmPad
          label="Most it may turn"
          name="most-rpm"
          text="Use it"
          onRpm={(rpm) => keep({ ...lathe, mostRpm: rpm })}
        />
        {trouble !== '' && (
          <p role="alert" class="text-field-trouble">
            {trouble}
          </p>
        )}
      </Page>
    </div>
  );
}

type RpmPadProps = {
  readonly label: string;
  readonly name: string;
  readonly text: string;
  readonly bounds?: NumberBounds;
  /** Whether it was kept: what wasn't stands in the field again. */
  readonly onRpm: (rpm: number) => Promise<boolean>;
};

/** A whole number of turns or marks, by the pad. */
export function RpmPad({ label, name, text, bounds = RPM, onRpm }: RpmPadProps) {
  const draft = useSizeDraft(`lathe-rpm/${name}`, 'mm');
  const padSize = usePadSize();
  const [trouble, setTrouble] = useState<string>();
  const commit = async () => {
    const { half } = draft;
    const number = readNumber(half.typed, bounds);
    if (!number.ok) return setTrouble(sayNumber(number.refusal));
    draft.clear();
    if (!(await onRpm(number.value.figure))) draft.putBack(half);
  };
  return (
    <SizePad
      label={label}
      half={draft.half}
      plain={bounds.unit}
      whole={bounds.whole === true}
      padSize={padSize}
      onChange={(half) => {
        setTrouble(undefined);
        draft.change(half);
      }}
      commit={{ text, onPress: commit }}
      {...(trouble !== undefined && { message: <p role="alert">{trouble}</p> })}
    />
  );
}
