import type { Block } from '../../engine/worksheets/account.ts';
import { worksheets, type WorksheetKind } from '../../engine/worksheets/all-worksheets.ts';
import { drawings } from '../worksheets/all-drawings.ts';
import { FormDrawing } from '../worksheets/frame/form-drawing.tsx';
import { useWithAssumed, WorksheetBand } from '../worksheets/said-assumed.tsx';
import { givenOf } from '../worksheets/given-of.ts';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';
import { UNFINISHED } from './sheet-words.ts';

/** The room a drawing has on the sheet. */
const ON_PAPER = { width: 420, height: 210 };

/** What the sheet prints of a worksheet: the same account that the phone shows, drawing first, nothing of it folded. */
export function AccountOnPaper({ data, kind }: { data: WorksheetData; kind: WorksheetKind }) {
  const said = useWithAssumed();
  const given = givenOf(data);
  const worksheet = worksheets[kind];
  if (worksheet.standing(given) === 'lacking') return <p>{UNFINISHED}</p>;
  const account = worksheet.account(given);
  // Without a verdict that says it, the leading figure does.
  const leads = account.some(({ is }) => is === 'verdict')
    ? undefined
    : account.find(({ is }) => is === 'lead');
  return (
    <>
      <FormDrawing drawn={drawings[kind](given, ON_PAPER)} box={ON_PAPER} />
      {account.map((block) => (
        <OnPaper key={keyOf(block)} block={block} said={block === leads ? said : (sentence) => sentence} />
      ))}
    </>
  );
}

function OnPaper({ block, said }: { block: Block; said: (sentence: string) => string }) {
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
      return <p>{block.sentence}</p>;
    case 'said':
      return block.on === 'phone' ? null : <p>{block.sentence}</p>;
    case 'way':
      return block.stands === 'open' ? <p>{`Or ${block.title}: ${block.detail}`}</p> : null;
    case 'why':
      return (
        <ul>
          {block.lines.map(({ what, how, source }) => (
            <li key={what}>
              <small>{`${what}: ${how}${source === undefined ? '' : ` (${source})`}`}</small>
            </li>
          ))}
        </ul>
      );
    case 'caution':
    case 'extra':
      return null;
    default:
      return block satisfies never;
  }
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
      return block.sentence;
    case 'caution':
      return block.of;
    case 'extra':
      return block.name;
    case 'why':
      return 'why';
    default:
      return block satisfies never;
  }
}
