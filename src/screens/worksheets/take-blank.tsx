import type { DrawerPiece, Id, SizeInput } from '../../store/base/records.ts';
import { takePieces } from '../../store/kept/take-pieces.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import { useStore } from '../common/store-context.ts';
import { Trouble, useTold } from '../common/told.tsx';
import type { WorksheetData } from './worksheet-data.ts';

/** The press that takes the washer a ring is cut from out of the drawer and makes it the one in hand. */
export function TakeBlank({ data, pieceId, name }: { data: WorksheetData; pieceId: Id; name: string }) {
  const store = useStore();
  const { trouble, told } = useTold();
  const piece = data.drawer.find((one) => one.piece.id === pieceId)?.piece;
  if (!piece) return null;
  const take = () =>
    told(takePieces(store, data.worksheet.id, [{ pieceId, count: 1 }], blankSizes(piece)), () =>
      announce(`${name} taken from the drawer.`),
    );
  return (
    <div class="worksheet-act not-printed">
      <Button onPress={() => take()}>{`Take ${name} from the drawer`}</Button>
      <Trouble>{trouble}</Trouble>
    </div>
  );
}

function blankSizes({ outside, inside, thickness }: DrawerPiece): Readonly<Record<string, SizeInput>> {
  return {
    ...(outside && { blankOutside: outside }),
    ...(inside && { blankInside: inside }),
    ...(thickness && { blankThickness: thickness }),
  };
}
