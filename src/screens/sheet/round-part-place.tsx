import { readEntry, type Entry } from '../../engine/length/entry.ts';
import { isMore, isZero, type Length } from '../../engine/length/length.ts';
import { asTyped, show } from '../../engine/length/show.ts';
import { goInstead, hrefOf } from '../address.ts';
import { AskedSize } from '../common/asked-size.tsx';
import { Button } from '../common/button.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import type { HalfTyped } from '../common/pad-text.ts';
import { Row } from '../common/row.tsx';
import { PadScreen } from '../common/pad-screen.tsx';
import { useTold } from '../common/told.tsx';
import { useSizeDraft } from '../common/use-draft.ts';
import { fileName } from './file-names.ts';
import { roundPartsOf, type RoundPartWanted } from './round-parts.ts';
import type { RoundPart } from './round-part.ts';
import type { SheetData } from './sheet-data.ts';
import { useGive } from './use-give.ts';
import { worksheetDataOf } from './worksheet-data-of.ts';
import { capital, listed as listedWords } from '../../engine/length/say-words.ts';

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

/** The rings, spacers, bushings and tapers still to be made; a spacer is asked for its diameters first. */
export function RoundPartRows({ data, onGive }: RoundPartRowsProps) {
  const { job, unit } = data;
  const listed = listedParts(data);
  return (
    <>
      <h2>Rings, spacers, bushings and tapers (DXF)</h2>
      {listed.length === 0 ? (
        <p>A ring, spacer, bushing or taper that a worksheet wants made stands here, in real size.</p>
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
  // A side that is worked out isn't asked for.
  const sides = [
    { side: 'outside' as const, half: outside, title: 'Outside' },
    { side: 'inside' as const, half: inside, title: 'Inside' },
  ].filter(({ side }) => part[side] === undefined);
  const press = () => {
    const whole = wholePart({ ...typed('outside', outside), ...typed('inside', inside), ...known(part) });
    if (!whole) return tell(`It needs its ${listedWords(sides.map(({ side }) => side))} first.`);
    if (whole.inside && !isMore(whole.outside, whole.inside))
      return tell('The inside has to be smaller than the outside.');
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
        <p>
          {sides.length > 1
            ? 'Its length is worked out; its diameters are yours to give.'
            : `Worked out: ${sizesOf(part, unit)}. The ${listedWords(sides.map(({ side }) => side))} is yours to give.`}
        </p>
        {part.length && <Row title="Length" figure={show(part.length, unit)} />}
        {sides.map(({ side, half, title }) => (
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
  const answer = useTold();
  const back = { at: 'sheet', jobId: job.id, field: placeOf(listed) } as const;
  // It stays a draft: the file is made from it.
  const take = ({ exact }: Entry) =>
    isZero(exact) ? answer.say('A diameter is more than nothing.') : goInstead(back);
  return (
    <PadScreen
      title={capital(side)}
      subtitle={listed.part.name}
      back={{ href: hrefOf(back), to: listed.part.name }}
    >
      <AskedSize
        label={`${capital(listed.part.name)}, ${side}`}
        draft={draft}
        answer={answer}
        onSize={take}
      />
    </PadScreen>
  );
}

function placeOf({ worksheetId, index }: Listed, side?: Side): string {
  return ['files', worksheetId, String(index), ...(side ? [side] : [])].join('/');
}

/** By its name: what stands before it in the stack may change. */
function draftKey(jobId: string, { worksheetId, part }: Listed, side: Side): string {
  return `sheet/${jobId}/dxf/${worksheetId}/${part.name}/${side}`;
}

/** What is worked out of a part, without what isn't. */
function known({ outside, inside, ...part }: RoundPartWanted): RoundPartWanted {
  return { ...part, ...(outside && { outside }), ...(inside && { inside }) };
}

function typed(side: Side, { typed: text, unit }: HalfTyped): { readonly [Key in Side]?: Length } {
  const entry = readEntry(text, { unit });
  return entry.ok && !isZero(entry.value.exact) ? { [side]: entry.value.exact } : {};
}

function figureOf({ typed: text, unit }: HalfTyped): string {
  const entry = readEntry(text, { unit });
  return entry.ok ? asTyped(entry.value) : 'to give';
}

function wholePart({ solid, ...part }: RoundPartWanted): RoundPart | undefined {
  const { name, outside, inside, length, offCentre, outsideFar, insideFar } = part;
  if (!outside || (!inside && !solid)) return undefined;
  return {
    name,
    outside,
    ...(inside && { inside }),
    ...(length && { length }),
    ...(offCentre && { offCentre }),
    ...(outsideFar && { outsideFar }),
    ...(insideFar && { insideFar }),
  };
}

function sizesOf(
  { outside, inside, length, offCentre, outsideFar, insideFar }: RoundPartWanted,
  unit: SheetData['unit'],
): string {
  const tapered = (side: string, size: Length, far: Length | undefined) =>
    `${side} ${show(size, unit)}${far ? ` to ${show(far, unit)}` : ''}`;
  const sizes = [
    outside && tapered('outside', outside, outsideFar),
    inside && tapered('inside', inside, insideFar),
    length && `long ${show(length, unit)}`,
    offCentre && `bore ${show(offCentre, unit)} off its middle`,
  ];
  return sizes.filter((size) => size !== undefined).join(', ');
}

async function dxfFile({ job, unit }: SheetData, part: RoundPart): Promise<File> {
  const { roundPartDxf } = await import('./round-part-dxf.ts');
  return new File([roundPartDxf(part, unit)], fileName([job.name, part.name], 'dxf'), {
    type: 'image/vnd.dxf',
  });
}
