import { useState } from 'preact/hooks';
import { figure, show } from '../../engine/length/show.ts';
import {
  clearanceRows,
  type ClearanceHole,
  type ClearanceRow,
  type HoleFit,
} from '../../engine/thread/tables/clearance-holes.ts';
import { Button } from '../common/button.tsx';
import { Row } from '../common/row.tsx';
import '../worksheets/input-rows.css';
import '../worksheets/thread-picker.css';

const FITS: readonly { readonly fit: HoleFit; readonly words: string }[] = [
  { fit: 'close', words: 'Close' },
  { fit: 'normal', words: 'Normal' },
  { fit: 'loose', words: 'Loose' },
];

/** The hole a bolt or screw passes through, in three fits. */
export function ClearanceChart() {
  const [fastener, setFastener] = useState<string>();
  const row = clearanceRows.find((one) => one.fastener === fastener);
  return (
    <main aria-label="Clearance holes">
      <h1 class="charts-heading">{row ? `Clearance holes, ${row.fastener}` : 'Clearance holes'}</h1>
      {row ? <HoleRows row={row} /> : <p class="charts-note">Press the size of the bolt or screw.</p>}
      <div class="thread-picker">
        {(['in', 'mm'] as const).map((unit) => (
          <section key={unit}>
            <h2>{unit === 'in' ? 'Inch' : 'Metric'}</h2>
            <div
              class="thread-picker-sizes"
              role="group"
              aria-label={unit === 'in' ? 'Inch sizes' : 'Metric sizes'}
            >
              {clearanceRows
                .filter((one) => one.unit === unit)
                .map((one) => (
                  <Button
                    key={one.fastener}
                    chosen={one.fastener === fastener}
                    onPress={() => setFastener(one.fastener)}
                  >
                    {one.fastener}
                  </Button>
                ))}
            </div>
          </section>
        ))}
      </div>
    </main>
  );
}

function HoleRows({ row }: { row: ClearanceRow }) {
  return (
    <section class="input-rows" aria-live="polite">
      <ul>
        {FITS.map(({ fit, words }) => {
          const hole = row.holes[fit];
          return (
            <li key={fit}>
              <Row
                title={words}
                detail={holeWords(hole, row)}
                figure={hole.drill ?? show(hole.least, row.unit)}
              />
            </li>
          );
        })}
      </ul>
      <p class="charts-note">
        {row.standard}
        {FITS.some(({ fit }) => row.holes[fit].basis === 'memory') && '; some of it from memory'}
      </p>
    </section>
  );
}

function holeWords({ least, most, toleranceClass, drill }: ClearanceHole, { unit }: ClearanceRow): string {
  if (most)
    return `${drill === undefined ? '' : 'drill; '}hole ${figure(least, unit)} to ${show(most, unit)}`;
  return `least, and its tolerance ${toleranceClass} over it`;
}
