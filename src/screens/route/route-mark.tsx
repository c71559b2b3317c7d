import type { RouteRow } from '../../engine/job/route.ts';

/** How a place stands: done a filled ring with its tick, begun the number that is open, not begun an empty ring. */
export function RouteMark({ row }: { row: RouteRow | undefined }) {
  const stands = row?.stands ?? 'not-begun';
  const isWrong = row?.fault === 'wrong';
  return (
    <svg
      class={`route-mark route-mark-${stands}`}
      data-fault={row?.fault}
      viewBox="0 0 40 40"
      width="40"
      height="40"
      aria-hidden="true"
    >
      {isWrong ? (
        <rect class="route-mark-bar" x="4" y="15" width="32" height="10" />
      ) : (
        <circle class="route-mark-ring" cx="20" cy="20" r="16" />
      )}
      {stands === 'done' && <path class="route-mark-tick" d="M12 21l6 6l11-13" />}
      {stands === 'open' && !isWrong && row !== undefined && (
        <text class="route-mark-number" x="20" y="26" text-anchor="middle">
          {row.open > 99 ? '99' : row.open}
        </text>
      )}
    </svg>
  );
}
