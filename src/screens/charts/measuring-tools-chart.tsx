import { marked } from '../../engine/length/decimal-text.ts';
import { instrumentRows, type InstrumentRow } from '../../engine/reading/tables/instruments.ts';
import { Row } from '../common/row.tsx';
import '../worksheets/input-rows.css';

/** How far measuring tools may err by standard or maker, for setting up one's own in the shop. */
export function MeasuringToolsChart() {
  const names = [...new Set(instrumentRows.map(({ instrument }) => instrument))];
  return (
    <main aria-label="Measuring tools">
      <h1 class="charts-heading">Measuring tools</h1>
      <p class="charts-note">
        What standards and makers allow a tool to err. The paper of your own tool rules: set it in Shop.
      </p>
      {names.map((name) => (
        <section key={name} class="input-rows">
          <h2>{`${name.charAt(0).toUpperCase()}${name.slice(1)}`}</h2>
          <ul>
            {instrumentRows
              .filter(({ instrument }) => instrument === name)
              .map((row) => (
                <li key={`${row.range}/${row.resolution}/${row.source}`}>
                  <Row title={titleOf(row)} detail={sourceOf(row)} figure={limitOf(row)} />
                </li>
              ))}
          </ul>
        </section>
      ))}
    </main>
  );
}

function titleOf({ range, resolution }: InstrumentRow): string {
  return resolution === '' ? marked(range) : `${marked(range)}, reads ${marked(resolution)}`;
}

/** A plain figure is ±; what is said in words stands as it is said. */
function limitOf({ limit }: InstrumentRow): string {
  if (limit === '') return '';
  return marked(/^[\d.]/.test(limit) ? `±${limit}` : limit);
}

function sourceOf({ source, basis, note }: InstrumentRow): string {
  return [source, basis === 'memory' ? 'from memory, not looked up' : '', note]
    .filter((text) => text !== '')
    .join('; ');
}
