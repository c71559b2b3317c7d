import { useState } from 'preact/hooks';
import type { DrawerPiece, Id, SizeInput } from '../../store/records.ts';
import { sayStore } from '../../store/say-store.ts';
import { takePieces } from '../../store/take-pieces.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import { useStore } from '../common/store-context.ts';
import type { WorksheetData } from './worksheet-data.ts';

/** The press that takes the washer a ring is cut from out of the drawer and makes it the one in hand. */
export function TakeBlank({ data, pieceId, name }: { data: WorksheetData; pieceId: Id; name: string }) {
  const store = useStore();
  const [trouble, setTrouble] = useState('');
  const piece = data.drawer.find((one) => one.piece.id === pieceId)?.piece;
  if (!piece) return null;
  const take = async () => {
    const taken = await takePieces(store, data.worksheet.id, [{ pieceId, count: 1 }], blankSizes(piece));
    if (taken.ok) announce(`${name} taken from the drawer.`);
    else setTrouble(sayStore(taken.refusal));
  };
  return (
    <div class="worksheet-act not-printed">
      <Button onPress={() => take()}>{`Take ${name} from the drawer`}</Button>
      {trouble !== '' && (
        <p role="alert" class="text-field-trouble">
          {trouble}
        </p>
      )}
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
