import { useState } from 'preact/hooks';
import type { Route } from '../../engine/worksheets/hole-and-pin/hole-and-pin-routes.ts';
import { ROUTE_STATES, sayRoute, type SaidRoute } from '../../engine/worksheets/hole-and-pin/say-routes.ts';
import { createWorksheet } from '../../store/worksheets.ts';
import { sayStore } from '../../store/say-store.ts';
import { go, hrefOf } from '../address.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { useStore } from '../common/store-context.ts';
import { VerdictMark, type VerdictKind } from '../common/verdict-band.tsx';
import type { WorksheetData } from './worksheet-data.ts';
import { RouteTable } from './route-table.tsx';
import { threadInsertPlan } from './thread-insert-plan.ts';
import './route-rows.css';

const MARKS: Record<Route['state'], VerdictKind> = { in: 'good', ask: 'too-close', out: 'no-good' };

/** Every way to cure the joint, best first, ruled-out ones last with the reason. */
export function RouteRows({ data, routes }: { data: WorksheetData; routes: readonly Route[] }) {
  const store = useStore();
  const [trouble, setTrouble] = useState('');
  const [comparing, setComparing] = useState(false);
  const { job, worksheet, unit } = data;
  const useInsert = async () => {
    const { bore, wall, thickness } = worksheet.sizes;
    const { thread } = worksheet.choices;
    const made = await createWorksheet(store, {
      jobId: job.id,
      kind: 'thread-insert',
      title: `${threadInsertPlan.name}, ${worksheet.title}`,
      sizes: { ...(bore && { hole: bore }), ...(wall && { wall }), ...(thickness && { thickness }) },
      choices: { ...threadInsertPlan.choices, ...(thread !== undefined && { thread }) },
    });
    if (made.ok) go({ at: 'worksheet', jobId: job.id, worksheetId: made.value.id });
    else setTrouble(sayStore(made.refusal));
  };
  return (
    <section class="route-rows">
      <div class="route-rows-head">
        <h2>Ways to cure it</h2>
        <Button chosen={comparing} onPress={() => setComparing(!comparing)}>
          Compare
        </Button>
      </div>
      {comparing && <RouteTable routes={routes} unit={unit} />}
      <ol hidden={comparing}>
        {routes.map((route) => {
          const said = sayRoute(route, unit);
          return (
            <li key={route.kind} class="route-rows-one" data-state={route.state}>
              <div class="route-rows-words">
                <h3>
                  {said.title} <small>{ROUTE_STATES[route.state]}</small>
                </h3>
                {said.what !== '' && <p>{said.what}</p>}
                {said.strength !== undefined && <p>{said.strength}</p>}
                {route.state !== 'in' && <p class="route-rows-why">{said.why}</p>}
              </div>
              <VerdictMark kind={MARKS[route.state]} />
              {route.state !== 'out' && <Details said={said} isIn={route.state === 'in'} />}
              {route.kind === 'thread-insert' && route.state !== 'out' && (
                <div class="route-rows-act">
                  <Button kind="main" onPress={() => useInsert()}>
                    Use the insert
                  </Button>
                </div>
              )}
              {route.state === 'in' && route.steps.length > 0 && (
                <div class="route-rows-act">
                  <LinkButton
                    href={hrefOf({
                      at: 'worksheet',
                      jobId: job.id,
                      worksheetId: worksheet.id,
                      field: `cuts/${route.kind}`,
                    })}
                    label={`Cut it this way: ${said.title}`}
                  >
                    Cut it this way
                  </LinkButton>
                </div>
              )}
            </li>
          );
        })}
      </ol>
      {trouble !== '' && (
        <p role="alert" class="text-field-trouble">
          {trouble}
        </p>
      )}
    </section>
  );
}

/** What speaks for a route and what it doesn't give back; out of the way until it is asked for. */
function Details({ said, isIn }: { said: SaidRoute; isIn: boolean }) {
  const lines = [isIn ? said.why : '', said.caution ?? ''].filter((line) => line !== '');
  if (lines.length === 0) return null;
  return (
    <details class="route-rows-more">
      <summary>Why, and what it gives back</summary>
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </details>
  );
}
