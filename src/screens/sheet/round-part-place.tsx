import { useState } from 'preact/hooks';
import { readEntry } from '../../engine/length/entry.ts';
import { isMore, isZero, type Length } from '../../engine/length/length.ts';
import { sayEntry } from '../../engine/length/say.ts';
import { asTyped, show } from '../../engine/length/show.ts';
import { goInstead, hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import type { HalfTyped } from '../common/pad-text.ts';
import { Row } from '../common/row.tsx';
import { SizePad } from '../common/size-pad.tsx';
import { useSizeDraft } from '../common/use-draft.ts';
import { usePadSize } from '../common/use-settings.ts';
import { fileName } from './file-names.ts';
import { roundPartsOf, type RoundPartWanted } from './round-parts.ts';
import type { RoundPart } from './round-part.ts';
import type { SheetData } from './sheet-data.ts';
import { useGive } from './use-give.ts';
import { worksheetDataOf } from './worksheet-data-of.ts';
import '../worksheets/size-entry.css';
import { capital } from '../../engine/length/say-words.ts';

type Side = 'outside' | 'inside';
const SIDES: readonly Side[] = ['outside', 'inside'];

type Listed = { readonly worksheetId: string; readonly index: number; readonly title: string } & {
  readonly part: RoundPartWanted;
};

function listedParts(data: SheetData): readonly Listed[] {
  return data.worksheets.flatMap((worksheet) =>
    roundPartsOf(worksheetDataOf(worksheet, data)).map((part, index) => ({
      worksheetId: worksheet.id,
      index,
      title: worksheet.title,
      part,
    })),
  );
}

type RoundPartRowsProps = {
  readonly data: SheetData;
  readonly onGive: (file: () => Promise<File>) => void;
};

/** The rings, spacers and bushings still to be made; a spacer is asked for its diameters first. */
export function RoundPartRows({ data, onGive }: RoundPartRowsProps) {
  const { job, unit } = data;
  const listed = listedParts(data);
  return (
    <>
      <h2>Rings, spacers and bushings (DXF)</h2>
      {listed.length === 0 ? (
        <p>A ring, spacer or bushing that a worksheet wants made stands here, in real size.</p>
      ) : (
        <p>{`In real size, in ${unit === 'in' ? 'inches' : 'millimetres'}.`}</p>
      )}
      {listed.map(({ worksheetId, index, title, part }) => {
        const whole = wholePart(part);
        return (
          <Row
            key={`${worksheetId} ${index}`}
            title={capital(part.name)}
            detail={`${sizesOf(part, unit)}, ${title}`}
            {...(whole
              ? { onPress: () => onGive(() => dxfFile(data, whole)) }
              : {
                  href: hrefOf({ at: 'sheet', jobId: job.id, field: `files/${worksheetId}/${index}` }),
                })}
          />
        );
      })}
    </>
  );
}

type RoundPartPlaceProps = { readonly data: SheetData; readonly field: string };

/** A spacer's diameters, which no worksheet knows, and its file. */
export function RoundPartPlace({ data, field }: RoundPartPlaceProps) {
  const [worksheetId, index, side] = field.split('/');
  const listed = listedParts(data).find(
    (one) => one.worksheetId === worksheetId && String(one.index) === index,
  );
  if (!listed) return <NotHere what="part" />;
  const chosen = SIDES.find((one) => one === side);
  return chosen ? (
    <DiameterPad data={data} listed={listed} side={chosen} />
  ) : (
    <Diameters data={data} listed={listed} />
  );
}

type ListedProps = { readonly data: SheetData; readonly listed: Listed };

function Diameters({ data, listed }: ListedProps) {
  const { job, unit } = data;
  const { part } = listed;
  const { said, tell, give } = useGive();
  const outside = useSizeDraft(draftKey(job.id, listed, 'outside'), unit).half;
  const inside = useSizeDraft(draftKey(job.id, listed, 'inside'), unit).half;
  const press = () => {
    const whole = wholePart({ ...part, ...typed('outside', outside), ...typed('inside', inside) });
    if (!whole) return tell('It needs its outside and its inside first.');
    if (!isMore(whole.outside, whole.inside)) return tell('The inside has to be smaller than the outside.');
    return void give(() => dxfFile(data, whole));
  };
  return (
    <Page
      title={capital(part.name)}
      subtitle={listed.title}
      back={{ href: hrefOf({ at: 'sheet', jobId: job.id, field: 'files' }), to: 'the files' }}
      foot={
        <Button kind="main" onPress={press}>
          Give it as DXF
        </Button>
      }
    >
      <div class="files">
        {said !== '' && <p class="files-said">{said}</p>}
        <p>Its length is worked out; its diameters are yours to give.</p>
        {part.length && <Row title="Length" figure={show(part.length, unit)} />}
        {[
          { side: 'outside' as const, half: outside, title: 'Outside' },
          { side: 'inside' as const, half: inside, title: 'Inside' },
        ].map(({ side, half, title }) => (
          <Row
            key={side}
            title={title}
            figure={figureOf(half)}
            href={hrefOf({ at: 'sheet', jobId: job.id, field: placeOf(listed, side) })}
          />
        ))}
      </div>
    </Page>
  );
}

function DiameterPad({ data, listed, side }: ListedProps & { readonly side: Side }) {
  const { job, unit } = data;
  const draft = useSizeDraft(draftKey(job.id, listed, side), unit);
  const padSize = usePadSize();
  const [trouble, setTrouble] = useState<string>();
  const back = { at: 'sheet', jobId: job.id, field: placeOf(listed) } as const;
  const commit = () => {
    const entry = readEntry(draft.half.typed, { unit: draft.half.unit });
    if (!entry.ok) return setTrouble(sayEntry(entry.refusal));
    if (isZero(entry.value.exact)) return setTrouble('A diameter is more than nothing.');
    return goInstead(back);
  };
  const label = `${capital(listed.part.name)}, ${side}`;
  return (
    <div class="pad-screen">
      <Page
        title={capital(side)}
        subtitle={listed.part.name}
        back={{ href: hrefOf(back), to: listed.part.name }}
      >
        <div class="size-entry">
          <SizePad
            label={label}
            half={draft.half}
            padSize={padSize}
            onChange={(half) => {
              setTrouble(undefined);
              draft.change(half);
            }}
            commit={{ text: 'Use it', onPress: commit }}
            {...(trouble !== undefined && { message: <p role="alert">{trouble}</p> })}
          />
        </div>
      </Page>
    </div>
  );
}

function placeOf({ worksheetId, index }: Listed, side?: Side): string {
  return ['files', worksheetId, String(index), ...(side ? [side] : [])].join('/');
}

/** By its name: what stands before it in the stack may change. */
function draftKey(jobId: string, { worksheetId, part }: Listed, side: Side): string {
  return `sheet/${jobId}/dxf/${worksheetId}/${part.name}/${side}`;
}

function typed(side: Side, { typed: text, unit }: HalfTyped): { readonly [Key in Side]?: Length } {
  const entry = readEntry(text, { unit });
  return entry.ok && !isZero(entry.value.exact) ? { [side]: entry.value.exact } : {};
}

function figureOf({ typed: text, unit }: HalfTyped): string {
  const entry = readEntry(text, { unit });
  return entry.ok ? asTyped(entry.value) : 'to give';
}

function wholePart({ name, outside, inside, length }: RoundPartWanted): RoundPart | undefined {
  return outside && inside ? { name, outside, inside, ...(length && { length }) } : undefined;
}

function sizesOf({ outside, inside, length }: RoundPartWanted, unit: SheetData['unit']): string {
  const sizes = [
    outside && `outside ${show(outside, unit)}`,
    inside && `inside ${show(inside, unit)}`,
    length && `long ${show(length, unit)}`,
  ];
  return sizes.filter((size) => size !== undefined).join(', ');
}

async function dxfFile({ job, unit }: SheetData, part: RoundPart): Promise<File> {
  const { roundPartDxf } = await import('./round-part-dxf.ts');
  return new File([roundPartDxf(part, unit)], fileName([job.name, part.name], 'dxf'), {
    type: 'image/vnd.dxf',
  });
}
