import { cutName } from '../../engine/thread/tap-name.ts';
import type { WayOut } from '../../engine/ways-out/ways-out-kinds.ts';
import type { Store } from '../../store/open-store.ts';
import type { SizeInput, Worksheet, WorksheetKind } from '../../store/records.ts';
import { sayStore } from '../../store/say-store.ts';
import { createWorksheet, setPart } from '../../store/worksheets.ts';
import type { Address } from '../address.ts';
import { nextNeed } from '../worksheets/worksheet-plan.ts';
import { planOf } from '../worksheets/worksheet-plans.ts';
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
      return to({ at: 'lathe', ...here, field: 'measured' });
    case 'new-part':
      return to({ at: 'cut', ...here, field: 'again' });
    case 'shim':
      return worksheet ? shimInStack(store, at, worksheet) : to({ at: 'drawer' });
    case 'bush':
      return newWorksheet(store, at, { kind: 'bushing', title: `Bushing, ${cutName(cut)}`, worksheet });
    case 'next-class':
    case 'new-mate':
    case 'sleeve':
      return worksheet
        ? to({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id })
        : newWorksheet(store, at, { kind: 'fit', title: `Fit, ${cutName(cut)}`, worksheet });
    default:
      return way satisfies never;
  }
}

/** The part that was cut too far takes its measured size in the stack, which then asks for shims. */
async function shimInStack(store: Store, at: LatheCut, worksheet: Worksheet): Promise<LedOut> {
  const address = { at: 'worksheet', jobId: at.job.id, worksheetId: worksheet.id } as const;
  const alike = Object.entries(worksheet.parts).filter(([, part]) => part.name === at.cut.part);
  const [only] = alike;
  const size = measuredSize(at);
  if (alike.length !== 1 || !only || !size) return to(address);
  const set = await setPart(store, worksheet.id, only[0], { ...only[1], size });
  return set.ok ? to(address) : { ok: false, why: sayStore(set.refusal) };
}

type NewOne = {
  readonly kind: WorksheetKind;
  readonly title: string;
  readonly worksheet: Worksheet | undefined;
};

async function newWorksheet(store: Store, at: LatheCut, { kind, title, worksheet }: NewOne): Promise<LedOut> {
  const plan = planOf(kind);
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
    choices: { ...plan?.choices, ...(joint !== undefined && { joint }) },
  });
  if (!made.ok) return { ok: false, why: sayStore(made.refusal) };
  const field = plan && nextNeed(plan, made.value);
  return to({
    at: 'worksheet',
    jobId: at.job.id,
    worksheetId: made.value.id,
    ...(field !== undefined && { field }),
  });
}

function measuredSize({ last }: LatheCut): SizeInput | undefined {
  const pass = last?.[1];
  return (
    pass && {
      from: 'typed',
      ...pass.measured,
      ...(pass.tool && { tool: pass.tool }),
      ...(pass.warmth && { warmth: pass.warmth }),
    }
  );
}

function to(address: Address): LedOut {
  return { ok: true, to: address };
}
