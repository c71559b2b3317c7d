import { marked } from '../../engine/length/decimal-text.ts';
import { saySlide } from '../../engine/cut/say-cuts.ts';
import { mostRpm } from '../../engine/cut/tables/cut-speeds.ts';
import { changeSetting } from '../../store/kept/settings.ts';
import { hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { Choice } from '../common/choice.tsx';
import { Row } from '../common/row.tsx';
import { useSayAloud } from '../common/speech.ts';
import { keptSlide, SLIDE_NAMES, SLIDES } from '../common/slides.ts';
import { saidIfRefused } from '../common/said-if-refused.ts';
import { useStore } from '../common/store-context.ts';
import { useDial, usualDial } from '../common/use-dial.ts';
import { useLathe } from '../common/use-settings.ts';
import { slideWords } from './slide-screens.tsx';

/** What the lathe has, and whether its screen reads the next figure out. */
export function LathePart() {
  return (
    <section class="shop-part">
      <h2>At the lathe</h2>
      <LatheRows />
      <LengthsBy />
      <ReadOut />
    </section>
  );
}

/** Its speeds and its slides' dials, each leading to where it is given. */
function LatheRows() {
  const lathe = useLathe();
  const dial = useDial();
  const speeds = lathe?.speedsRpm ?? [];
  return (
    <ul>
      <li>
        <Row
          href={hrefOf({ at: 'shop', field: 'speeds' })}
          title="Speeds it has"
          detail={speeds.length === 0 ? 'none given: any speed up to the most' : speeds.join(' · ')}
        />
      </li>
      <li>
        <Row
          href={hrefOf({ at: 'shop', field: 'most-rpm' })}
          title="Most it may turn"
          detail={
            lathe?.mostRpm === undefined
              ? `not given: nothing is offered over ${mostRpm['chuck-not-given']} rpm`
              : 'with the chuck and the work it usually holds'
          }
          {...(lathe?.mostRpm !== undefined && { figure: `${marked(lathe.mostRpm)} rpm` })}
        />
      </li>
      {SLIDES.map((slide) => (
        <li key={slide}>
          <Row
            href={hrefOf({ at: 'shop', field: `slide-${slide}` })}
            title={`${SLIDE_NAMES[slide]}’s dial`}
            detail={slideWords(keptSlide(dial, slide))}
          />
        </li>
      ))}
    </ul>
  );
}

function LengthsBy() {
  const store = useStore();
  const dial = useDial();
  const choose = (lengthsBy: 'compound' | 'lead-screw') =>
    void saidIfRefused(changeSetting(store, 'dial', (kept) => ({ ...(kept ?? usualDial), lengthsBy })));
  return (
    <Choice title="A length is cut by">
      {(['compound', 'lead-screw'] as const).map((slide) => (
        <Button key={slide} chosen={dial.lengthsBy === slide} onPress={() => choose(slide)}>
          {saySlide(slide)}
        </Button>
      ))}
    </Choice>
  );
}

function ReadOut() {
  const aloud = useSayAloud();
  if (!aloud) return <p>This phone has no voice to read the next dial setting out with.</p>;
  return (
    <Choice title="The next dial setting is read out">
      <Button chosen={aloud.isOn} onPress={() => aloud.change(true)}>
        aloud
      </Button>
      <Button chosen={!aloud.isOn} onPress={() => aloud.change(false)}>
        not read out
      </Button>
    </Choice>
  );
}
