import { hrefOf, type Address, type Chart } from './address.ts';
import './bottom-bar.css';

const PLACES: readonly { readonly name: string; readonly address: Address; readonly drawing: string }[] = [
  // A tag with its hole, a drill's point, a drawer with its pull, a caliper's jaws: our own scribed marks.
  {
    name: 'Jobs',
    address: { at: 'jobs' },
    drawing: 'M4 9l8-5h16v22H12l-8-5z M10 15a2 2 0 1 0 4 0a2 2 0 1 0-4 0 M18 11h7 M18 16h7 M18 21h7',
  },
  {
    name: 'Charts',
    address: { at: 'charts', chart: 'drills' },
    drawing: 'M11 3h10v13l-5 11l-5-11z M11 10l10-5 M11 16l10-6 M12 20l8-5',
  },
  { name: 'Drawer', address: { at: 'drawer' }, drawing: 'M4 5h24v22H4z M4 16h24 M13 10h6 M13 21h6' },
  { name: 'Shop', address: { at: 'shop' }, drawing: 'M5 4h4v20l-4 4z M9 8h19v5H9 M17 13v9l-4-4v-5 M22 8v5' },
];

type BottomBarProps = {
  readonly address: Address;
  /** The chart that was looked at last. */
  readonly chart?: Chart | undefined;
};

/** The four places of the app, under the thumb. */
export function BottomBar({ address, chart }: BottomBarProps) {
  const here = placeOf(address);
  return (
    <nav class="bottom-bar" aria-label="Places">
      {PLACES.map(({ name, address: to, drawing }) => (
        <a
          key={name}
          class="bottom-bar-place"
          href={hrefOf(to.at === 'charts' && chart ? { ...to, chart } : to)}
          aria-current={name === here ? 'page' : undefined}
        >
          <svg viewBox="0 0 32 32" width="28" height="28" aria-hidden="true">
            <path d={drawing} fill="none" stroke="currentColor" stroke-width="2.2" stroke-linejoin="round" />
          </svg>
          {name}
        </a>
      ))}
    </nav>
  );
}

function placeOf(address: Address): string {
  switch (address.at) {
    case 'charts':
      return 'Charts';
    case 'drawer':
    case 'new-piece':
    case 'piece':
      return 'Drawer';
    case 'shop':
    case 'restore':
    case 'tool':
      return 'Shop';
    default:
      return 'Jobs';
  }
}
