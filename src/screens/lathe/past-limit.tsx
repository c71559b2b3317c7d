import { sayWayOut } from '../../engine/ways-out/say-cuts-ways.ts';
import { sayOver } from '../../engine/cut/say-cuts.ts';
import { asTyped, type ShownUnit } from '../../engine/length/show.ts';
import type { WayOut } from '../../engine/ways-out/ways-out-kinds.ts';
import { strikeOutPass } from '../../store/kept/cut-passes.ts';
import { go } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { VerdictMark } from '../common/verdict-band.tsx';
import { leadOut } from './lead-out.ts';
import type { LatheCut } from './use-lathe-cut.ts';
import { useWaysOut } from './ways-out-at.ts';
import './past-limit.css';

type PastLimitProps = { readonly at: LatheCut; readonly unit: ShownUnit };

/** Past the limit: loud, in word, mark and edge, over the whole screen. */
export function PastLimit() {
  return (
    <div class="past-limit">
      <VerdictMark kind="no-good" />
      <p class="past-limit-word">No good</p>
    </div>
  );
}

export function PastLimitSentence({ at: { question, progress }, unit }: PastLimitProps) {
  return <p class="past-limit-sentence">{sayOver(question, progress, unit)}</p>;
}

/** What can be done about it, each leading on; a wrong measurement is struck out here too. */
export function WaysOutRows({ at, unit }: PastLimitProps) {
  const store = useStore();
  const here = useWaysOut(at, unit);
  const { trouble, told, say } = useTold();
  const lead = async (way: WayOut) => {
    const led = await leadOut(store, at, { way, worksheet: here?.worksheet });
    if (led.ok) go(led.to);
    else say(led.why);
  };
  const strike = () => {
    const { last } = at;
    if (!last) return undefined;
    const [id, pass] = last;
    return told(strikeOutPass(store, at.cut.id, id, 'measured wrong'), () =>
      announce(`Struck out ${asTyped(pass.measured)}. Measure it again.`),
    );
  };
  return (
    <section class="past-limit-ways" aria-label="Ways out">
      <Trouble bare>{trouble}</Trouble>
      {at.last && (
        <div class="past-limit-strike">
          <Button onPress={() => strike()}>Measured wrong: strike out {asTyped(at.last[1].measured)}</Button>
        </div>
      )}
      <h2>Ways out</h2>
      <ul>
        {here?.ways.ways.map((way) => (
          <li key={way.kind}>
            <WayRow way={way} unit={unit} onPress={() => lead(way)} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function WayRow({ way, unit, onPress }: { way: WayOut; unit: ShownUnit; onPress: () => unknown }) {
  const { title, what, caution, strength } = sayWayOut(way, unit);
  const isOut = way.state === 'out';
  const canLead = !isOut || way.why.code === 'mate-not-known';
  return (
    <Row
      title={isOut ? `${title}: no` : title}
      detail={
        <>
          {what}
          {caution !== undefined && <span class="row-detail">{caution}</span>}
          {strength !== undefined && <span class="row-detail">{strength}</span>}
        </>
      }
      mark={<VerdictMark kind={isOut ? 'no-good' : 'good'} />}
      {...(canLead && { onPress })}
    />
  );
}
