import { slidesFor, type Slide } from '../../engine/cut/dial.ts';
import { saySlide } from '../../engine/cut/say-cuts.ts';
import { show } from '../../engine/length/show.ts';
import { changeSetting } from '../../store/kept/settings.ts';
import { hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { keptSlide } from '../common/slides.ts';
import { saidIfRefused } from '../common/said-if-refused.ts';
import { useStore } from '../common/store-context.ts';
import { useDial, usualDial } from '../common/use-dial.ts';
import type { LatheCut } from './use-lathe-cut.ts';
import './slide-choice.css';

/** Which slide makes a length: asked once and kept. */
export function SlideChoice({ at }: { at: LatheCut }) {
  return isSlideAsked(at) ? <WhichSlide at={at} /> : null;
}

/** Until it is said, nothing else is: no dial can be set. */
export function isSlideAsked({ dial, progress }: LatheCut): boolean {
  return dial.slide === 'to-choose' && progress.next !== undefined;
}

/** What is to be minded of the one that was chosen, where anything is: below the dial, which is read first. */
export function SlideNote({ at }: { at: LatheCut }) {
  const { slide } = at.dial;
  if (slide === undefined || slide === 'to-choose' || !at.progress.next) return null;
  return <AboutSlide at={at} slide={slide} />;
}

function WhichSlide({ at }: { at: LatheCut }) {
  const store = useStore();
  const choose = (lengthsBy: 'compound' | 'lead-screw') =>
    void saidIfRefused(changeSetting(store, 'dial', (kept) => ({ ...(kept ?? usualDial), lengthsBy })));
  return (
    <div class="slide-choice">
      <p class="slide-choice-asked">Which slide makes it?</p>
      <div class="slide-choice-keys" role="group" aria-label="Which slide makes it">
        {slidesFor(at.cut.of).map(
          (one) =>
            one !== 'cross' && (
              <Button key={one} onPress={() => choose(one)}>
                {saySlide(one)}
              </Button>
            ),
        )}
      </div>
    </div>
  );
}

function AboutSlide({ at, slide }: { at: LatheCut; slide: Slide }) {
  const own = keptSlide(useDial(), slide);
  const { backlash } = at.dial;
  const href = hrefOf({ at: 'shop', field: `slide-${slide}` });
  if (own && !backlash) return null;
  return (
    <p class="slide-choice">
      {own && backlash ? (
        `Gone past? Back off over ${show(backlash, at.dialUnit)}, come up again.`
      ) : (
        <a href={href}>Give its dial, for turns</a>
      )}
    </p>
  );
}
