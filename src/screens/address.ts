/** The charts on the wall, as they are listed. */
export const charts = [
  'drills',
  'tap-drills',
  'inserts',
  'clearance-holes',
  'fits',
  'materials',
  'measuring-tools',
] as const;
export type Chart = (typeof charts)[number];

/**
 * Every place in the app, by the path that stands behind the #, so that a plain folder of files can serve it from anywhere:
 * `:name` is one piece of it, `*name` all that follows, where anything does. The first that fits is the place; one that
 * leads nowhere is the job, or the list of jobs. `places.tsx` says what is drawn there.
 */
const paths = {
  'new-job': 'new-job',
  /** From the app's icon: in the job last worked on. */
  'new-reading': 'new-reading',
  'all-cuts': 'cuts',
  find: 'find',
  charts: 'charts/:chart',
  'new-piece': 'drawer/new',
  piece: 'drawer/piece/:pieceId/*field',
  drawer: 'drawer',
  tool: 'shop/tool/:toolId/*field',
  restore: 'shop/restore',
  shop: 'shop/*field',
  /** What a job is and touches. */
  job: 'job/:jobId/about',
  again: 'job/:jobId/again',
  'new-feature': 'job/:jobId/readings/new',
  known: 'job/:jobId/known',
  feature: 'job/:jobId/readings/:featureId/*choosing',
  readings: 'job/:jobId/readings',
  worksheet: 'job/:jobId/worksheets/:worksheetId/*field',
  worksheets: 'job/:jobId/worksheets',
  lathe: 'job/:jobId/cuts/:cutId/lathe/*field',
  cut: 'job/:jobId/cuts/:cutId/*field',
  cuts: 'job/:jobId/cuts',
  get: 'job/:jobId/get/*field',
  check: 'job/:jobId/fit-up/:checkId/*field',
  'fit-up': 'job/:jobId/fit-up',
  step: 'job/:jobId/assembly/:stepId/*field',
  assembly: 'job/:jobId/assembly/*field',
  'sign-off': 'job/:jobId/sign-off/*field',
  money: 'job/:jobId/money/*field',
  photos: 'job/:jobId/photos/:ownerStore/:ownerId/*field',
  sheet: 'job/:jobId/sheet/*field',
  route: 'job/:jobId',
  jobs: 'jobs',
} as const satisfies Readonly<Record<string, string>>;

export type Place = keyof typeof paths;

type Pieces<Path extends string> = Path extends `${infer First}/${infer Rest}`
  ? Piece<First> & Pieces<Rest>
  : Piece<Path>;
type Piece<One extends string> = One extends ':chart'
  ? { readonly chart: Chart | 'list' }
  : One extends `:${infer Name}`
    ? { readonly [K in Name]: string }
    : One extends `*${infer Name}`
      ? { readonly [K in Name]?: string }
      : unknown;
type OfPlace<At extends Place> = At extends Place ? { readonly at: At } & Pieces<(typeof paths)[At]> : never;

export type Address = OfPlace<Place>;
/** The address of one place: what its screen is given. */
export type AddressOf<At extends Place> = Extract<Address, { readonly at: At }>;

/** Pieces that are places of their own: no step of an assembly is called so. */
const notAnId: Readonly<Record<string, ReadonlySet<string>>> = {
  stepId: new Set(['steps', 'parts', 'rechecks', 'odometer', 'fitter']),
};

export function hrefOf(address: Address): string {
  const given: Readonly<Record<string, string>> = address;
  const segments = paths[address.at].split('/').flatMap((piece) => {
    if (piece.startsWith(':')) return [given[piece.slice(1)] ?? ''];
    if (piece.startsWith('*')) return given[piece.slice(1)]?.split('/') ?? [];
    return [piece];
  });
  return `#/${segments.map(encodeURIComponent).join('/')}`;
}

export function addressOf(hash: string): Address {
  const segments = hash
    .replace(/^#?\/?/, '')
    .split('/')
    .map(decoded);
  for (const [at, path] of Object.entries(paths)) {
    const pieces = piecesOf(path, segments);
    // Its pieces were read by the path that its type is made of.
    // oxlint-disable-next-line typescript/no-unsafe-type-assertion
    if (pieces) return { at, ...pieces } as Address;
  }
  const [first, jobId = ''] = segments;
  if (first === 'charts') return { at: 'charts', chart: 'drills' };
  return first === 'job' && jobId !== '' ? { at: 'route', jobId } : { at: 'jobs' };
}

/** What a path's names stand for in an address; undefined where the address is of another place. */
function piecesOf(path: string, segments: readonly string[]): Readonly<Record<string, string>> | undefined {
  const pieces: Record<string, string> = {};
  const names = path.split('/');
  for (const [index, name] of names.entries()) {
    const segment = segments[index] ?? '';
    if (name.startsWith('*')) {
      const rest = segments.slice(index).join('/');
      return rest === '' ? pieces : { ...pieces, [name.slice(1)]: rest };
    }
    if (!fits(name, segment)) return undefined;
    if (name.startsWith(':')) pieces[name.slice(1)] = segment;
  }
  return segments.slice(names.length).every((segment) => segment === '') || !path.includes('/')
    ? pieces
    : undefined;
}

function fits(name: string, segment: string): boolean {
  if (!name.startsWith(':')) return segment === name;
  if (name === ':chart') return segment === 'list' || charts.some((chart) => chart === segment);
  return segment !== '' && notAnId[name.slice(1)]?.has(segment) !== true;
}

function decoded(segment: string): string {
  try {
    return decodeURIComponent(segment);
  } catch {
    return segment;
  }
}

// Where the fitter stood at his last press. What a press sets going may be done only after he has walked on by himself.
let pressedAt: string | undefined;
for (const kind of ['click', 'keydown', 'change'] as const)
  addEventListener(kind, () => (pressedAt = location.hash), { capture: true });

function hasWalkedOn(): boolean {
  return pressedAt !== undefined && pressedAt !== location.hash;
}

/** To another place, when what was pressed for is done. A fitter who is elsewhere by now is left there. */
export function go(address: Address): void {
  if (hasWalkedOn()) return;
  location.hash = hrefOf(address);
  pressedAt = undefined;
}

/** The same without leaving this place in the browser's history: after a thing was made, back goes past the making. */
export function goInstead(address: Address): void {
  if (!hasWalkedOn()) leadTo(address);
}

let cameFrom: string | undefined;
addEventListener('hashchange', ({ oldURL }) => {
  cameFrom = oldURL ? new URL(oldURL).hash : undefined;
});

/** To the place a choice was asked from, when it is made: the choosing leaves nothing behind in the browser's history. */
export function goBackTo(href: string): void {
  if (hasWalkedOn()) return;
  if (cameFrom === href) return history.back();
  location.replace(href);
}

/** To another place where nobody has pressed for it here: from an address that only leads on. */
export function leadTo(address: Address): void {
  history.replaceState(null, '', hrefOf(address));
  dispatchEvent(new HashChangeEvent('hashchange'));
  pressedAt = undefined;
}
