import { cutName } from '../../engine/thread/tap-name.ts';
import { worksheetOf, worksheets, type WorksheetKind } from '../../engine/worksheets/all-worksheets.ts';
import type { WayOut } from '../../engine/ways-out/ways-out-kinds.ts';
import type { Store } from '../../store/opening/open-store.ts';
import type { SizeInput, Worksheet } from '../../store/base/records.ts';
import { sayStore } from '../../store/base/say-store.ts';
import { typedSizeOf } from '../../store/kept/pass-tool.ts';
import { createWorksheet, setPart, setSize } from '../../store/kept/worksheets.ts';
import type { Address } from '../address.ts';
import { givenChoices } from '../worksheets/given-choices.ts';
import { nextNeed } from '../worksheets/kind-fields.ts';
import type { LatheCut } from './use-lathe-cut.ts';

export type LedOut =
  | { readonly ok: true; readonly to: Address }
  | { readonly ok: false; readonly why: string };

/** Where a way out goes on, with the measured size filled in; the worksheet it needs is made where there is none. */
export async function leadOut(
  store: Store,
  at: LatheCut,
  { way, worksheet }: { readonly way: WayOut; readonly worksheet: Worksheet | undefined },
): Promise<LedOut> {
  const { cut, job } = at;
  const here = { jobId: job.id, cutId: cut.id } as const;
  switch (way.kind) {
    case 'measure-again':
      return ledTo({ at: 'lathe', ...here, field: 'measured' });
    case 'new-part':
      return ledTo({ at: 'cut', ...here, field: 'again' });
    case 'shim':
      return worksheet ? shimInPlace(store, at, worksheet) : ledTo({ at: 'drawer' });
    case 'bush':
      return newWorksheet(store, at, { kind: 'bushing', title: `Bushing, ${cutName(cut)}`, worksheet });
    case 'next-class':
    case 'new-mate':
    case 'sleeve':
      return worksheet
        ? ledTo({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id })
        : newWorksheet(store, at, { kind: 'fit', title: `Fit, ${cutName(cut)}`, worksheet });
    default:
      return way satisfies never;
  }
}

/** The part that was cut too far takes its measured size where it stands in its worksheet, which then asks for shims. */
async function shimInPlace(store: Store, at: LatheCut, worksheet: Worksheet): Promise<LedOut> {
  const address = { at: 'worksheet', jobId: at.job.id, worksheetId: worksheet.id } as const;
  const place = worksheetOf(worksheet.kind)
    ?.cutPlaces(givenChoices(worksheet.choices))
    .find(({ part }) => part === at.cut.part);
  const measured = measuredSize(at);
  if (place && measured) {
    const given = await setSize(store, worksheet.id, place.field, measured);
    return given.ok ? ledTo(address) : { ok: false, why: sayStore(given.refusal) };
  }
  const alike = Object.entries(worksheet.parts).filter(([, part]) => part.name === at.cut.part);
  const [only] = alike;
  if (alike.length !== 1 || !only || !measured) return ledTo(address);
  const set = await setPart(store, worksheet.id, only[0], { ...only[1], size: measured });
  return set.ok ? ledTo(address) : { ok: false, why: sayStore(set.refusal) };
}

type NewOne = {
  readonly kind: WorksheetKind;
  readonly title: string;
  readonly worksheet: Worksheet | undefined;
};

async function newWorksheet(store: Store, at: LatheCut, { kind, title, worksheet }: NewOne): Promise<LedOut> {
  const own = at.cut.of === 'outside' ? 'pin' : 'bore';
  const mate = own === 'pin' ? 'bore' : 'pin';
  const size = measuredSize(at);
  const mateSize = worksheet?.sizes[mate];
  const wall = worksheet?.sizes['wall'];
  const joint = worksheet?.choices['joint'];
  const made = await createWorksheet(store, {
    jobId: at.job.id,
    kind,
    title,
    sizes: { ...(size && { [own]: size }), ...(mateSize && { [mate]: mateSize }), ...(wall && { wall }) },
    choices: { ...worksheets[kind].starts, ...(joint !== undefined && { joint }) },
  });
  if (!made.ok) return { ok: false, why: sayStore(made.refusal) };
  const field = nextNeed(made.value);
  return ledTo({
    at: 'worksheet',
    jobId: at.job.id,
    worksheetId: made.value.id,
    ...(field !== undefined && { field }),
  });
}

function measuredSize({ cut, last }: LatheCut): SizeInput | undefined {
  return last && typedSizeOf(cut, last[1]);
}

function ledTo(address: Address): LedOut {
  return { ok: true, to: address };
}
