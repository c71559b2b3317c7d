import { useEffect, useRef, useState } from 'preact/hooks';
import type { ComponentChildren } from 'preact';
import {
  blocksOf,
  type Account,
  type LeadBlock,
  type LineBlock,
  type RowsBlock,
  type VerdictBlock,
  type WayBlock,
} from '../../../engine/worksheets/account.ts';
import { capital } from '../../../engine/length/say-words.ts';
import { openPageOf } from '../../../engine/worksheets/open-page.ts';
import type { ShownUnit } from '../../../engine/length/show.ts';
import { NumberLine } from '../../common/number-line.tsx';
import { Row } from '../../common/row.tsx';
import { unbroken } from '../../common/unbroken.tsx';
import { VerdictBand } from '../../common/verdict-band.tsx';
import { AssumedKeys, useAssumedWords, useWithAssumed } from '../said-assumed.tsx';
import './account-on-phone.css';

type AccountOnPhoneProps = {
  readonly account: Account;
  /** How many sizes it stands on, and the list of them. */
  readonly sizes: { readonly count: number; readonly rows: ComponentChildren };
  readonly unit: ShownUnit;
  /** What stands where the figure would, while the answer is of before. */
  readonly inPlace?: ComponentChildren;
  /** Where a field is given. */
  readonly hrefFor: (field: string) => string;
};

/**
 * What a worksheet says, as a fitter reads it: the verdict in one line, one leading figure with what it changes from and to
 * and its limits, one line of proof; all else folded behind three keys.
 */
export function AccountOnPhone({ account, sizes, unit, inPlace, hrefFor }: AccountOnPhoneProps) {
  const { verdict, headline, lead, ranked, ask, said, further } = openPageOf(account, useWithAssumed());
  const [, ...otherLeads] = blocksOf(account, 'lead');
  const rows = blocksOf(account, 'rows');
  const ways = blocksOf(account, 'way');
  return (
    <div class="account">
      {verdict && headline !== undefined && <VerdictLine kind={verdict.kind} headline={headline} />}
      {inPlace}
      {lead && <LeadFigure lead={lead} isFirst={!verdict} />}
      {rows
        .filter(({ leads }) => leads)
        .map((block) => (
          <AccountRows key={block.title} block={block} />
        ))}
      {ranked.length > 0 && <RankedWays ways={ranked} hrefFor={hrefFor} />}
      {ask !== undefined && (
        <p class="account-said">
          <strong>One thing first:</strong> {unbroken(ask)}
        </p>
      )}
      {said.map((sentence) => (
        <p key={sentence} class="account-said">
          {unbroken(sentence)}
        </p>
      ))}
      <AssumedKeys />
      <Folds
        sizes={sizes}
        ways={[...otherLeads.map(wayOfLead), ...ways]}
        isRanked={ranked.length > 0}
        rows={rows.filter(({ leads }) => !leads)}
        lines={blocksOf(account, 'line')}
        unit={unit}
        hrefFor={hrefFor}
        further={further}
        why={blocksOf(account, 'why').flatMap(({ lines }) => lines)}
      />
    </div>
  );
}

/** Mark and one sentence, with what it hangs on in it. */
function VerdictLine({ kind, headline }: Pick<VerdictBlock, 'kind' | 'headline'>) {
  return (
    <div class="account-verdict">
      <VerdictBand kind={kind} headline={headline} />
    </div>
  );
}

type LeadFigureProps = {
  readonly lead: LeadBlock;
  /** No verdict stands over it that says what was assumed. */
  readonly isFirst: boolean;
};

function LeadFigure({ lead: { label, figure, unit, change, limits }, isFirst }: LeadFigureProps) {
  const assumed = useAssumedWords();
  // Behind the limits it hangs on them, as it does on a verdict.
  const besides = [limits ?? '', isFirst ? assumed : ''].filter((part) => part !== '').join('; ');
  return (
    <section class="account-lead">
      <h2 class="account-lead-label">{unbroken(label)}</h2>
      <p
        class="account-lead-figure"
        data-long={figure.length > 6}
        data-range={isRange(figure)}
        style={{ '--halves': figure.length / 2 + 1 }}
      >
        {figure} <span class="account-lead-unit">{unit}</span>
      </p>
      {change !== undefined && <p class="account-lead-change">{change}</p>}
      {besides !== '' && (
        <p class="account-lead-limits">{unbroken(limits === undefined ? capital(besides) : besides)}</p>
      )}
    </section>
  );
}

/** From one length to another: it takes two lines. */
function isRange(figure: string): boolean {
  return figure.length > 10;
}

function wayOfLead({ label, figure, unit, limits }: LeadBlock): WayBlock {
  return {
    is: 'way',
    title: label,
    detail: [`${figure} ${unit}`, limits].filter((part) => part !== undefined).join(', '),
    stands: 'open',
  };
}

type FoldsProps = Pick<AccountOnPhoneProps, 'sizes' | 'unit' | 'hrefFor'> & {
  readonly ways: readonly WayBlock[];
  readonly isRanked: boolean;
  readonly rows: readonly RowsBlock[];
  readonly lines: readonly LineBlock[];
  readonly further: readonly string[];
  readonly why: readonly {
    readonly what: string;
    readonly how: string;
    readonly source?: string | undefined;
  }[];
};

type Fold = 'sizes' | 'ways' | 'why';

/** Sizes, other ways and why: three keys with their counts, one of them open at a time. */
function Folds({ sizes, ways, isRanked, further, why, rows, lines, unit, hrefFor }: FoldsProps) {
  const [open, setOpen] = useState<Fold>();
  const keys = useRef<HTMLDivElement>(null);
  // What was unfolded comes into view under its key, which says that it is open.
  useEffect(() => {
    if (open !== undefined) keys.current?.scrollIntoView({ block: 'start' });
  }, [open]);
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
      <div class="account-folds" ref={keys}>
        {key('sizes', `Sizes ${sizes.count}`)}
        {ways.length > 0 && key('ways', `${isRanked ? 'All' : 'Other'} ways ${ways.length}`)}
        {why.length + further.length + rows.length + lines.length > 0 && key('why', 'Why')}
      </div>
      <div id="account-unfolded" class="account-unfolded" data-open={open}>
        {open === 'sizes' && sizes.rows}
        {open === 'ways' && <Ways ways={ways} hrefFor={hrefFor} />}
        {open === 'why' && <WhyLines further={further} why={why} rows={rows} lines={lines} unit={unit} />}
      </div>
    </>
  );
}

function AccountRows({ block: { title, rows } }: { block: RowsBlock }) {
  return (
    <section class="account-rows">
      <h2>{title}</h2>
      <dl>
        {rows.map(({ what, figure, more }) => (
          <div key={what}>
            <dt>{what}</dt>
            <dd>
              <strong>{figure}</strong>
              {more !== undefined && <small>{more}</small>}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

/** What has to be given first, else its cuts: one press goes that way. */
function leadsTo({ asks, goes }: Pick<WayBlock, 'asks' | 'goes'>): string | undefined {
  return asks ?? (goes === undefined ? undefined : `cuts/${goes}`);
}

type WaysProps = { readonly ways: readonly WayBlock[] } & Pick<AccountOnPhoneProps, 'hrefFor'>;

/** Ways in the order of their rank, as the answer itself; those ruled out stand last, with the reason. */
function RankedWays({ ways, hrefFor }: WaysProps) {
  return (
    <ol class="account-ranked">
      {ways.map(({ title, detail, stands, rank, asks, goes }) => {
        const leads = leadsTo({ asks, goes });
        const words = (
          <>
            <span class="account-rank">{stands === 'out' ? '–' : rank}</span>
            <span class="account-ranked-words">
              <strong>{title}</strong>
              <span>{unbroken(detail)}</span>
            </span>
            {leads !== undefined && <span class="row-arrow" aria-hidden="true" />}
          </>
        );
        return (
          <li key={title} data-stands={stands}>
            {leads === undefined ? <p>{words}</p> : <a href={hrefFor(leads)}>{words}</a>}
          </li>
        );
      })}
    </ol>
  );
}

function Ways({ ways, hrefFor }: WaysProps) {
  return (
    <ul>
      {ways.map(({ title, detail, stands, ...way }) => {
        const leads = leadsTo(way);
        return (
          <li key={title}>
            <Row
              title={title}
              detail={detail}
              {...(leads !== undefined && { href: hrefFor(leads) })}
              {...(stands === 'out' && { state: 'out' })}
            />
          </li>
        );
      })}
    </ul>
  );
}

function WhyLines({
  further,
  why,
  rows,
  lines,
  unit,
}: Omit<FoldsProps, 'sizes' | 'ways' | 'isRanked' | 'hrefFor'>) {
  return (
    <div class="account-why">
      {lines.map(({ label, value, halfWidth, limits, verdict }) => (
        <NumberLine
          key={label}
          value={value}
          halfWidth={halfWidth}
          limits={limits}
          verdict={verdict}
          unit={unit}
          label={label}
        />
      ))}
      {rows.map((block) => (
        <AccountRows key={block.title} block={block} />
      ))}
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
