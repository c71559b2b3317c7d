import type { StoreRefusal, StoreResult } from '../../store/base/store-refusal.ts';

type OnAnswer = (refusal: StoreRefusal | undefined) => void;
let tell: OnAnswer = () => undefined;

/** Called with the answer to every write whose screen has no line of its own for it: nothing where it was kept. */
export function watchRefused(onAnswer: OnAnswer): void {
  tell = onAnswer;
}

/** For a key with no room for words beside it: what could not be kept is said in the line above the screen. */
export async function saidIfRefused<T>(act: Promise<StoreResult<T>>): Promise<StoreResult<T>> {
  const done = await act;
  tell(done.ok ? undefined : done.refusal);
  return done;
}
