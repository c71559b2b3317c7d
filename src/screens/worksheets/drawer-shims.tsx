import { useMemo, useState } from 'preact/hooks';
import type { Between } from '../../engine/worksheets/bearing-seat/bearing-seat.ts';
import type { ToolInForce } from '../../engine/reading/measuring-tool.ts';
import { toolOfSeveral } from '../../engine/reading/tool-of-several.ts';
import { absolute, isZero, sum, times, type Length } from '../../engine/length/length.ts';
import { mean } from '../../engine/reading/estimate.ts';
import { sayGoodBetween } from '../../engine/worksheets/bearing-seat/say-bearing-seat.ts';
import { sayPickUnproved, sayPieces } from '../../engine/shim/say-shims.ts';
import { shimsFromDrawer, type ShimPick } from '../../engine/shim/shims.ts';
import { withUnit, figure, figureBetween, type ShownUnit } from '../../engine/length/show.ts';
import type { SizeInput } from '../../store/records.ts';
import { sayStore } from '../../store/say-store.ts';
import { takePieces } from '../../store/take-pieces.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import { useStore } from '../common/store-context.ts';
import { roundedEntry } from '../cuts/entry-of-length.ts';
import { Lead, LeadNext } from './lead.tsx';
import { shimsOnHand } from './shim-question.ts';
import type { WorksheetData } from './worksheet-data.ts';

type DrawerShimsProps = {
  readonly data: WorksheetData;
  readonly label: string;
  readonly shim: Between;
  /** The size of the worksheet that the shims become once they are in; left out where they have none of their own. */
  readonly becomes?: string;
};

/** A shim that is wanted, what of the drawer comes to it, and the press that takes it. */
export function DrawerShims({ data, label, shim, becomes }: DrawerShimsProps) {
  const { unit } = data;
  const found = useMemo(() => shimsFromDrawer({ drawer: shimsOnHand(data), ...shim }), [data]);
  return (
    <Lead label={label} figure={figureBetween(shim.aim, shim.lower, shim.upper, unit)} unit={unit}>
      <p>{sayGoodBetween(shim, unit)}</p>
      {found.ok && found.value.pieces > 0 && (
        <>
          <LeadNext>{sayPieces(found.value, unit)}</LeadNext>
          <p>{fromDrawer(found.value, unit)}</p>
          <Take data={data} pick={found.value} becomes={becomes} />
        </>
      )}
    </Lead>
  );
}

type TakeProps = {
  readonly data: WorksheetData;
  readonly pick: ShimPick;
  readonly becomes: string | undefined;
};

function Take({ data, pick, becomes }: TakeProps) {
  const store = useStore();
  const [said, setSaid] = useState<{ readonly taken: boolean; readonly words: string }>();
  const { worksheet, unit } = data;
  const pieces = sayPieces(pick, unit);
  const take = async () => {
    const taken = pick.picked.map((one) => ({ pieceId: one.piece.id, count: one.count }));
    const count = pick.pieces;
    const sizes = becomes === undefined ? {} : { [becomes]: sizeOf(data, pick) };
    const done = await takePieces(store, worksheet.id, taken, sizes);
    if (!done.ok) return setSaid({ taken: false, words: sayStore(done.refusal) });
    const words = `${pieces} taken from the drawer.`;
    announce(words);
    return setSaid({ taken: true, words: `${words} Measure again with ${count > 1 ? 'them' : 'it'} in.` });
  };
  return (
    <>
      {said && (
        <p {...(!said.taken && { role: 'alert' as const, class: 'text-field-trouble' })}>{said.words}</p>
      )}
      {said?.taken !== true && (
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
