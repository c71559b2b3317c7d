import {
  cutProgress,
  featureKindOf,
  type CutProgress,
  type CutQuestion,
} from '../../engine/cut/cut-progress.ts';
import { cutSpeed, type CutSpeed, type SpeedRefusal } from '../../engine/cut/cut-speed.ts';
import type { LatheDial } from '../../engine/cut/dial.ts';
import { insertTapSize } from '../../engine/thread/insert-limits.ts';
import { sum, type Length } from '../../engine/length/length.ts';
import { canMeasure, type MeasuringTool } from '../../engine/reading/measuring-tool.ts';
import { isDiameter } from '../../engine/length/metal-on.ts';
import { isHoleOperation } from '../../engine/cut/pass-plan-holes.ts';
import type { Result } from '../../engine/length/refusal.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import { materialNamed, type Material } from '../../engine/material/tables/materials.ts';
import { passesOf } from '../../store/kept/cut-state.ts';
import { getCut } from '../../store/kept/cuts.ts';
import { getDraft } from '../../store/kept/drafts.ts';
import { getJob } from '../../store/kept/jobs.ts';
import type { Store } from '../../store/opening/open-store.ts';
import type { Cut, CutPass, Id, Job, KeptLathe } from '../../store/base/records.ts';
import { getSetting } from '../../store/kept/settings.ts';
import { withKnownMetal } from '../cuts/known-metal.ts';
import { measuredPass } from '../cuts/measured-pass.ts';
import { measuringTools } from '../../store/kept/tools.ts';
import { useLive } from '../common/store-context.ts';
import { dialOfCut, dialUnitOfCut } from '../common/slides.ts';
import { groundStores, olderCuts } from '../older/job-ground.ts';
import { usualDial } from '../common/use-dial.ts';
import { dialledSince } from '../../store/kept/dialled.ts';
import { usualToolFor } from '../../engine/reading/usual-tool.ts';
import { toolChosenIn } from '../readings/use-measuring.ts';
import { workDiameter, workDiameterKey } from './work-diameter.ts';

/** A cut as it stands at the machine, read in one go: what is kept, and what follows from it. */
export type LatheCut = {
  readonly cut: Cut;
  readonly job: Job;
  readonly dial: LatheDial;
  /** The unit its marks count in, whatever unit sizes are shown in. */
  readonly dialUnit: ShownUnit;
  readonly material?: Material;
  /** What the size is measured with, as it was the last time; none where no tool of the shop can. */
  readonly tool?: MeasuringTool;
  /** Nobody chose it in this job: it is the shop's usual one. */
  readonly toolIsUsual: boolean;
  /** Every measurement in order of time, struck-out ones too, and the last that counts. */
  readonly passes: readonly [Id, CutPass][];
  readonly last?: readonly [Id, CutPass];
  /** Dialled in and cut since then, not measured. */
  readonly dialled: readonly Length[];
  readonly question: CutQuestion;
  readonly progress: CutProgress;
  /** Its figures are older than the sizes they were worked out from. */
  readonly older: boolean;
  /** Left out while the material or the diameter at the tool is not known. */
  readonly speed?: Result<CutSpeed, SpeedRefusal>;
  /** How big around the work is, where that was typed. */
  readonly workDiameter?: Length;
};

type Found = { readonly value: LatheCut | undefined };

/** The cut; `missing` once it is known not to be here. */
export function useLatheCut(cutId: Id): { readonly at?: LatheCut; readonly missing: boolean } {
  const found = useLive(
    `lathe/${cutId}`,
    ['cuts', 'jobs', 'settings', 'tools', 'drafts', ...groundStores],
    (store) => readLatheCut(store, cutId),
  );
  return {
    ...(found?.value && { at: found.value }),
    missing: found !== undefined && found.value === undefined,
  };
}

async function readLatheCut(store: Store, cutId: Id): Promise<Found> {
  const kept = await getCut(store, cutId);
  const cut = kept && (await withKnownMetal(store, kept));
  const job = cut && (await getJob(store, cut.jobId));
  if (!cut || !job) return { value: undefined };
  const passes = passesOf(cut);
  const last = passes.findLast(([, pass]) => !pass.struckOut);
  const dialled = await dialledSince(cut, (key) => getDraft(store, key));
  const slides = (await getSetting(store, 'dial')) ?? usualDial;
  const dial = dialOfCut(cut, slides);
  const dialUnit = dialUnitOfCut(cut, slides);
  const lathe = (await getSetting(store, 'lathe')) ?? { speedsRpm: [] };
  const typedDiameter = workDiameter(await getDraft(store, workDiameterKey(cut.id)));
  const tools = await measuringTools(store);
  const kind = featureKindOf(cut.of);
  const lastUsed = await getSetting(store, `lastUsed/${kind}`);
  const unit = (await getSetting(store, 'shownUnit')) ?? 'in';
  const question = questionOf(cut, { passes, dialled, dial, tools });
  const progress = cutProgress(question);
  const { present: size = cut.target.exact } = progress;
  // On its way from 1.1 to .9 a cut leaves one micrometer's range: the one for what it becomes may be chosen before.
  const suited = tools.filter(
    (one) => canMeasure(one, kind, size) || canMeasure(one, kind, cut.target.exact),
  );
  const chosen = toolChosenIn(suited, { last: lastUsed, jobId: job.id });
  const tool = chosen ?? usualToolFor({ tools, kind, size, unit });
  const material = materialNamed(cut.material);
  const speed = material && speedOf(cut, { material, progress, lathe, typedDiameter });
  const older = (await olderCuts(store, [cut])).has(cut.id);
  const value = {
    cut,
    older,
    job,
    dial,
    dialUnit,
    passes,
    dialled,
    question,
    progress,
    ...(tool && { tool }),
    toolIsUsual: chosen === undefined,
    ...(last && { last }),
    ...(material && { material }),
    ...(speed && { speed }),
    ...(typedDiameter && { workDiameter: typedDiameter }),
  };
  return { value };
}

type AtMachine = {
  readonly passes: readonly [Id, CutPass][];
  readonly dialled: readonly Length[];
  readonly dial: LatheDial;
  readonly tools: readonly MeasuringTool[];
};

function questionOf(cut: Cut, { passes, dialled, dial, tools }: AtMachine): CutQuestion {
  const material = materialNamed(cut.material)?.id;
  return {
    of: cut.of,
    target: cut.target.exact,
    lower: cut.lower.exact,
    upper: cut.upper.exact,
    operation: cut.operation,
    cuttingTool: cut.cuttingTool,
    limitsFrom: cut.limitsFrom,
    passes: passes.map(([, pass]) => measuredPass(pass, cut.material)),
    dial,
    tools,
    ...(material && { material }),
    ...(cut.drill !== undefined && { drill: cut.drill }),
    ...(cut.thread !== undefined && { thread: cut.thread }),
    ...(cut.blank && { blank: cut.blank.exact }),
    ...(cut.threading && cut.blank && { threadFrom: cut.blank.exact }),
    ...(cut.largestTake && { largestTake: cut.largestTake.exact }),
    ...(cut.finishTake && { finishTake: cut.finishTake.exact }),
    ...(dialled.length > 0 && { dialledSince: sum(dialled) }),
  };
}

type SpeedAround = {
  readonly material: Material;
  readonly progress: CutProgress;
  readonly lathe: KeptLathe;
  readonly typedDiameter: Length | undefined;
};

function speedOf(
  cut: Cut,
  { material, progress, lathe, typedDiameter }: SpeedAround,
): Result<CutSpeed, SpeedRefusal> | undefined {
  const { operation, of, target, cuttingTool } = cut;
  // The tool passes over a bore, the chuck turns what is round it; on the mill the tool turns.
  const isInside = isInsideWork(cut);
  const own = isDiameter(of) ? [target.exact, progress.present] : [];
  // A tap cuts wider than the hole it is run through; the thread a cut names is an insert's.
  const tap = cut.thread === undefined ? undefined : insertTapSize(cut.thread);
  const [first, ...rest] = [...own, tap, isInside ? undefined : typedDiameter].filter(
    (size) => size !== undefined,
  );
  if (!first) return undefined;
  const isFinish = progress.next !== undefined && progress.next.kind !== 'rough';
  return cutSpeed({
    material,
    cuttingTool,
    operation,
    pass: isFinish && !isHoleOperation(operation) ? 'finish' : 'rough',
    diameters: [first, ...rest],
    ...(isInside && typedDiameter && { work: typedDiameter }),
    lathe,
  });
}

/** Whether what is cut lies inside work that turns, so that its own size says nothing of how large that is. */
export function isInsideWork({ of, machine }: Pick<Cut, 'of' | 'machine'>): boolean {
  return machine === 'lathe' && (of === 'bore' || of === 'tap-drill');
}

/** A tool of the shop is asked for by the kind of size that is cut. */
export function kindAtTheLathe(cut: Pick<Cut, 'of'>) {
  return featureKindOf(cut.of);
}
