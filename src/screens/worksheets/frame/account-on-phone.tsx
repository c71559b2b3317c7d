import { useState } from 'preact/hooks';
import type { ComponentChildren } from 'preact';
import { blocksOf, type Account, type LeadBlock, type WayBlock } from '../../../engine/worksheets/account.ts';
import { Row } from '../../common/row.tsx';
import { unbroken } from '../../common/unbroken.tsx';
import { AssumedKeys, useAssumedWords, WorksheetBand } from '../said-assumed.tsx';
import './account-on-phone.css';

type AccountOnPhoneProps = {
  readonly account: Account;
  /** How many sizes it stands on, and the list of them. */
  readonly sizes: { readonly count: number; readonly rows: ComponentChildren };
};

/**
 * What a worksheet says, as a fitter reads it: the verdict in one line, one leading figure with what it changes from and to
 * and its limits, one line of proof; all else folded behind three keys.
 */
export function AccountOnPhone({ account, sizes }: AccountOnPhoneProps) {
  const [verdict, ...furtherVerdicts] = blocksOf(account, 'verdict');
  const [lead, ...otherLeads] = blocksOf(account, 'lead');
  const proofs = blocksOf(account, 'proof');
  const said = blocksOf(account, 'said').filter(({ on }) => on !== 'paper');
  return (
    <div class="account">
      {verdict && <WorksheetBand kind={verdict.kind} headline={verdict.headline} />}
      {lead && <LeadFigure lead={lead} isFirst={!verdict} />}
      {[...proofs, ...said.slice(0, MOST_SAID - proofs.length)].map(({ sentence }) => (
        <p key={sentence} class="account-said">
          {unbroken(sentence)}
        </p>
      ))}
      <Folds
        sizes={sizes}
        ways={[...otherLeads.map(wayOfLead), ...blocksOf(account, 'way')]}
        further={[
          ...furtherVerdicts.map(({ headline }) => headline),
          ...said.slice(MOST_SAID - proofs.length).map(({ sentence }) => sentence),
        ]}
        why={blocksOf(account, 'why').flatMap(({ lines }) => lines)}
      />
    </div>
  );
}

// With the verdict, the limits and the change five lines stand on the page before something is folded.
const MOST_SAID = 2;

type LeadFigureProps = {
  readonly lead: LeadBlock;
  /** No verdict stands over it that says what was assumed. */
  readonly isFirst: boolean;
};

function LeadFigure({ lead: { label, figure, unit, change, limits }, isFirst }: LeadFigureProps) {
  const words = useAssumedWords();
  return (
    <section class="account-lead">
      <h2 class="account-lead-label">
        {unbroken(label)}
        {isFirst && words !== '' && <small class="account-lead-besides">; {words}</small>}
      </h2>
      <p class="account-lead-figure" data-long={figure.length > 6}>
        {figure} <span class="account-lead-unit">{unit}</span>
      </p>
      {change !== undefined && <p class="account-lead-change">{change}</p>}
      {limits !== undefined && <p class="account-lead-limits">{limits}</p>}
      {isFirst && <AssumedKeys />}
    </section>
  );
}

function wayOfLead({ label, figure, unit, limits }: LeadBlock): WayBlock {
  return {
    is: 'way',
    title: label,
    detail: [`${figure} ${unit}`, limits].filter((part) => part !== undefined).join(', '),
    stands: 'open',
  };
}

type FoldsProps = {
  readonly sizes: AccountOnPhoneProps['sizes'];
  readonly ways: readonly WayBlock[];
  readonly further: readonly string[];
  readonly why: readonly {
    readonly what: string;
    readonly how: string;
    readonly source?: string | undefined;
  }[];
};

type Fold = 'sizes' | 'ways' | 'why';

/** Sizes, other ways and why: three keys with their counts, one of them open at a time. */
function Folds({ sizes, ways, further, why }: FoldsProps) {
  const [open, setOpen] = useState<Fold>();
  const key = (fold: Fold, words: string) => (
    <button
      type="button"
      class="account-fold"
      aria-expanded={open === fold}
      aria-controls="account-unfolded"
      onClick={() => setOpen(open === fold ? undefined : fold)}
    >
      {words}
    </button>
  );
  return (
    <>
      <div class="account-folds">
        {key('sizes', `Sizes ${sizes.count}`)}
        {ways.length > 0 && key('ways', `Other ways ${ways.length}`)}
        {(why.length > 0 || further.length > 0) && key('why', 'Why')}
      </div>
      <div id="account-unfolded" class="account-unfolded" data-open={open}>
        {open === 'sizes' && sizes.rows}
        {open === 'ways' && <Ways ways={ways} />}
        {open === 'why' && <WhyLines further={further} why={why} />}
      </div>
    </>
  );
}

function Ways({ ways }: { ways: readonly WayBlock[] }) {
  return (
    <ul>
      {ways.map(({ title, detail, stands }) => (
        <li key={title}>
          <Row title={title} detail={detail} {...(stands === 'out' && { state: 'out' })} />
        </li>
      ))}
    </ul>
  );
}

function WhyLines({ further, why }: Pick<FoldsProps, 'further' | 'why'>) {
  return (
    <div class="account-why">
      {further.map((sentence) => (
        <p key={sentence}>{unbroken(sentence)}</p>
      ))}
      <dl>
        {why.map(({ what, how, source }) => (
          <div key={what}>
            <dt>{what}</dt>
            <dd>{how}</dd>
            {source !== undefined && <dd class="account-source">Source: {source}</dd>}
          </div>
        ))}
      </dl>
    </div>
  );
}
