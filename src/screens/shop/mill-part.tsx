import { asTyped } from '../../engine/length/show.ts';
import { hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { Choice } from '../common/choice.tsx';
import { MILL_AXES, MILL_NAMES } from '../common/mill-slides.ts';
import { Row } from '../common/row.tsx';
import { saidIfRefused } from '../common/said-if-refused.ts';
import { useStore } from '../common/store-context.ts';
import { changeMill, useMill } from '../common/use-mill.ts';
import { slideWords } from './slide-screens.tsx';

/** How the mill is set: by its dials or by a readout, and what finds its edges. */
export function MillPart() {
  const store = useStore();
  const mill = useMill();
  const reads = (by: 'dials' | 'readout') =>
    void saidIfRefused(changeMill(store, mill, (now) => ({ ...now, reads: by })));
  return (
    <section class="shop-part">
      <h2>At the mill</h2>
      <Choice title="Its slides are set by">
        <Button chosen={mill.reads === 'dials'} onPress={() => reads('dials')}>
          their dials
        </Button>
        <Button chosen={mill.reads === 'readout'} onPress={() => reads('readout')}>
          a digital readout
        </Button>
      </Choice>
      <ul>
        {mill.reads === 'dials' &&
          MILL_AXES.map((axis) => (
            <li key={axis}>
              <Row
                href={hrefOf({ at: 'shop', field: `mill-${axis}` })}
                title={MILL_NAMES[axis]}
                detail={slideWords(mill[axis])}
              />
            </li>
          ))}
        <li>
          <Row
            href={hrefOf({ at: 'shop', field: 'mill-edge-finder' })}
            title="Edge finder’s tip"
            detail={mill.edgeFinder ? 'half of it lies between edge and spindle' : 'not given'}
            {...(mill.edgeFinder && { figure: asTyped(mill.edgeFinder) })}
          />
        </li>
      </ul>
    </section>
  );
}
