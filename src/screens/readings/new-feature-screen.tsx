import type { FeatureKind } from '../../engine/reading/measuring-tool.ts';
import { createFeature, featuresOf } from '../../store/kept/features.ts';
import { goInstead, hrefOf } from '../address.ts';
import { NotHere } from '../common/not-here.tsx';
import { LinkButton } from '../common/button.tsx';
import { useOnePress } from '../common/one-press.ts';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { useJob } from '../jobs/use-job.ts';
import { FEATURE_KINDS, kindName } from './feature-kinds.ts';
import { KnownRows, useKnownParts } from './known-rows.tsx';
import './new-feature-screen.css';

/** What is to be measured: one press makes it and opens the pad. */
export function NewFeatureScreen({ jobId }: { jobId: string }) {
  const store = useStore();
  const onePress = useOnePress();
  const { trouble, told } = useTold();
  const { missing } = useJob(jobId);
  if (missing) return <NotHere what="job" />;
  const make = async (kind: FeatureKind) => {
    const alike = (await featuresOf(store, jobId)).filter((one) => one.kind === kind).length;
    const feature = { jobId, kind, name: `${kindName(kind)} ${alike + 1}` };
    return told(createFeature(store, feature), ({ id }) =>
      goInstead({ at: 'feature', jobId, featureId: id }),
    );
  };
  return (
    <Page title="What is measured?" back={{ href: hrefOf({ at: 'readings', jobId }), to: 'the readings' }}>
      <div class="new-feature">
        {FEATURE_KINDS.map(({ kind, name, means }) => (
          <button
            key={kind}
            type="button"
            class="new-feature-kind"
            onClick={() => onePress.take(() => make(kind), { commits: true })}
          >
            <FeatureDrawing kind={kind} />
            <span>
              <strong>{name}</strong>
              <small>{means}</small>
            </span>
          </button>
        ))}
      </div>
      <Trouble>{trouble}</Trouble>
      <MeasuredBefore jobId={jobId} />
    </Page>
  );
}

const FIRST_FEW = 3;

/** What was read last in other jobs: one press brings it in. */
function MeasuredBefore({ jobId }: { jobId: string }) {
  const found = useKnownParts(jobId, FIRST_FEW);
  if (!found || found.parts.length === 0) return null;
  return (
    <section class="new-feature-known">
      <h2>Or of another one, measured before</h2>
      <KnownRows jobId={jobId} parts={found.parts} />
      {found.more && <LinkButton href={hrefOf({ at: 'known', jobId })}>All measured before</LinkButton>}
    </section>
  );
}

const DRAWINGS: Record<FeatureKind, { readonly lines: string; readonly measured: string }> = {
  bore: {
    lines: 'M6 6h36v36H6z M36 24a12 12 0 1 1-24 0a12 12 0 1 1 24 0',
    measured: 'M12 24h24 M12 20v8 M36 20v8',
  },
  pin: { lines: 'M2 14h34l4 4v12l-4 4H2', measured: 'M20 14v20 M16 14h8 M16 34h8' },
  length: { lines: 'M10 12h28v16H10z M10 17h28 M10 23h28', measured: 'M10 36h28 M10 32v8 M38 32v8' },
  depth: { lines: 'M4 10h12v26h16V10h12v34H4z', measured: 'M24 10v26 M20 10h8 M20 36h8' },
  gap: { lines: 'M4 10h14v28H4z M30 10h14v28H30z', measured: 'M18 24h12 M18 20v8 M30 20v8' },
  runout: {
    lines: 'M30 32a11 11 0 1 1-22 0a11 11 0 1 1 22 0 M38 8v9',
    measured: 'M44 12a7 7 0 1 1-14 0a7 7 0 1 1 14 0 M37 12l4-4',
  },
};

/** What is taken is brass, as on every drawing. */
export function FeatureDrawing({ kind }: { kind: FeatureKind }) {
  return (
    <svg class="feature-drawing" viewBox="0 0 48 48" width="64" height="64" aria-hidden="true">
      <path d={DRAWINGS[kind].lines} />
      <path class="feature-drawing-measured" d={DRAWINGS[kind].measured} />
    </svg>
  );
}
