import type { Entry } from '../../engine/length/entry.ts';
import { asTyped } from '../../engine/length/show.ts';
import { changePiece, drawerPieces, type PieceChanges } from '../../store/kept/drawer.ts';
import type { DrawerPiece, TypedSize } from '../../store/base/records.ts';
import { go, hrefOf } from '../address.ts';
import { AskedSize } from '../common/asked-size.tsx';
import { NotHere } from '../common/not-here.tsx';
import { PadScreen } from '../common/pad-screen.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { KeptField } from '../common/kept-field.tsx';
import { useSizeDraft } from '../common/use-draft.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { Trouble, useTold } from '../common/told.tsx';
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
  const { trouble, told } = useTold();
  const keep = (changes: PieceChanges) => told(changePiece(store, piece.id, changes));
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
      <Trouble>{trouble}</Trouble>
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
  const draftKey = `drawer/${piece.id}/${name}`;
  const draft = useSizeDraft(draftKey, unit);
  const answer = useTold();
  const readWith = useThicknessTool({
    isThickness: name === 'thickness',
    half: draft.half,
    unit,
    now: piece[name],
  });
  const here = { at: 'piece', pieceId: piece.id } as const;
  const take = (entry: Entry) => {
    const fault = readWith.fault(entry);
    if (fault !== undefined) return answer.say(fault);
    const changes = { [name]: readWith.sizeOf(entry) };
    return answer.told(changePiece(store, piece.id, changes, draftKey), () => go(here));
  };
  return (
    <PadScreen
      title={`${titleOf(name)}?`}
      subtitle={piece.name}
      back={{ href: hrefOf(here), to: 'the piece' }}
    >
      <div class="size-entry">
        {readWith.instead || (
          <AskedSize
            label={`${piece.name}, ${name}`}
            draft={draft}
            answer={answer}
            slip={(entry) => pieceSlip(piece.kind, name, entry)}
            onSize={take}
          >
            {readWith.key}
          </AskedSize>
        )}
      </div>
    </PadScreen>
  );
}

function titleOf(name: SizeName): string {
  return { thickness: 'Thickness', outside: 'Outside', inside: 'Inside' }[name];
}
