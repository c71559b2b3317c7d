import { capital } from '../../engine/length/say-words.ts';
import { withoutMetal, type Block, type RowsBlock, type WayBlock } from '../../engine/worksheets/account.ts';
import { worksheets, type WorksheetKind } from '../../engine/worksheets/all-worksheets.ts';
import { AccountCaution } from '../worksheets/frame/account-caution.tsx';
import { drawings } from '../worksheets/all-drawings.ts';
import { FormDrawing } from '../worksheets/frame/form-drawing.tsx';
import { useWithAssumed, WorksheetBand } from '../worksheets/said-assumed.tsx';
import { givenOf } from '../worksheets/given-of.ts';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';
import { paperAccount, type Chosen } from './paper-account.ts';
import { UNFINISHED } from './sheet-words.ts';

/** The room a drawing has on the sheet. */
const ON_PAPER = { width: 320, height: 130 };

type AccountOnPaperProps = Partial<Omit<Chosen, 'cutWays'>> & {
  readonly data: WorksheetData;
  readonly kind: WorksheetKind;
  /** What it asks to be cut has been cut since: it isn't asked for again. */
  readonly isCut?: boolean;
};

/** What the sheet prints of a worksheet: the drawing and what it comes to; how that came about is behind Why, on the phone. */
export function AccountOnPaper({
  data,
  kind,
  isCut = false,
  cutNames = [],
  takenFurther = [],
}: AccountOnPaperProps) {
  const said = useWithAssumed();
  const given = givenOf(data);
  const worksheet = worksheets[kind];
  if (worksheet.standing(given) === 'lacking') return <p>{UNFINISHED}</p>;
  const whole = worksheet.account(given);
  const { blocks, others, sources } = paperAccount(isCut ? withoutMetal(whole) : whole, {
    cutWays: worksheet.cuts(given),
    cutNames,
    takenFurther,
  });
  // Without a verdict that says it, the leading figure does.
  const leads = blocks.some(({ is }) => is === 'verdict')
    ? undefined
    : blocks.find(({ is }) => is === 'lead');
  return (
    <>
      <FormDrawing drawn={drawings[kind](given, ON_PAPER)} box={ON_PAPER} />
      {blocks.map((block) => (
        <OnPaper key={keyOf(block)} block={block} said={block === leads ? said : (sentence) => sentence} />
      ))}
      {others !== undefined && <p>{`${capital(others)}.`}</p>}
      {sources !== undefined && (
        <p class="sheet-sources">
          <small>{`Sources: ${sources}.`}</small>
        </p>
      )}
    </>
  );
}

type OnPaperProps = {
  readonly block: Block;
  readonly said: (sentence: string) => string;
};

function OnPaper({ block, said }: OnPaperProps) {
  switch (block.is) {
    case 'verdict':
      return <WorksheetBand kind={block.kind} headline={block.headline} />;
    case 'lead': {
      const { label, figure, unit, change, limits } = block;
      return (
        <p>
          {said(
            `${[`${label}: ${figure} ${unit}`, change, limits].filter((part) => part !== undefined).join('; ')}.`,
          )}
        </p>
      );
    }
    case 'proof':
      return <p>{[block.sentence, block.more].filter((part) => part !== undefined).join(' ')}</p>;
    case 'said':
      return block.on === 'phone' ? null : <p>{block.sentence}</p>;
    case 'strength':
      return <p>{block.sentence}</p>;
    case 'way':
      return <WayOnPaper block={block} />;
    case 'rows':
      return <RowsOnPaper block={block} />;
    case 'caution':
      return <AccountCaution of={block.of} inText />;
    case 'ask':
      return <p>{`One thing first: ${block.sentence}`}</p>;
    case 'line':
    case 'why':
    case 'extra':
      return null;
    default:
      return block satisfies never;
  }
}

/** The way that counts; one that is ruled out says why. */
function WayOnPaper({ block: { title, detail, stands } }: { block: WayBlock }) {
  if (stands === 'out') return <p>{`${title}, ruled out: ${detail}`}</p>;
  return (
    <p>
      <strong>{title}</strong>
      {`${stands === 'asks' ? ', not sure yet' : ''}: ${detail}`}
    </p>
  );
}

/** Lines, no table: on a phone with large text a table of three columns leaves the sheet. What only goes with the answer is run on. */
function RowsOnPaper({ block: { title, rows, leads } }: { block: RowsBlock }) {
  return (
    <div class={leads ? 'sheet-rows' : 'sheet-rows sheet-rows-run-on'}>
      <p>
        <strong>{title}</strong>
      </p>
      <ul>
        {rows.map(({ what, figure, more }) => (
          <li key={what}>
            {what}: <strong>{figure}</strong>
            {more !== undefined && `; ${more}`}
          </li>
        ))}
      </ul>
    </div>
  );
}

function keyOf(block: Block): string {
  switch (block.is) {
    case 'verdict':
      return `verdict ${block.headline}`;
    case 'lead':
      return `lead ${block.label}`;
    case 'way':
      return `way ${block.title}`;
    case 'said':
    case 'proof':
    case 'strength':
      return block.sentence;
    case 'caution':
      return block.of;
    case 'extra':
      return block.name;
    case 'ask':
      return `ask ${block.field}`;
    case 'rows':
      return `rows ${block.title}`;
    case 'line':
      return `line ${block.label}`;
    case 'why':
      return 'why';
    default:
      return block satisfies never;
  }
}
