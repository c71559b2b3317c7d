import type { Route } from '../../../engine/worksheets/hole-and-pin/hole-and-pin-routes.ts';
import {
  compareRoutes,
  type ComparedRoute,
} from '../../../engine/worksheets/hole-and-pin/route-comparison.ts';
import { ROUTE_STATES } from '../../../engine/worksheets/hole-and-pin/say-routes.ts';
import { SOMETHING_WEAKER } from '../../../engine/cut/say-strength.ts';
import {
  sayComparison,
  type SaidComparison,
} from '../../../engine/worksheets/hole-and-pin/say-routes-comparison.ts';
import type { ShownUnit } from '../../../engine/length/show.ts';
import './route-table.css';

const COLUMNS = [
  { name: 'restores', words: 'Restores' },
  { name: 'metal', words: 'Metal' },
  { name: 'tools', words: 'Tools' },
  { name: 'undo', words: 'Undone?' },
  { name: 'goesWrong', words: 'Goes wrong' },
] as const satisfies readonly { name: keyof SaidComparison; words: string }[];

type RouteTableProps = { readonly routes: readonly Route[]; readonly unit: ShownUnit };

/** The cures beside each other; those ruled out are one press further. */
export function RouteTable({ routes, unit }: RouteTableProps) {
  const compared = compareRoutes(routes);
  const open = compared.filter(({ state }) => state !== 'out');
  const ruledOut = compared.filter(({ state }) => state === 'out');
  return (
    <div class="route-table">
      {open.length > 0 && <Comparison label="Ways that are open" routes={open} unit={unit} />}
      {open.length > 0 && <p>{SOMETHING_WEAKER}</p>}
      {ruledOut.length > 0 && (
        <details class="route-table-out" open={open.length === 0}>
          <summary>{`Ruled out: ${ruledOut.length}`}</summary>
          <Comparison label="Ways that are ruled out" routes={ruledOut} unit={unit} />
        </details>
      )}
    </div>
  );
}

type ComparisonProps = {
  readonly label: string;
  readonly routes: readonly ComparedRoute[];
  readonly unit: ShownUnit;
};

// On a phone a row is a card and has no head: each figure has its label beside it.
function Comparison({ label, routes, unit }: ComparisonProps) {
  return (
    <table class="route-table-one" aria-label={label}>
      <thead>
        <tr>
          <th scope="col">Way</th>
          {COLUMNS.map(({ name, words }) => (
            <th scope="col" key={name}>
              {words}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {routes.map((route) => {
          const said = sayComparison(route, unit);
          return (
            <tr key={route.kind} data-state={route.state}>
              <th scope="row">
                {said.title} <small>{ROUTE_STATES[route.state]}</small>
              </th>
              {COLUMNS.map(({ name, words }) => (
                <td key={name}>
                  <span class="route-table-label">{words}</span>
                  <span>{keptTogether(said[name])}</span>
                </td>
              ))}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** A figure never stands on another line than its unit. */
function keptTogether(text: string): string {
  return text.replace(/(\d) (in|mm)\b/g, '$1\u00a0$2');
}
