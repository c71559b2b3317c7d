import { useMemo, useState } from 'preact/hooks';
import type { Between } from '../../../engine/worksheets/bearing-seat/seat-cuts.ts';
import type { ToolInForce } from '../../../engine/reading/measuring-tool.ts';
import { toolOfSeveral } from '../../../engine/reading/tool-of-several.ts';
import { absolute, isZero, sum, times, type Length } from '../../../engine/length/length.ts';
import { mean } from '../../../engine/reading/estimate.ts';
import { sayPickUnproved, sayPieces } from '../../../engine/shim/say-shims.ts';
import { shimsFromDrawer, type ShimPick } from '../../../engine/shim/shims.ts';
import { withUnit, figure, type ShownUnit } from '../../../engine/length/show.ts';
import type { SizeInput } from '../../../store/base/records.ts';
import { takePieces } from '../../../store/kept/take-pieces.ts';
import { announce } from '../../common/announce.ts';
import { Button } from '../../common/button.tsx';
import { useStore } from '../../common/store-context.ts';
import { Trouble, useTold } from '../../common/told.tsx';
import { roundedEntry } from '../../cuts/entry-of-length.ts';
import { bearingSeatWorksheet } from '../../../engine/worksheets/bearing-seat/worksheet.ts';
import { givenOf } from '../given-of.ts';
import { shimsOnHand } from '../shim-question.ts';
import type { WorksheetData } from '../worksheet-data.ts';

/** What of the drawer comes to the shim that a bearing wants, and the press that takes it. */
export function BearingShims({ data }: { readonly data: WorksheetData }) {
  const wanted = shimWanted(data);
  const found = useMemo(
    () => wanted && shimsFromDrawer({ drawer: shimsOnHand(data), ...wanted.shim }),
    [data],
  );
  if (found?.ok !== true || found.value.pieces === 0) return null;
  const { unit } = data;
  return (
    <section class="account-drawer">
      <p class="account-said">
        <strong>{sayPieces(found.value, unit)}</strong> {fromDrawer(found.value, unit)}
      </p>
      <Take data={data} pick={found.value} becomes={wanted?.becomes} />
    </section>
  );
}

type ShimWanted = {
  readonly shim: Between;
  /** The size of the worksheet that the shims become once they are in; none where they have none of their own. */
  readonly becomes?: string | undefined;
};

function shimWanted(data: WorksheetData): ShimWanted | undefined {
  const worked = bearingSeatWorksheet.work(givenOf(data));
  if (worked.is !== 'answered') return undefined;
  const { answer } = worked;
  switch (answer.kind) {
    case 'ball':
      return answer.found.present?.shim && { shim: answer.found.present.shim };
    case 'taper':
      return answer.found.newShim && answer.found.provable ? { shim: answer.found.newShim } : undefined;
    case 'seat':
      return (
        answer.found.shim && {
          shim: answer.found.shim,
          becomes: data.worksheet.sizes['alsoIn'] === undefined ? 'alsoIn' : undefined,
        }
      );
    case 'ring':
      return undefined;
    default:
      return answer satisfies never;
  }
}

type TakeProps = {
  readonly data: WorksheetData;
  readonly pick: ShimPick;
  readonly becomes: string | undefined;
};

function Take({ data, pick, becomes }: TakeProps) {
  const store = useStore();
  const { trouble, told } = useTold();
  const [taken, setTaken] = useState('');
  const { worksheet, unit } = data;
  const pieces = sayPieces(pick, unit);
  const take = () => {
    const picked = pick.picked.map(({ piece, count }) => ({ pieceId: piece.id, count }));
    const sizes = becomes === undefined ? {} : { [becomes]: sizeOf(data, pick) };
    return told(takePieces(store, worksheet.id, picked, sizes), () => {
      const words = `${pieces} taken from the drawer.`;
      announce(words);
      setTaken(`${words} Measure again with ${pick.pieces > 1 ? 'them' : 'it'} in.`);
    });
  };
  return (
    <>
      <Trouble>{trouble}</Trouble>
      {taken !== '' && <p>{taken}</p>}
      {taken === '' && (
        <div class="worksheet-act not-printed">
          <Button onPress={() => take()}>{pick.fits ? 'Take it' : 'Take it all the same'}</Button>
        </div>
      )}
    </>
  );
}

/** One piece is known as well as the drawer knows it; several together as badly as all of them. */
function sizeOf({ drawer, unit }: WorksheetData, { picked }: ShimPick): SizeInput {
  const kept = picked.flatMap(({ piece: { id }, count }) => {
    const thickness = drawer.find(({ piece }) => piece.id === id)?.piece.thickness;
    return thickness ? [{ thickness, count }] : [];
  });
  const [first, ...more] = kept;
  if (first?.count === 1 && more.length === 0) return first.thickness;
  const tool = toolOfSeveral(kept.flatMap(({ thickness, count }) => toolsOf(thickness, count)));
  return { from: 'typed', ...roundedEntry(together(picked), unit, 'nearest'), ...(tool && { tool }) };
}

function toolsOf(thickness: SizeInput, count: number): readonly { tool: ToolInForce; count: number }[] {
  return thickness.from === 'typed' && thickness.tool ? [{ tool: thickness.tool, count }] : [];
}

function together(picked: ShimPick['picked']): Length {
  return sum(picked.map(({ piece, count }) => times(mean(piece.thickness), count)));
}

function fromDrawer({ fits, proves, offAim }: ShimPick, unit: ShownUnit): string {
  const off = isZero(offAim)
    ? 'right on it'
    : `${withUnit(figure(absolute(offAim), unit), unit)} off the aim`;
  const unproved = sayPickUnproved({ fits, proves });
  if (unproved !== '') return `from the drawer, ${off}. ${unproved}`;
  return fits ? `from the drawer, ${off}` : `the nearest the drawer comes, ${off}; it does not fit`;
}
