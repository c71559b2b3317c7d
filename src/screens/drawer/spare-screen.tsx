import type { Entry } from '../../engine/length/entry.ts';
import { asTyped, show } from '../../engine/length/show.ts';
import { materialNamed } from '../../engine/material/tables/materials.ts';
import { addPiece, countPiece, drawerPieces } from '../../store/kept/drawer.ts';
import type { Cut, DrawerPiece, DrawerPieceKind } from '../../store/base/records.ts';
import type { StoreResult } from '../../store/base/store-refusal.ts';
import { goInstead, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { presentSize } from '../cuts/cut-now.ts';
import { pieceKind } from './piece-kinds.ts';
import { sizeWords } from './size-words.ts';

/** A finished cut that is one too many: counted up in the drawer, as a piece that is there or a new one. */
export function SpareScreen({ cut }: { cut: Cut }) {
  const store = useStore();
  const unit = useShownUnit();
  const { trouble, told } = useTold();
  const pieces = useLive('drawer', ['drawer', 'drawerCounts'], drawerPieces);
  const here = { at: 'cut', jobId: cut.jobId, cutId: cut.id } as const;
  const size = presentSize(cut) ?? cut.target;
  const fitting = (pieces ?? []).filter(({ piece }) => couldBe(piece, cut));
  const put = (act: Promise<StoreResult<unknown>>, name: string) =>
    told(act, () => {
      announce(`One ${name} put into the drawer.`);
      goInstead(here);
    });
  return (
    <Page title="A spare for the drawer" subtitle={cut.name} back={{ href: hrefOf(here), to: 'the cut' }}>
      <Trouble>{trouble}</Trouble>
      <section class="cuts-group">
        <h2>As a new piece</h2>
        <ul>
          {kindsFor(cut).map((kind) => {
            const name = `${pieceKind(kind)?.name ?? kind} ${asTyped(size)}`;
            return (
              <li key={kind}>
                <Row
                  title={name}
                  detail={`${sizeMeasured(cut)} ${show(size.exact, unit)}`}
                  onPress={() => put(addPiece(store, newPiece(cut, kind, name, size), 1), name)}
                />
              </li>
            );
          })}
        </ul>
      </section>
      {fitting.length > 0 && (
        <section class="cuts-group">
          <h2>One more of these</h2>
          <ul>
            {fitting.map(({ piece, count }) => (
              <li key={piece.id}>
                <Row
                  title={piece.name}
                  detail={sizeWords(piece, unit)}
                  figure={count}
                  onPress={() => put(countPiece(store, piece.id, 1, `made a spare: ${cut.name}`), piece.name)}
                />
              </li>
            ))}
          </ul>
        </section>
      )}
    </Page>
  );
}

/** What a piece of this cut could be in the drawer, the likeliest first. */
export function kindsFor({
  of,
  operation,
  part,
}: Pick<Cut, 'of' | 'operation' | 'part'>): readonly DrawerPieceKind[] {
  if (part.includes('bushing')) return ['bushing'];
  if (operation === 'ring' || part === 'ring') return ['washer'];
  if (of === 'length') return ['spacer', 'washer', 'shim'];
  if (of === 'outside') return ['bar-end', 'bushing', 'spacer'];
  return ['bushing', 'spacer', 'washer'];
}

function couldBe(piece: DrawerPiece, cut: Cut): boolean {
  return kindsFor(cut).includes(piece.kind);
}

function newPiece(cut: Cut, kind: DrawerPieceKind, name: string, size: Entry) {
  const material = materialNamed(cut.material)?.name ?? cut.material ?? '';
  return { kind, name, material, [sizeMeasured(cut)]: { from: 'typed', ...size } as const };
}

/** Which of a piece's sizes the cut has made. */
function sizeMeasured({ of }: Cut): 'thickness' | 'inside' | 'outside' {
  if (of === 'outside') return 'outside';
  return of === 'bore' || of === 'tap-drill' ? 'inside' : 'thickness';
}
