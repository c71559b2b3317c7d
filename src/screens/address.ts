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
 * Every place in the app has an address, kept behind the # so that a plain folder of files can serve it from anywhere.
 * An address that leads nowhere is shown as the job list.
 */
export type Address =
  | { readonly at: 'jobs' }
  | { readonly at: 'new-job' }
  /** From the app's icon: in the job last worked on. */
  | { readonly at: 'new-reading' }
  | { readonly at: 'job'; readonly jobId: string }
  | { readonly at: 'readings'; readonly jobId: string }
  | { readonly at: 'new-feature'; readonly jobId: string }
  | { readonly at: 'feature'; readonly jobId: string; readonly featureId: string; readonly choosing?: string }
  | { readonly at: 'worksheets'; readonly jobId: string }
  | {
      readonly at: 'worksheet';
      readonly jobId: string;
      readonly worksheetId: string;
      readonly field?: string;
    }
  | { readonly at: 'all-cuts' }
  | { readonly at: 'cuts'; readonly jobId: string }
  | { readonly at: 'cut'; readonly jobId: string; readonly cutId: string; readonly field?: string }
  | { readonly at: 'lathe'; readonly jobId: string; readonly cutId: string; readonly field?: string }
  | { readonly at: 'fit-up'; readonly jobId: string }
  | { readonly at: 'check'; readonly jobId: string; readonly checkId: string; readonly field?: string }
  | { readonly at: 'assembly'; readonly jobId: string; readonly field?: string }
  | { readonly at: 'step'; readonly jobId: string; readonly stepId: string; readonly field?: string }
  | { readonly at: 'sign-off'; readonly jobId: string; readonly field?: string }
  | { readonly at: 'money'; readonly jobId: string; readonly field?: string }
  | {
      readonly at: 'photos';
      readonly jobId: string;
      readonly ownerStore: string;
      readonly ownerId: string;
      readonly field?: string;
    }
  | { readonly at: 'sheet'; readonly jobId: string; readonly field?: string }
  | { readonly at: 'charts'; readonly chart: Chart | 'list' }
  | { readonly at: 'drawer' }
  | { readonly at: 'new-piece' }
  | { readonly at: 'piece'; readonly pieceId: string; readonly field?: string }
  | { readonly at: 'shop'; readonly field?: string }
  | { readonly at: 'restore' }
  | { readonly at: 'tool'; readonly toolId: string; readonly field?: string };

export function hrefOf(address: Address): string {
  return `#/${segmentsOf(address).map(encodeURIComponent).join('/')}`;
}

export function addressOf(hash: string): Address {
  const [first = '', id = '', place = '', item = '', ...rest] = hash
    .replace(/^#?\/?/, '')
    .split('/')
    .map(decoded);
  if (first === 'job' && id !== '') return jobAddress(id, place, item, rest.join('/'));
  if (first === 'cuts') return { at: 'all-cuts' };
  if (first === 'charts') return { at: 'charts', chart: chartNamed(id) };
  if (first === 'drawer' && id === 'piece' && place !== '')
    return {
      at: 'piece',
      pieceId: place,
      ...fieldOf([item, ...rest].filter((part) => part !== '').join('/')),
    };
  if (first === 'drawer') return { at: id === 'new' ? 'new-piece' : 'drawer' };
  if (first === 'shop' && id === 'tool' && place !== '')
    return { at: 'tool', toolId: place, ...(item && { field: item }) };
  if (first === 'shop' && id === 'restore') return { at: 'restore' };
  if (first === 'shop') return { at: 'shop', ...fieldOf(id) };
  return { at: first === 'new-job' || first === 'new-reading' ? first : 'jobs' };
}

/** A chart this Slipfit doesn't have is the first one. */
function chartNamed(name: string): Chart | 'list' {
  if (name === 'list') return 'list';
  return charts.find((chart) => chart === name) ?? 'drills';
}

/** Places of the assembly that are no step; a step's id is none of these words. */
const besideTheSteps: ReadonlySet<string> = new Set(['', 'steps', 'parts', 'rechecks', 'odometer', 'fitter']);

function jobAddress(jobId: string, place: string, item: string, rest: string): Address {
  switch (place) {
    case 'readings':
      if (item === 'new') return { at: 'new-feature', jobId };
      return item === ''
        ? { at: 'readings', jobId }
        : { at: 'feature', jobId, featureId: item, ...(rest && { choosing: rest }) };
    case 'worksheets':
      return item === ''
        ? { at: 'worksheets', jobId }
        : { at: 'worksheet', jobId, worksheetId: item, ...(rest && { field: rest }) };
    case 'cuts': {
      if (item === '') return { at: 'cuts', jobId };
      const [lathe, ...behind] = rest.split('/');
      return lathe === 'lathe'
        ? { at: 'lathe', jobId, cutId: item, ...fieldOf(behind.join('/')) }
        : { at: 'cut', jobId, cutId: item, ...fieldOf(rest) };
    }
    case 'fit-up':
      return item === '' ? { at: 'fit-up', jobId } : { at: 'check', jobId, checkId: item, ...fieldOf(rest) };
    case 'assembly':
      return besideTheSteps.has(item)
        ? { at: 'assembly', jobId, ...fieldOf([item, rest].filter((part) => part !== '').join('/')) }
        : { at: 'step', jobId, stepId: item, ...fieldOf(rest) };
    case 'sign-off':
    case 'money':
    case 'sheet':
      return { at: place, jobId, ...fieldOf([item, rest].filter((part) => part !== '').join('/')) };
    case 'photos': {
      const [ownerId = '', ...behind] = rest.split('/');
      return { at: 'photos', jobId, ownerStore: item, ownerId, ...fieldOf(behind.join('/')) };
    }
    case 'about':
      return { at: 'job', jobId };
    default:
      return { at: 'readings', jobId };
  }
}

function segmentsOf(address: Address): readonly string[] {
  switch (address.at) {
    case 'jobs':
    case 'new-job':
    case 'new-reading':
    case 'drawer':
      return [address.at];
    case 'shop':
      return [address.at, ...partsOf(address.field)];
    case 'restore':
      return ['shop', 'restore'];
    case 'new-piece':
      return ['drawer', 'new'];
    case 'piece':
      return ['drawer', 'piece', address.pieceId, ...partsOf(address.field)];
    case 'tool':
      return ['shop', 'tool', address.toolId, ...(address.field === undefined ? [] : [address.field])];
    case 'charts':
      return ['charts', address.chart];
    case 'job':
      return ['job', address.jobId, 'about'];
    case 'readings':
    case 'worksheets':
    case 'cuts':
    case 'fit-up':
      return ['job', address.jobId, address.at];
    case 'assembly':
    case 'sign-off':
    case 'money':
    case 'sheet':
      return ['job', address.jobId, address.at, ...partsOf(address.field)];
    case 'all-cuts':
      return ['cuts'];
    case 'cut':
      return ['job', address.jobId, 'cuts', address.cutId, ...partsOf(address.field)];
    case 'lathe':
      return ['job', address.jobId, 'cuts', address.cutId, 'lathe', ...partsOf(address.field)];
    case 'check':
      return ['job', address.jobId, 'fit-up', address.checkId, ...partsOf(address.field)];
    case 'step':
      return ['job', address.jobId, 'assembly', address.stepId, ...partsOf(address.field)];
    case 'photos':
      return ['job', address.jobId, 'photos', address.ownerStore, address.ownerId, ...partsOf(address.field)];
    case 'new-feature':
      return ['job', address.jobId, 'readings', 'new'];
    case 'feature':
      return ['job', address.jobId, 'readings', address.featureId, ...partsOf(address.choosing)];
    case 'worksheet':
      return ['job', address.jobId, 'worksheets', address.worksheetId, ...partsOf(address.field)];
    default:
      return address satisfies never;
  }
}

function fieldOf(field: string): { readonly field?: string } {
  return field === '' ? {} : { field };
}

function partsOf(rest: string | undefined): readonly string[] {
  return rest === undefined ? [] : rest.split('/');
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

/** To another place where nobody has pressed for it here: from an address that only leads on. */
export function leadTo(address: Address): void {
  history.replaceState(null, '', hrefOf(address));
  dispatchEvent(new HashChangeEvent('hashchange'));
  pressedAt = undefined;
}
