import { useMemo } from 'preact/hooks';
import { bandOf } from '../../../engine/reading/estimate.ts';
import { isZero } from '../../../engine/length/length.ts';
import { sayPick, sayPickBand, sayPieces, sayShimRefusal } from '../../../engine/shim/say-shims.ts';
import type { StackAnswer, StackQuestion } from '../../../engine/worksheets/spacer-stack/spacer-stack.ts';
import { takeShims } from '../../../store/kept/take-shims.ts';
import { announce } from '../../common/announce.ts';
import { Button } from '../../common/button.tsx';
import { useStore } from '../../common/store-context.ts';
import { Trouble, useTold } from '../../common/told.tsx';
import { LeadNext } from '../lead.tsx';
import { shimOffer, type ShimOffer } from '../shim-question.ts';
import type { WorksheetData } from '../worksheet-data.ts';

type ShimPickProps = {
  readonly data: WorksheetData;
  readonly question: StackQuestion;
  readonly answer: StackAnswer;
};

/** What the drawer gives for a stack with too much room, and the press that takes it out and puts it in. */
export function ShimPick({ data, question, answer }: ShimPickProps) {
  const offer = useMemo(() => shimOffer(data, question, answer), [data]);
  if (!offer) return null;
  if (!offer.ok) return <p class="worksheet-said">{sayShimRefusal(offer.refusal)}</p>;
  if (offer.value.pick.pieces === 0) return <NoPiece offer={offer.value} data={data} />;
  return <Pick offer={offer.value} data={data} direct={question.direct !== undefined} />;
}

function NoPiece({ offer: { pick, after }, data }: { offer: ShimOffer; data: WorksheetData }) {
  // Where the limits allow no shim at all, none is called for.
  if (pick.fits) return null;
  return <p class="worksheet-said">{sayPick(pick, after.gap, data.unit)}</p>;
}

type PickProps = { readonly offer: ShimOffer; readonly data: WorksheetData; readonly direct: boolean };

function Pick({ offer: { pick, after }, data: { worksheet, unit }, direct }: PickProps) {
  const store = useStore();
  const { trouble, told } = useTold();
  const pieces = sayPieces(pick, unit);
  const take = () => {
    const shims = pick.picked.map(({ piece, count }) => ({ pieceId: piece.id, count }));
    return told(takeShims(store, worksheet.id, shims), () =>
      announce(`${pieces} taken from the drawer and put into the stack.`),
    );
  };
  return (
    <section class="lead">
      <h2 class="lead-label">From the drawer</h2>
      <LeadNext>{pieces}</LeadNext>
      <p>{sayPick(pick, after.gap, unit)}</p>
      <p>{pick.picked.map(({ piece, count }) => `${count} × ${piece.name}`).join(', ')}.</p>
      {!isZero(pick.band.halfWidth) && <p>{sayPickBand(pick, unit)}</p>}
      {pick.picked.some(({ piece }) => isZero(bandOf(piece.thickness).halfWidth)) && (
        <p>Thickness taken as exact: the drawer doesn’t say what read it.</p>
      )}
      {pick.fits && after.verdict.kind === 'too-close' && (
        <p>With them in, the stack’s own band leaves it too close to call: read the gap itself.</p>
      )}
      {direct && <p>The gap was read before they were in: it is set aside with them.</p>}
      <Trouble>{trouble}</Trouble>
      <div class="worksheet-act not-printed">
        <Button onPress={() => take()}>{pick.fits ? 'Take them' : 'Take these all the same'}</Button>
      </div>
    </section>
  );
}
