import { countPiece, drawerPieces, removePiece, type CountedPiece } from '../../store/kept/drawer.ts';
import { hrefOf } from '../address.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { Page } from '../common/page.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { isOfKind, PIECE_KINDS } from './piece-kinds.ts';
import { sizeWords } from './size-words.ts';
import './drawer-screen.css';

/** Shims, washers, spacers and the like on hand, with how many there are. */
export function DrawerScreen() {
  const store = useStore();
  const pieces = useLive('drawer', ['drawer', 'drawerCounts'], drawerPieces);
  const { trouble, told } = useTold();
  return (
    <Page
      title="Drawer"
      subtitle="what is on hand"
      foot={
        <LinkButton kind="main" href={hrefOf({ at: 'new-piece' })}>
          Put a piece in
        </LinkButton>
      }
    >
      {pieces?.length === 0 && (
        <EmptyLine>
          Shims, washers, spacers, bar ends and taps on hand go here, with their sizes and how many there are.
        </EmptyLine>
      )}
      <Trouble>{trouble}</Trouble>
      {PIECE_KINDS.map((kind) => {
        const here = (pieces ?? []).filter(({ piece }) => isOfKind(piece, kind));
        if (here.length === 0) return null;
        return (
          <section key={kind.name} class="drawer-kind">
            <h2>{kind.many}</h2>
            <ul>
              {here.map((counted) => (
                <li key={counted.piece.id}>
                  <PieceRow
                    counted={counted}
                    onCount={(change) =>
                      void told(countPiece(store, counted.piece.id, change, change > 0 ? 'put in' : 'taken'))
                    }
                    onRemove={() => told(removePiece(store, counted.piece.id))}
                  />
                </li>
              ))}
            </ul>
          </section>
        );
      })}
    </Page>
  );
}

type PieceRowProps = {
  readonly counted: CountedPiece;
  readonly onCount: (change: 1 | -1) => void;
  readonly onRemove: () => unknown;
};

function PieceRow({ counted: { piece, count }, onCount, onRemove }: PieceRowProps) {
  const unit = useShownUnit();
  return (
    <div class="drawer-row">
      <a class="drawer-piece" href={hrefOf({ at: 'piece', pieceId: piece.id })}>
        <strong>{piece.name}</strong>
        <span class="drawer-more">
          {[sizeWords(piece, unit), piece.material].filter((word) => word !== '').join(' · ')}
        </span>
      </a>
      {count <= 0 ? (
        <Button label={`Take ${piece.name} off the list`} onPress={onRemove}>
          Off the list
        </Button>
      ) : (
        <Button label={`Take one ${piece.name}`} onPress={() => onCount(-1)}>
          −
        </Button>
      )}
      <output class="drawer-count">{count}</output>
      <Button label={`Put in one ${piece.name}`} onPress={() => onCount(1)}>
        +
      </Button>
    </div>
  );
}
