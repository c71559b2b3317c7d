import { marked } from '../../engine/length/decimal-text.ts';
import { readEntry } from '../../engine/length/entry.ts';
import {
  drillsAround,
  type Drill,
  type DrillNeighbours,
  type DrillSeries,
} from '../../engine/thread/drill-series.ts';
import { exactDecimalText, isMore, zero, type Length } from '../../engine/length/length.ts';
import { sayEntry } from '../../engine/length/say.ts';
import { figure, show, type ShownUnit } from '../../engine/length/show.ts';
import { fractionEcho } from '../common/size-echo.ts';
import { SizePad } from '../common/size-pad.tsx';
import { useSizeDraft } from '../common/use-draft.ts';
import { usePadSize, useShownUnit } from '../common/use-settings.ts';
import './drill-chart.css';

const SERIES: Record<DrillSeries, string> = {
  fraction: 'Fraction',
  letter: 'Letter',
  number: 'Number',
  metric: 'Metric',
};

/** Any size: what it is in the other unit, exactly, and the drill below and above it in every series. */
export function DrillChart() {
  const unit = useShownUnit();
  const padSize = usePadSize();
  const draft = useSizeDraft('charts/drills', unit);
  const entry = readEntry(draft.half.typed, { unit: draft.half.unit });
  const size = entry.ok && isMore(entry.value.exact, zero) ? entry.value.exact : undefined;
  return (
    <main class="page-main" aria-label="Sizes and drills">
      <h1 class="unseen">Sizes and drills</h1>
      {/* It scrolls on a short phone, so a keyboard has to reach it (WCAG 2.1.1). */}
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex */}
      <div class="drill-chart" role="region" aria-label="Drills around it" tabIndex={0}>
        {size ? (
          <Answer size={size} unit={entry.ok && entry.value.unit === 'mm' ? 'mm' : 'in'} />
        ) : (
          <Guide typed={draft.half.typed} {...(!entry.ok && { sentence: sayEntry(entry.refusal) })} />
        )}
      </div>
      <SizePad
        label="Size to look up"
        half={draft.half}
        padSize={padSize}
        onChange={draft.change}
        echo={false}
      />
    </main>
  );
}

function Guide({ typed, sentence }: { typed: string; sentence?: string }) {
  // While a size is being typed it is often not one yet: "29/" is on its way, not wrong.
  const onTheWay = /^[0-9]* ?[0-9]*\/?$|[.,]$/.test(typed);
  return (
    <p class="drill-chart-guide">
      {typed === '' || onTheWay || sentence === undefined
        ? 'Type a size: its other forms and the nearest drills stand here at once.'
        : sentence}
    </p>
  );
}

function Answer({ size, unit }: { size: Length; unit: ShownUnit }) {
  return (
    <>
      <p class="drill-chart-forms">
        <span>{`${marked(shortened(exactDecimalText(size, 'mm')))} mm`}</span>
        <span>{`${marked(shortened(exactDecimalText(size, 'in').replace(/^0\./, '.')))} in`}</span>
        <span>{fractionEcho(size)}</span>
      </p>
      <table class="drill-chart-table">
        <thead>
          <tr>
            <th scope="col">Drill</th>
            <th scope="col">below</th>
            <th scope="col">above</th>
          </tr>
        </thead>
        <tbody>
          {drillsAround(size).map((row) => (
            <SeriesRow key={row.series} row={row} unit={unit} />
          ))}
        </tbody>
      </table>
    </>
  );
}

function SeriesRow({ row, unit }: { row: DrillNeighbours; unit: ShownUnit }) {
  return (
    <tr data-exact={row.exact !== undefined}>
      <th scope="row">
        {SERIES[row.series]}
        {row.exact && <strong>{row.exact.name}</strong>}
      </th>
      <Side off={row.below} sign="−" unit={unit} />
      <Side off={row.above} sign="+" unit={unit} />
    </tr>
  );
}

function Side({
  off,
  sign,
  unit,
}: {
  off: { readonly drill: Drill; readonly by: Length } | undefined;
  sign: string;
  unit: ShownUnit;
}) {
  if (!off) return <td>none</td>;
  return (
    <td>
      <strong>{off.drill.name}</strong>
      <small
        aria-label={`${show(off.drill.size, unit)}, off by ${figure(off.by, unit)}`}
      >{`${sign}${figure(off.by, unit)}`}</small>
    </td>
  );
}

// A millimetre size in inches may never end; eight places are more than any drill has, and the dots say it goes on.
function shortened(decimal: string): string {
  const [whole = '', places = ''] = decimal.split('.');
  return places.length > 8 ? `${whole}.${places.slice(0, 8)}…` : decimal;
}
