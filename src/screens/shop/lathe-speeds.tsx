import { marked } from '../../engine/length/decimal-text.ts';
import { useState } from 'preact/hooks';
import type { KeptLathe } from '../../store/base/records.ts';
import { changeSetting, putSetting } from '../../store/kept/settings.ts';
import { go, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import { PadScreen } from '../common/pad-screen.tsx';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';
import { useLathe } from '../common/use-settings.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { NumberEntry } from '../worksheets/number-entry.tsx';
import './lathe-speeds.css';

// Chosen, not published: no spindle of a shop lathe turns faster or slower.
const RPM = { least: 1, most: 20_000, unit: 'rpm' } as const;
const back = { href: hrefOf({ at: 'shop' }), to: 'the shop' };

/** The speeds the lathe's belts or levers give, typed one after the other; a press on one takes it out. */
export function SpeedsScreen() {
  const store = useStore();
  const lathe = useLathe();
  const [out, setOut] = useState<number>();
  const { trouble, told } = useTold();
  if (!lathe) return <Page title=" ">{null}</Page>;
  const keep = (change: (speedsRpm: readonly number[]) => readonly number[]) =>
    told(
      changeSetting(store, 'lathe', (now = lathe) => ({
        ...now,
        speedsRpm: [...new Set(change(now.speedsRpm))].toSorted((a, b) => a - b),
      })),
    );
  const add = async (rpm: number) => {
    const isKept = await keep((speeds) => [...speeds, rpm]);
    if (isKept) announce(`${marked(rpm)} rpm is one of its speeds.`);
    setOut(undefined);
    return isKept;
  };
  const takeOut = async (rpm: number) => {
    if (!(await keep((speeds) => speeds.filter((one) => one !== rpm)))) return;
    setOut(rpm);
    announce(`Took out ${marked(rpm)} rpm. It can be put back.`);
  };
  return (
    <PadScreen title="Speeds it has" subtitle="type each one; a press on a speed takes it out" back={back}>
      <div class="lathe-speeds">
        {lathe.speedsRpm.map((rpm) => (
          <Button key={rpm} label={`Take out ${marked(rpm)} rpm`} onPress={() => takeOut(rpm)}>
            {marked(rpm)}
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
      <NumberEntry
        label="A speed it has"
        draftKey="lathe-rpm/speed"
        bounds={RPM}
        commit="Add it"
        onNumber={(rpm) => add(Number(rpm))}
      />
      <Trouble>{trouble}</Trouble>
    </PadScreen>
  );
}

/** The most the lathe may turn. */
export function MostRpmScreen() {
  const store = useStore();
  const lathe = useLathe();
  const { trouble, told } = useTold();
  if (!lathe) return <Page title=" ">{null}</Page>;
  const keep = (next: KeptLathe) => told(putSetting(store, 'lathe', next), () => go({ at: 'shop' }));
  const { mostRpm, ...rest } = lathe;
  return (
    <PadScreen
      title="Most it may turn"
      subtitle="no cut is offered a faster speed"
      back={back}
      aside={mostRpm !== undefined && <Button onPress={() => keep(rest)}>Leave out</Button>}
    >
      <div class="lathe-speeds">
        <p>{mostRpm === undefined ? 'No limit is given.' : `It is ${marked(mostRpm)} rpm now.`}</p>
      </div>
      <NumberEntry
        label="Most it may turn"
        draftKey="lathe-rpm/most-rpm"
        bounds={RPM}
        onNumber={(rpm) => keep({ ...lathe, mostRpm: Number(rpm) })}
      />
      <Trouble>{trouble}</Trouble>
    </PadScreen>
  );
}
