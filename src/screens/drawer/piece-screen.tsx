import { useState } from 'preact/hooks';
import { readEntry, type Entry } from '../../engine/length/entry.ts';
import { isZero } from '../../engine/length/length.ts';
import { sayEntry } from '../../engine/length/say.ts';
import { asTyped } from '../../engine/length/show.ts';
import { changePiece, drawerPieces, type PieceChanges } from '../../store/drawer.ts';
import type { DrawerPiece, TypedSize } from '../../store/records.ts';
import { sayStore } from '../../store/say-store.ts';
import { go, hrefOf } from '../address.ts';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { SizePad } from '../common/size-pad.tsx';
import { SlipQuestion, type Slip } from '../common/slip-question.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { KeptField } from '../common/kept-field.tsx';
import { useSizeDraft } from '../common/use-draft.ts';
import { usePadSize, useShownUnit } from '../common/use-settings.ts';
import { PhotoStrip } from '../photos/photo-strip.tsx';
import { PhotosScreen } from '../photos/photos-screen.tsx';
import { pieceSlip } from './piece-slip.ts';
import { useThicknessTool } from './thickness-tool.tsx';
import './drawer-screen.css';

const SIZES = ['thickness', 'outside', 'inside'] as const;
type SizeName = (typeof SIZES)[number];

/** One piece of the drawer: its name and all its sizes. A ring is cut from a washer whose three sizes are known. */
export function PieceScreen({ pieceId, field }: { pieceId: string; field?: string }) {
  const pieces = useLive('drawer', ['drawer', 'drawerCounts'], drawerPieces);
  const piece = pieces?.find((one) => one.piece.id === pieceId)?.piece;
  if (pieces && !piece) return <NotHere what="piece" />;
  if (!piece) return <Page title=" ">{null}</Page>;
  const [photos, ofPhotos] = (field ?? '').split('/');
  if (photos === 'photos')
    return (
      <PhotosScreen
        ownerStore="drawer"
        ownerId={pieceId}
        {...(ofPhotos !== undefined && { field: ofPhotos })}
      />
    );
  const asked = SIZES.find((name) => name === field);
  return asked ? <SizeScreen piece={piece} name={asked} /> : <PieceForm key={piece.id} piece={piece} />;
}

function PieceForm({ piece }: { piece: DrawerPiece }) {
  const store = useStore();
  const [trouble, setTrouble] = useState('');
  const keep = async (changes: PieceChanges) => {
    const kept = await changePiece(store, piece.id, changes);
    setTrouble(kept.ok ? '' : sayStore(kept.refusal));
    return kept.ok;
  };
  const rename = async (name: string) => name !== '' && keep({ name });
  return (
    <Page
      title={piece.name}
      subtitle="a piece of the drawer"
      back={{ href: hrefOf({ at: 'drawer' }), to: 'the drawer' }}
    >
      <KeptField label="Name" kept={piece.name} onWords={rename} />
      <ul>
        {SIZES.map((size) => {
          const given = piece[size];
          return (
            <li key={size}>
              <Row
                href={hrefOf({ at: 'piece', pieceId: piece.id, field: size })}
                title={titleOf(size)}
                {...(given?.from === 'typed'
                  ? { figure: asTyped(given), detail: size === 'thickness' ? readWithWords(given) : '' }
                  : { detail: 'not given' })}
              />
            </li>
          );
        })}
      </ul>
      <PhotoStrip owner={{ store: 'drawer', id: piece.id }} />
      {trouble !== '' && (
        <p role="alert" class="text-field-trouble">
          {trouble}
        </p>
      )}
    </Page>
  );
}

function readWithWords({ tool, toolAssumed }: TypedSize): string {
  if (!tool) return 'taken as exact';
  return toolAssumed ? `${tool.name} assumed` : tool.name;
}

function SizeScreen({ piece, name }: { piece: DrawerPiece; name: SizeName }) {
  const store = useStore();
  const unit = useShownUnit();
  const padSize = usePadSize();
  const draftKey = `drawer/${piece.id}/${name}`;
  const draft = useSizeDraft(draftKey, unit);
  const [trouble, setTrouble] = useState<string>();
  const [slip, setSlip] = useState<Slip>();
  const readWith = useThicknessTool({
    isThickness: name === 'thickness',
    half: draft.half,
    unit,
    now: piece[name],
  });
  const here = { at: 'piece', pieceId: piece.id } as const;
  const commit = () => {
    const entry = readEntry(draft.half.typed, { unit: draft.half.unit });
    if (!entry.ok) return setTrouble(sayEntry(entry.refusal));
    if (isZero(entry.value.exact)) return setTrouble('A size is more than nothing.');
    const question = pieceSlip(piece.kind, name, entry.value);
    return question ? setSlip({ question, typed: entry.value, by: 'finger' }) : take(entry.value);
  };
  const take = async (entry: Entry) => {
    setSlip(undefined);
    const fault = readWith.fault(entry);
    if (fault !== undefined) return setTrouble(fault);
    const kept = await changePiece(store, piece.id, { [name]: readWith.sizeOf(entry) }, draftKey);
    return kept.ok ? go(here) : setTrouble(sayStore(kept.refusal));
  };
  return (
    <div class="pad-screen">
      <Page title={`${titleOf(name)}?`} subtitle={piece.name} back={{ href: hrefOf(here), to: 'the piece' }}>
        <div class="size-entry">
          {readWith.instead || (
            <SizePad
              label={`${piece.name}, ${name}`}
              half={draft.half}
              padSize={padSize}
              onChange={(half) => {
                setTrouble(undefined);
                setSlip(undefined);
                draft.change(half);
              }}
              commit={{ text: 'Use it', onPress: () => commit() }}
              {...(slip
                ? { message: <SlipQuestion slip={slip} onMeant={take} /> }
                : trouble !== undefined && { message: <p role="alert">{trouble}</p> })}
            >
              {readWith.key}
            </SizePad>
          )}
        </div>
      </Page>
    </div>
  );
}

function titleOf(name: SizeName): string {
  return { thickness: 'Thickness', outside: 'Outside', inside: 'Inside' }[name];
}
