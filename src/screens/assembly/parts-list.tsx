import { timeToKeep } from '../../store/base/clock.ts';
import { changePart } from '../../store/kept/parts.ts';
import type { Part, PartOrigin } from '../../store/base/records.ts';
import { hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { dayWords } from '../common/day-words.ts';
import { Trouble, useTold } from '../common/told.tsx';
import type { Assembly } from './use-assembly.ts';

export const ORIGINS: readonly { readonly origin: PartOrigin; readonly words: string }[] = [
  { origin: 'kit', words: 'kit' },
  { origin: 'donor', words: 'donor' },
  { origin: 'made', words: 'made' },
  { origin: 'bought', words: 'bought' },
  { origin: 'mock-up', words: 'mock-up' },
];

/** A part that only stood in for the real one, and still does. */
export function isMockUpIn(part: Pick<Part, 'origin' | 'swapped'>): boolean {
  return part.origin === 'mock-up' && part.swapped === undefined;
}

/** The parts of a job and where each came from; a mock-up stands out until the real part is in. */
export function PartsList({ assembly }: { assembly: Assembly }) {
  const { job, parts } = assembly;
  return (
    <section class="assembly-section" aria-label="Parts">
      <h2>Parts</h2>
      {parts.length === 0 && (
        <EmptyLine>Each part and where it came from: kit, donor, made, bought, or only a mock-up.</EmptyLine>
      )}
      <ul>
        {parts.toSorted(mockUpsFirst).map((part) => (
          <li key={part.id}>
            <PartRow part={part} />
          </li>
        ))}
      </ul>
      <div class="assembly-keys">
        <LinkButton href={hrefOf({ at: 'assembly', jobId: job.id, field: 'parts/new' })}>
          Add a part
        </LinkButton>
      </div>
    </section>
  );
}

function mockUpsFirst(a: Part, b: Part): number {
  return Number(isMockUpIn(b)) - Number(isMockUpIn(a));
}

function PartRow({ part }: { part: Part }) {
  const mockUp = isMockUpIn(part);
  return (
    <>
      <Row
        href={hrefOf({ at: 'assembly', jobId: part.jobId, field: `parts/${part.id}` })}
        title={part.name}
        detail={mockUp ? <strong>mock-up: must come out</strong> : originWords(part)}
        mark={mockUp ? <MockUpMark /> : undefined}
      />
      {mockUp && (
        <div class="assembly-keys">
          <SwapKey part={part} />
        </div>
      )}
    </>
  );
}

export function originWords({ origin, swapped }: Pick<Part, 'origin' | 'swapped'>): string {
  if (origin !== 'mock-up') return origin;
  if (!swapped) return 'mock-up';
  return `mock-up, swapped for the real part ${dayWords(swapped.at)}`;
}

/** The real part is in: the mock-up no longer stands in the way of signing. */
export function SwapKey({ part }: { part: Part }) {
  const store = useStore();
  const { trouble, told } = useTold();
  const swap = () => {
    const swapped = { at: timeToKeep(), by: 'the real part' };
    return told(changePart(store, part.id, { swapped }), () =>
      announce(`${part.name} is swapped for the real part`),
    );
  };
  return (
    <>
      <Trouble>{trouble}</Trouble>
      <Button label={`${part.name}: swapped for the real part`} onPress={() => swap()}>
        Swapped for the real part
      </Button>
    </>
  );
}

/** A part that is only outlined: dashed, with a cross through it. */
export function MockUpMark() {
  return (
    <svg class="assembly-mock-up" viewBox="0 0 32 32" width="32" height="32" role="img" aria-label="mock-up">
      <path d="M4 4h24v24H4z" fill="none" stroke="currentColor" stroke-width="3" stroke-dasharray="5.5 4.1" />
      <path d="M10 10l12 12 M22 10l-12 12" fill="none" stroke="currentColor" stroke-width="3" />
    </svg>
  );
}
