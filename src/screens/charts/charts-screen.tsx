import type { ComponentType } from 'preact';
import { charts, hrefOf, type Chart } from '../address.ts';
import { Row } from '../common/row.tsx';
import { ClearanceChart } from './clearance-chart.tsx';
import { DrillChart } from './drill-chart.tsx';
import { FitsChart } from './fits-chart.tsx';
import { InsertChart } from './insert-chart.tsx';
import { MaterialsChart } from './materials-chart.tsx';
import { MeasuringToolsChart } from './measuring-tools-chart.tsx';
import { TapDrillChart } from './tap-drill-chart.tsx';
import './charts-screen.css';

type ChartEntry = { readonly name: string; readonly more: string; readonly Draw: ComponentType };

const CHARTS: Readonly<Record<Chart, ChartEntry>> = {
  drills: {
    name: 'Sizes and drills',
    more: 'any size in inches and mm, the drills on both sides',
    Draw: DrillChart,
  },
  'tap-drills': {
    name: 'Tap drills',
    more: 'for any percentage of thread',
    Draw: TapDrillChart,
  },
  inserts: {
    name: 'Thread inserts',
    more: 'drill and hole for a wire thread insert',
    Draw: InsertChart,
  },
  'clearance-holes': {
    name: 'Clearance holes',
    more: 'close, normal and loose for bolts and screws',
    Draw: ClearanceChart,
  },
  fits: {
    name: 'Fits',
    more: 'every class at one size, inch and metric',
    Draw: FitsChart,
  },
  materials: {
    name: 'Materials',
    more: 'expansion, stiffness, cutting speeds, strength',
    Draw: MaterialsChart,
  },
  'measuring-tools': {
    name: 'Measuring tools',
    more: 'how far each may err',
    Draw: MeasuringToolsChart,
  },
};

/** The charts on the wall: sizes and drills first, the others one press away. */
export function ChartsScreen({ chart }: { chart: Chart | 'list' }) {
  const entry = chart === 'list' ? undefined : CHARTS[chart];
  return (
    <div class={chart === 'drills' ? 'pad-screen' : undefined}>
      <nav class="charts-tabs" aria-label="Charts">
        <a
          href={hrefOf({ at: 'charts', chart: 'drills' })}
          aria-current={chart === 'drills' ? 'page' : undefined}
        >
          {CHARTS.drills.name}
        </a>
        <a href={hrefOf({ at: 'charts', chart: 'list' })} aria-current={tabState(chart)}>
          More charts
        </a>
      </nav>
      {entry ? <entry.Draw /> : <ChartList />}
    </div>
  );
}

function tabState(chart: Chart | 'list'): 'page' | 'true' | undefined {
  if (chart === 'list') return 'page';
  return chart === 'drills' ? undefined : 'true';
}

function ChartList() {
  return (
    <main aria-label="All charts">
      <h1 class="unseen">All charts</h1>
      <ul>
        {charts.map((chart) => (
          <li key={chart}>
            <Row
              title={CHARTS[chart].name}
              detail={CHARTS[chart].more}
              href={hrefOf({ at: 'charts', chart })}
            />
          </li>
        ))}
      </ul>
    </main>
  );
}
