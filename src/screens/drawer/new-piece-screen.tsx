import { useState } from 'preact/hooks';
import type { Entry } from '../../engine/length/entry.ts';
import { asTyped } from '../../engine/length/show.ts';
import { addPiece } from '../../store/kept/drawer.ts';
import { goInstead, hrefOf } from '../address.ts';
import { AskedSize } from '../common/asked-size.tsx';
import { Button } from '../common/button.tsx';
import { PadScreen } from '../common/pad-screen.tsx';
import { useStore } from '../common/store-context.ts';
import { useTold } from '../common/told.tsx';
import { useSizeDraft } from '../common/use-draft.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { isFirstOfItsKind, PIECE_KINDS, type PieceKind } from './piece-kinds.ts';
import { pieceSlip } from './piece-slip.ts';
import { useThicknessTool } from './thickness-tool.tsx';
import './drawer-screen.css';

/** One piece for the drawer: what it is, and its size. It is named by both. */
export function NewPieceScreen() {
  const [kind, setKind] = useState(PIECE_KINDS[0]);
  const { draft, answer, readWith, take } = useNewPiece(kind);
  return (
    <PadScreen
      title="A piece for the drawer"
      subtitle={`${kind.name}: its ${kind.asks ?? kind.size}`}
      back={{ href: hrefOf({ at: 'drawer' }), to: 'the drawer' }}
    >
      <KindKeys kind={kind} onKind={setKind} />
      <div class="size-entry">
        {readWith.instead || (
          <AskedSize
            label={`${kind.name}, ${kind.asks ?? kind.size}`}
            draft={draft}
            answer={answer}
            slip={(entry) => pieceSlip(kind.kind, kind.size, entry)}
            onSize={take}
            commit="Put it in"
          >
            {readWith.key}
            <OfOneKindKeys kind={kind} onKind={setKind} />
          </AskedSize>
        )}
      </div>
    </PadScreen>
  );
}

/** The size that is typed for a piece of this kind, and the press that puts it into the drawer. */
function useNewPiece(kind: PieceKind) {
  const store = useStore();
  const unit = useShownUnit();
  const draft = useSizeDraft('drawer/new', unit);
  const answer = useTold();
  const readWith = useThicknessTool({ isThickness: kind.size === 'thickness', half: draft.half, unit });
  const take = (entry: Entry) => {
    const fault = readWith.fault(entry);
    if (fault !== undefined) return answer.say(fault);
    const size = { [kind.size]: readWith.sizeOf(entry) };
    const piece = { kind: kind.kind, name: `${kind.name} ${asTyped(entry)}`, material: '', ...size };
    return answer.told(addPiece(store, piece, 1), ({ id }) => {
      draft.clear();
      // A washer's other sizes decide what can be cut from it; a shim is known by its thickness.
      const asksMore = kind.kind === 'washer' || kind.kind === 'spacer';
      goInstead(asksMore ? { at: 'piece', pieceId: id } : { at: 'drawer' });
    });
  };
  return { draft, answer, readWith, take };
}

type KindKeysProps = { readonly kind: PieceKind; readonly onKind: (kind: PieceKind) => void };

// Two rows of four over the pad of a usual phone; the last of them leads to the rest.
const KINDS_IN_SIGHT = 7;

function KindKeys({ kind, onKind }: KindKeysProps) {
  const kinds = PIECE_KINDS.filter(isFirstOfItsKind);
  const isOfTheRest = (one: PieceKind) =>
    kinds.findIndex((first) => first.kind === one.kind) >= KINDS_IN_SIGHT;
  const [isRest, setRest] = useState(isOfTheRest(kind));
  const shown = kinds.filter((first) => isOfTheRest(first) === isRest);
  return (
    <div class="new-piece-top">
      <div class="new-piece-kinds" role="group" aria-label="What it is">
        {shown.map((first) => (
          <Button key={first.name} chosen={first.kind === kind.kind} onPress={() => onKind(first)}>
            {first.name}
          </Button>
        ))}
        <Button label={isRest ? 'Other kinds' : 'More kinds'} onPress={() => setRest(!isRest)}>
          {isRest ? 'others' : 'more'}
        </Button>
      </div>
    </div>
  );
}

/** A plain tap and one for inserts: of one kind, and never to be taken for each other. */
function OfOneKindKeys({ kind, onKind }: KindKeysProps) {
  const alike = PIECE_KINDS.filter((other) => other.kind === kind.kind);
  if (alike.length <= 1) return null;
  return (
    <div class="size-entry-extras" role="group" aria-label="Which of them">
      {alike.map((other) => (
        <Button key={other.name} chosen={other === kind} onPress={() => onKind(other)}>
          {other.words ?? other.name}
        </Button>
      ))}
    </div>
  );
}
