/** Chance that can be run again: the same seed gives the same numbers from 0 to below 1. Mulberry32, public domain. */
export function chanceFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** Of many that go alike the first and each so manyth behind it in every run; all of them where the trials are long. */
export function someOf<T>(all: readonly T[], step: number): readonly T[] {
  return process.env['LONG'] === undefined ? all.filter((_, index) => index % step === 0) : all;
}

/** How much a trial does: a few in every test run, many on demand; `COUNT` and `SEED` in the environment rule both. */
export function trialSize({ short, long }: { short: number; long: number }): { count: number; seed: number } {
  const { COUNT, SEED, LONG } = process.env;
  return { count: Number(COUNT ?? (LONG === undefined ? short : long)), seed: Number(SEED ?? 1) };
}
