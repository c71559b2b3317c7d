import { readEntry, type Entry } from '../../src/engine/length/entry.ts';
import { usualTools } from '../../src/engine/reading/measuring-tool.ts';
import {
  changeCheck,
  checksOf,
  createCheck,
  lastTake,
  removeCheck,
  retake,
  sayCheckSeen,
} from '../../src/store/kept/checks.ts';
import { passesOf } from '../../src/store/kept/cut-state.ts';
import { changeCut, createCuts, cutsOf, removeCut } from '../../src/store/kept/cuts.ts';
import { logPass, strikeOutPass } from '../../src/store/kept/cut-passes.ts';
import { addPiece, changePiece, countPiece, drawerPieces } from '../../src/store/kept/drawer.ts';
import { changeFeature, createFeature, featuresOf, removeFeature } from '../../src/store/kept/features.ts';
import { listJobs } from '../../src/store/kept/job-list.ts';
import { changeJob, createJob, removeJob } from '../../src/store/kept/jobs.ts';
import type { Store } from '../../src/store/opening/open-store.ts';
import { logReading, readingsOf, strikeOut } from '../../src/store/kept/readings.ts';
import {
  addSteps,
  changeStep,
  markDone,
  markUndone,
  moveStep,
  removeStep,
  stepsOf,
} from '../../src/store/kept/steps.ts';
import {
  createWorksheet,
  removeWorksheet,
  setChoice,
  setPart,
  setSize,
  worksheetsOf,
} from '../../src/store/kept/worksheets.ts';

/** What the fitter was told: `logged` names a reading that must never be lost. */
export type Told = { readonly logged?: string; readonly removed?: true };

export type Chance = {
  readonly below: (most: number) => number;
  readonly one: <T>(of: readonly T[]) => T | undefined;
};

export function chanceOf(random: () => number): Chance {
  const below = (most: number) => Math.floor(random() * most);
  return { below, one: (of) => of[below(of.length)] };
}

/** One thing a fitter does on his phone; what it is and what to is up to chance. Few names and sizes, so that phones meet. */
export async function oneAct(store: Store, chance: Chance): Promise<Told> {
  const { jobs } = await listJobs(store, { limit: 4 });
  const job = chance.one(jobs);
  const act = chance.below(40);
  if (!job || (act === 0 && jobs.length < 3)) {
    await createJob(store, { name: words(chance), systems: [] });
    return {};
  }
  if (act === 1) return removed(chance.below(4) === 0 && (await removeJob(store, job.id)).ok);
  if (act <= 4)
    await changeJob(
      store,
      job.id,
      chance.one([{ name: words(chance) }, { what: words(chance) }, { customerNote: words(chance) }]) ?? {},
    );
  else if (act <= 16) return inAFeature(store, job.id, chance);
  else if (act <= 25) await inAWorksheet(store, job.id, chance);
  else if (act <= 30) await inACut(store, job.id, chance);
  else if (act <= 34) return inACheck(store, job.id, chance);
  else if (act <= 37) await inAStep(store, job.id, chance);
  else await inTheDrawer(store, chance);
  return {};
}

async function inAFeature(store: Store, jobId: string, chance: Chance): Promise<Told> {
  const feature = chance.one(await featuresOf(store, jobId));
  const act = chance.below(12);
  if (!feature || act === 0) {
    await createFeature(store, { jobId, kind: 'bore', name: words(chance) });
    return {};
  }
  if (act <= 6) return log(store, { featureId: feature.id, jobId }, chance);
  if (act <= 8) await changeFeature(store, feature.id, { name: words(chance) });
  else if (act <= 10) {
    const reading = chance.one(await readingsOf(store, feature.id));
    if (reading) await strikeOut(store, reading.id, words(chance));
  } else return removed((await removeFeature(store, feature.id)).ok);
  return {};
}

async function log(
  store: Store,
  at: { readonly featureId: string; readonly jobId: string },
  chance: Chance,
): Promise<Told> {
  const [tool] = usualTools;
  if (!tool) return {};
  const logged = await logReading(store, { ...at, entry: size(chance), tool, zeroChecked: true });
  return logged.ok ? { logged: logged.value.id } : {};
}

async function inAWorksheet(store: Store, jobId: string, chance: Chance): Promise<void> {
  const sheet = chance.one(await worksheetsOf(store, jobId));
  const act = chance.below(10);
  const name = chance.one(['bore', 'pin', 'aim']) ?? '';
  if (!sheet || act === 0)
    await createWorksheet(store, { jobId, kind: 'spacer-stack', title: words(chance) });
  else if (act <= 5)
    await setSize(
      store,
      sheet.id,
      name,
      chance.below(5) === 0 ? undefined : { from: 'typed', ...size(chance) },
    );
  else if (act <= 7) await setChoice(store, sheet.id, 'want', words(chance));
  else if (act <= 8) {
    const part = {
      name: words(chance),
      order: 0,
      count: 1,
      adjustable: false,
      size: { from: 'typed', ...size(chance) },
    } as const;
    await setPart(store, sheet.id, 'first-spacer', chance.below(4) === 0 ? undefined : part);
  } else if (chance.below(3) === 0) await removeWorksheet(store, sheet.id);
}

async function inACut(store: Store, jobId: string, chance: Chance): Promise<void> {
  const cut = chance.one(await cutsOf(store, jobId));
  const act = chance.below(9);
  if (!cut || act === 0) await createCuts(store, [newCut(jobId, chance)]);
  else if (act <= 3) await logPass(store, cut.id, { measured: size(chance) });
  else if (act <= 5) await changeCut(store, cut.id, { target: size(chance), limitsFrom: words(chance) });
  else if (act <= 7) {
    const [pass] = passesOf(cut);
    if (pass) await strikeOutPass(store, cut.id, pass[0], words(chance));
  } else if (chance.below(3) === 0) await removeCut(store, cut.id);
}

function newCut(jobId: string, chance: Chance): Parameters<typeof createCuts>[1][number] {
  const [target, lower, upper] = [size(chance), size(chance), size(chance)];
  return {
    jobId,
    name: 'Spacer, face to length',
    part: 'Spacer',
    operation: 'face',
    of: 'length',
    target,
    lower,
    upper,
    limitsFrom: '',
    cuttingTool: 'hss',
    machine: 'lathe',
  };
}

async function inACheck(store: Store, jobId: string, chance: Chance): Promise<Told> {
  const check = chance.one(await checksOf(store, jobId));
  const act = chance.below(9);
  const by = chance.one(['gap', 'by-eye'] as const) ?? 'gap';
  if (!check || act === 0)
    await createCheck(store, { jobId, name: words(chance), by, limitsFrom: '', how: '' });
  else if (act <= 2) await retake(store, check.id);
  else if (act <= 5) {
    const take = lastTake(check);
    if (take?.featureId !== undefined) return log(store, { featureId: take.featureId, jobId }, chance);
    const seen = chance.one(['holds', 'fails'] as const);
    await sayCheckSeen(store, check.id, take?.id ?? '', seen, words(chance));
  } else if (act === 6) await changeCheck(store, check.id, { how: words(chance) });
  else if (chance.below(3) === 0) return removed((await removeCheck(store, check.id)).ok);
  return {};
}

async function inAStep(store: Store, jobId: string, chance: Chance): Promise<void> {
  const step = chance.one(await stepsOf(store, jobId));
  const act = chance.below(8);
  if (!step || act <= 1) await addSteps(store, [{ jobId, text: words(chance) }]);
  else if (act <= 3) await changeStep(store, step.id, { text: words(chance) });
  else if (act === 4) await moveStep(store, step.id, 'up');
  else if (act === 5) await markDone(store, step.id, words(chance));
  else if (act === 6) await markUndone(store, step.id);
  else if (chance.below(3) === 0) await removeStep(store, step.id);
}

async function inTheDrawer(store: Store, chance: Chance): Promise<void> {
  const piece = chance.one(await drawerPieces(store));
  const act = chance.below(3);
  if (!piece) await addPiece(store, { kind: 'shim', name: words(chance), material: 'brass' }, 5);
  else if (act === 0) await countPiece(store, piece.piece.id, -1, words(chance));
  else await changePiece(store, piece.piece.id, { name: words(chance) });
}

function removed(done: boolean): Told {
  return done ? { removed: true } : {};
}

function words(chance: Chance): string {
  return chance.one(['left', 'right', 'upper', 'lower', 'brake side']) ?? '';
}

function size(chance: Chance): Entry {
  const entry = readEntry(`.${1000 + chance.below(8)}`, { unit: 'in' });
  if (!entry.ok) throw new Error('a plain decimal could not be read');
  return entry.value;
}
