import { useState } from 'preact/hooks';
import { readEntry, type Entry } from '../../engine/length/entry.ts';
import { isZero } from '../../engine/length/length.ts';
import { sayEntry } from '../../engine/length/say.ts';
import { asTyped } from '../../engine/length/show.ts';
import { addPiece } from '../../store/drawer.ts';
import { sayStore } from '../../store/say-store.ts';
import { goInstead, hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { SizePad } from '../common/size-pad.tsx';
import { SlipQuestion, type Slip } from '../common/slip-question.tsx';
import { useStore } from '../common/store-context.ts';
import { useSizeDraft } from '../common/use-draft.ts';
import { usePadSize, useShownUnit } from '../common/use-settings.ts';
import { isFirstOfItsKind, PIECE_KINDS } from './piece-kinds.ts';
import { pieceSlip } from './piece-slip.ts';
import { useThicknessTool } from './thickness-tool.tsx';
import './drawer-screen.css';

/** One piece for the drawer: what it is, and its size. It is named by both. */
export function NewPieceScreen() {
  const store = useStore();
  const unit = useShownUnit();
  const padSize = usePadSize();
  const draft = useSizeDraft('drawer/new', unit);
  const [kind, setKind] = useState(PIECE_KINDS[0]);
  const [trouble, setTrouble] = useState<string>();
  const [slip, setSlip] = useState<Slip>();
  const readWith = useThicknessTool({ isThickness: kind?.size === 'thickness', half: draft.half, unit });
  const commit = async (entry: Entry) => {
    if (!kind) return;
    const name = `${kind.name} ${asTyped(entry)}`;
    const put = await addPiece(
      store,
      { kind: kind.kind, name, material: '', [kind.size]: readWith.sizeOf(entry) },
      1,
    );
    if (!put.ok) return setTrouble(sayStore(put.refusal));
    draft.clear();
    // A washer's other sizes decide what can be cut from it; a shim is known by its thickness.
    const asksMore = kind.kind === 'washer' || kind.kind === 'spacer';
    return goInstead(asksMore ? { at: 'piece', pieceId: put.value.id } : { at: 'drawer' });
  };
  const press = () => {
    const entry = readEntry(draft.half.typed, { unit: draft.half.unit });
    if (!entry.ok) return setTrouble(sayEntry(entry.refusal));
    if (isZero(entry.value.exact)) return setTrouble('A size is more than nothing.');
    const question = kind && pieceSlip(kind.kind, kind.size, entry.value);
    return question ? setSlip({ question, typed: entry.value, by: 'finger' }) : take(entry.value);
  };
  const take = (entry: Entry) => {
    setSlip(undefined);
    const fault = readWith.fault(entry);
    return fault === undefined ? commit(entry) : setTrouble(fault);
  };
  // A plain tap and one for inserts: of one kind, and never to be taken for each other.
  const others = PIECE_KINDS.filter((one) => one.kind === kind?.kind);
  return (
    <div class="pad-screen">
      <Page
        title="A piece for the drawer"
        subtitle={kind && `${kind.name}: its ${kind.asks ?? kind.size}`}
        back={{ href: hrefOf({ at: 'drawer' }), to: 'the drawer' }}
      >
        <div class="new-piece-top">
          <div class="new-piece-kinds" role="group" aria-label="What it is">
            {PIECE_KINDS.filter(isFirstOfItsKind).map((one) => (
              <Button key={one.name} chosen={one.kind === kind?.kind} onPress={() => setKind(one)}>
                {one.name}
              </Button>
            ))}
          </div>
        </div>
        <div class="size-entry">
          {readWith.instead || (
            <SizePad
              label={kind ? `${kind.name}, ${kind.asks ?? kind.size}` : 'Size'}
              half={draft.half}
              padSize={padSize}
              onChange={(half) => {
                setTrouble(undefined);
                setSlip(undefined);
                draft.change(half);
              }}
              commit={{ text: 'Put it in', onPress: press }}
              {...(slip
                ? { message: <SlipQuestion slip={slip} onMeant={take} /> }
                : trouble !== undefined && { message: <p role="alert">{trouble}</p> })}
            >
              {readWith.key}
              {others.length > 1 && (
                <div class="size-entry-extras" role="group" aria-label="Which of them">
                  {others.map((one) => (
                    <Button key={one.name} chosen={one === kind} onPress={() => setKind(one)}>
                      {one.words ?? one.name}
                    </Button>
                  ))}
                </div>
              )}
            </SizePad>
          )}
        </div>
      </Page>
    </div>
  );
}
