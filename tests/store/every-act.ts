import { usualTools } from '../../src/engine/reading/measuring-tool.ts';
import { addPart } from '../../src/store/kept/add-part.ts';
import { basisOf } from '../../src/store/kept/basis.ts';
import {
  changeCheck,
  checksOf,
  createCheck,
  createChecks,
  removeCheck,
  retake,
  sayCheckSeen,
  takesOf,
} from '../../src/store/kept/checks.ts';
import { changeCut, createCuts, removeCut, setCutState } from '../../src/store/kept/cuts.ts';
import { setMade, shiftZero } from '../../src/store/kept/mill-cuts.ts';
import { makeAgain } from '../../src/store/kept/make-cut-again.ts';
import { strikeOutPass } from '../../src/store/kept/cut-passes.ts';
import { removeDemo } from '../../src/store/demo/demo.ts';
import { addPiece, changePiece, countPiece, removePiece } from '../../src/store/kept/drawer.ts';
import { changeFeature, createFeature, removeFeature } from '../../src/store/kept/features.ts';
import { giveCutSize } from '../../src/store/kept/give-cut-size.ts';
import { changeJob, createJob, getJob, removeJob } from '../../src/store/kept/jobs.ts';
import { bringKnown, knownPartsOf } from '../../src/store/kept/known-parts.ts';
import { addMoney, changeMoney, removeMoney } from '../../src/store/kept/money.ts';
import type { Store } from '../../src/store/opening/open-store.ts';
import { changePart, createPart, removePart } from '../../src/store/kept/parts.ts';
import { addPhoto, changePhoto, removePhoto } from '../../src/store/kept/photos.ts';
import { putInMade } from '../../src/store/kept/put-in-made.ts';
import { readingsOf, strikeOut, strikeOutAll } from '../../src/store/kept/readings.ts';
import { writeReason } from '../../src/store/kept/reasons.ts';
import {
  addRecheck,
  changeRecheck,
  markRechecked,
  removeRecheck,
  setOdometer,
} from '../../src/store/kept/rechecks.ts';
import { replaceCuts } from '../../src/store/kept/replace-cuts.ts';
import type { SizeInput } from '../../src/store/base/records.ts';
import { changeSetting, putSetting } from '../../src/store/kept/settings.ts';
import { startAgain } from '../../src/store/kept/start-again.ts';
import {
  addSteps,
  changeStep,
  markDone,
  markUndone,
  moveStep,
  removeStep,
} from '../../src/store/kept/steps.ts';
import { takePieces } from '../../src/store/kept/take-pieces.ts';
import { takeShims } from '../../src/store/kept/take-shims.ts';
import { addToGet, dropToGet, setGot } from '../../src/store/kept/to-get.ts';
import { addTool, changeTool, putBackTool, removeTool, toolRecords } from '../../src/store/kept/tools.ts';
import {
  createWorksheet,
  getWorksheet,
  removeWorksheet,
  renameWorksheet,
  setChoice,
  setPart,
  setSize,
} from '../../src/store/kept/worksheets.ts';
import { facing, inches } from './cut-for-test.ts';
import { worked } from './open-for-test.ts';

/** Every write the store offers: each is taken back by one undo, or stands below with the reason why not. */

const JOB = 'demo-outfit-7';
const STACK = 'demo-bracket-float';
const typed = (text: string): SizeInput => ({ from: 'typed', ...inches(text) });
const shim = { kind: 'shim', name: 'Shim .010', material: 'steel', thickness: typed('.010') } as const;
const photo = {
  jobId: JOB,
  owner: { store: 'jobs', id: JOB },
  note: '',
  mime: 'image/png',
  width: 1,
  height: 1,
  preview: new ArrayBuffer(4),
  bytes: new ArrayBuffer(8),
} as const;
const [usual] = usualTools;
if (!usual) throw new Error('there are no usual tools');
const { id: _usual, ...itsFigures } = usual;
const secondCaliper = { ...itsFigures, name: 'a second caliper' };
const eye = {
  jobId: JOB,
  name: 'Cotter pin in',
  by: 'by-eye',
  limitsFrom: 'own',
  how: 'look',
  takes: {},
} as const;

/** What a finger does, with what must have been there before it. */
export const acts: Readonly<Record<string, (store: Store) => Promise<() => Promise<{ ok: boolean }>>>> = {
  createJob: async (s) => async () => createJob(s, { name: 'Trailer', systems: [] }),
  changeJob: async (s) => async () => changeJob(s, JOB, { name: 'Outfit 8', state: 'closed' }),
  writeReason: async (s) => async () =>
    writeReason(s, JOB, 'no-check', { why: 'Held by a torque arm', as: '' }),
  startAgain: async (s) => async () =>
    startAgain(s, JOB, {
      name: 'Outfit 8',
      take: { worksheets: true, cuts: true, checks: true, steps: true, toGet: true },
    }),
  setGot: async (s) => async () => setGot(s, JOB, { key: 'tap/STI tap M8', what: 'STI tap M8' }, true),
  addToGet: async (s) => async () => addToGet(s, JOB, 'brake fluid'),
  dropToGet: async (s) => {
    worked(await addToGet(s, JOB, 'brake fluid'));
    return async () => dropToGet(s, JOB, 'brake fluid');
  },
  removeJob: async (s) => {
    const job = worked(await createJob(s, { name: 'Trailer', systems: [] }));
    return async () => removeJob(s, job.id);
  },
  createFeature: async (s) => async () => createFeature(s, { jobId: JOB, kind: 'gap', name: 'float' }),
  changeFeature: async (s) => async () => changeFeature(s, 'demo-link-bore', { name: 'right bore' }),
  removeFeature: async (s) => async () => removeFeature(s, 'demo-link-bore'),
  strikeOut: async (s) => {
    const standing = (await readingsOf(s, 'demo-link-bore')).find(({ struckOut }) => !struckOut);
    return async () => strikeOut(s, standing?.id ?? '', 'dropped');
  },
  strikeOutAll: async (s) => {
    const standing = (await readingsOf(s, 'demo-link-bore')).filter(
      ({ struckOut }) => struckOut === undefined,
    );
    return async () =>
      strikeOutAll(
        s,
        standing.map(({ id }) => id),
        'dropped',
      );
  },
  createWorksheet: async (s) => async () => createWorksheet(s, { jobId: JOB, kind: 'fit', title: 'Seat' }),
  setSize: async (s) => async () => setSize(s, 'demo-link-slop', 'pin', typed('.437')),
  setChoice: async (s) => async () => setChoice(s, 'demo-link-slop', 'role', 'runs'),
  setPart: async (s) => async () =>
    setPart(s, STACK, 'more', { name: 'washer', order: 9, count: 1, adjustable: false }),
  renameWorksheet: async (s) => async () => renameWorksheet(s, STACK, 'Left side'),
  removeWorksheet: async (s) => async () => removeWorksheet(s, STACK),
  giveCutSize: async (s) => {
    const stack = await getWorksheet(s, STACK);
    const [partId = ''] = Object.keys(stack?.parts ?? {});
    const basis = basisOf(stack ?? { sizes: {}, choices: {}, parts: {} }, []);
    return async () =>
      giveCutSize(s, {
        worksheetId: STACK,
        place: { partId },
        size: typed('1.2'),
        cutIds: ['demo-cut-spacer'],
        basis,
      });
  },
  putInMade: async (s) => {
    const [partId = ''] = Object.keys((await getWorksheet(s, STACK))?.parts ?? {});
    const part = { name: 'one part', count: 1, adjustable: true, size: typed('1.2') };
    return async () => putInMade(s, { worksheetId: STACK, part, gone: [partId] });
  },
  addPart: async (s) => async () =>
    addPart(s, { worksheetId: STACK, part: { name: 'shim', count: 1, adjustable: false }, isLast: true }),
  createCuts: async (s) => async () => createCuts(s, [facing(JOB), facing(JOB)]),
  changeCut: async (s) => async () => changeCut(s, 'demo-cut-spacer', { name: 'Spacer' }),
  strikeOutPass: async (s) => async () => strikeOutPass(s, 'demo-cut-ring', 'demo-pass-2', 'chip'),
  setCutState: async (s) => async () => setCutState(s, 'demo-cut-ring', 'scrapped'),
  setMade: async (s) => async () => setMade(s, 'demo-cut-ring', true),
  shiftZero: async (s) => async () => shiftZero(s, ['demo-cut-spacer'], { axis: 'x', reads: inches('.012') }),
  makeAgain: async (s) => async () => makeAgain(s, ['demo-cut-ring'], JOB),
  replaceCuts: async (s) => async () => replaceCuts(s, ['demo-cut-spacer'], [facing(JOB)]),
  removeCut: async (s) => async () => removeCut(s, 'demo-cut-spacer'),
  createCheck: async (s) => async () => createCheck(s, eye),
  createChecks: async (s) => async () => createChecks(s, [eye, eye]),
  retake: async (s) => async () => retake(s, 'demo-check-hose'),
  sayCheckSeen: async (s) => {
    const check = worked(await retake(s, worked(await createCheck(s, eye)).id));
    const [takeId = ''] = takesOf(check).at(-1) ?? [];
    return async () => sayCheckSeen(s, check.id, takeId, 'holds', 'bent over');
  },
  changeCheck: async (s) => async () => changeCheck(s, 'demo-check-hose', { how: 'with a mirror' }),
  removeCheck: async (s) => {
    const [check] = await checksOf(s, JOB);
    return async () => removeCheck(s, check?.id ?? '');
  },
  addSteps: async (s) => async () => addSteps(s, [{ jobId: JOB, text: 'Fit the axle' }]),
  changeStep: async (s) => async () => changeStep(s, 'demo-step-stack', { text: 'Spacers, dry' }),
  moveStep: async (s) => async () => moveStep(s, 'demo-step-bracket', 'up'),
  markDone: async (s) => async () => markDone(s, 'demo-step-axle', 'R. Tiller'),
  markUndone: async (s) => {
    worked(await markDone(s, 'demo-step-axle', 'R. Tiller'));
    return async () => markUndone(s, 'demo-step-axle');
  },
  removeStep: async (s) => async () => removeStep(s, 'demo-step-axle'),
  addRecheck: async (s) => async () => addRecheck(s, { jobId: JOB, what: 'Axle nut', afterDays: 7 }),
  changeRecheck: async (s) => async () => changeRecheck(s, 'demo-recheck-first-miles', { what: 'All nuts' }),
  markRechecked: async (s) => async () => markRechecked(s, 'demo-recheck-first-miles', { by: 'R. Tiller' }),
  removeRecheck: async (s) => async () => removeRecheck(s, 'demo-recheck-first-miles'),
  setOdometer: async (s) => async () => setOdometer(s, JOB, { reading: 50_000, unit: 'km' }),
  addPhoto: async (s) => async () => addPhoto(s, photo),
  changePhoto: async (s) => {
    const kept = worked(await addPhoto(s, photo));
    return async () => changePhoto(s, kept.id, { note: 'the rim' });
  },
  removePhoto: async (s) => {
    const kept = worked(await addPhoto(s, photo));
    return async () => removePhoto(s, kept.id);
  },
  addMoney: async (s) => async () => addMoney(s, { jobId: JOB, what: 'Bar', amount: '12.40' }),
  changeMoney: async (s) => {
    const line = worked(await addMoney(s, { jobId: JOB, what: 'Bar', amount: '12.40' }));
    return async () => changeMoney(s, line.id, { amount: '14.20' });
  },
  removeMoney: async (s) => {
    const line = worked(await addMoney(s, { jobId: JOB, what: 'Bar', amount: '12.40' }));
    return async () => removeMoney(s, line.id);
  },
  bringKnown: async (s) => {
    const job = worked(await createJob(s, { name: 'Trailer', systems: [] }));
    const from = await getJob(s, JOB);
    const [known] = from ? await knownPartsOf(s, from) : [];
    return async () => (known ? bringKnown(s, job.id, known) : { ok: false });
  },
  createPart: async (s) => async () => createPart(s, { jobId: JOB, name: 'Axle', origin: 'kit' }),
  changePart: async (s) => {
    const part = worked(await createPart(s, { jobId: JOB, name: 'Axle', origin: 'kit' }));
    return async () => changePart(s, part.id, { name: 'Long axle' });
  },
  removePart: async (s) => {
    const part = worked(await createPart(s, { jobId: JOB, name: 'Axle', origin: 'kit' }));
    return async () => removePart(s, part.id);
  },
  addPiece: async (s) => async () => addPiece(s, shim, 3),
  countPiece: async (s) => {
    const piece = worked(await addPiece(s, shim, 3));
    return async () => countPiece(s, piece.id, -1, 'bent');
  },
  changePiece: async (s) => {
    const piece = worked(await addPiece(s, shim, 3));
    return async () => changePiece(s, piece.id, { name: 'Shim, brass', material: 'brass' });
  },
  removePiece: async (s) => {
    const piece = worked(await addPiece(s, shim, 3));
    return async () => removePiece(s, piece.id);
  },
  takePieces: async (s) => {
    const piece = worked(await addPiece(s, shim, 3));
    return async () => takePieces(s, STACK, [{ pieceId: piece.id, count: 1 }]);
  },
  takeShims: async (s) => {
    const piece = worked(await addPiece(s, shim, 3));
    return async () => takeShims(s, STACK, [{ pieceId: piece.id, count: 2 }]);
  },
  addTool: async (s) => async () => addTool(s, secondCaliper),
  // A tool is changed from the list of them, and the first look at that list puts the usual ones in.
  changeTool: async (s) => {
    await toolRecords(s);
    const { id } = worked(await addTool(s, secondCaliper));
    return async () => changeTool(s, id, { tool: { name: 'the good caliper' } });
  },
  removeTool: async (s) => {
    await toolRecords(s);
    const { id } = worked(await addTool(s, secondCaliper));
    return async () => removeTool(s, id);
  },
  putBackTool: async (s) => {
    await toolRecords(s);
    worked(await removeTool(s, usual.id));
    return async () => putBackTool(s, usual);
  },
  putSetting: async (s) => async () => putSetting(s, 'lathe', { speedsRpm: [70, 200] }),
  changeSetting: async (s) => async () => changeSetting(s, 'lathe', () => ({ speedsRpm: [70, 200] })),
  removeDemo: async (s) => async () => removeDemo(s),
};

/** Why a write leaves no undo of its own. */
export const withoutUndo: Readonly<Record<string, string>> = {
  logReading: 'a logged reading is struck out, and stays to be seen',
  logPass: 'a logged pass is struck out, and stays to be seen',
  signSheet: 'what was signed stands for ever',
  addDemo: 'the demo goes out again in one press, which can be undone',
  putDraft: 'half typed: the delete key takes it back',
  clearDraft: 'half typed: written again at the next key',
  undoLast: 'is the way back itself',
  undoBrought: 'is the way back itself, for what a file brought',
  settleConflict: 'undone in tests/store of its own, as it needs a merge before it',
  restoreBackup: 'what a file brought goes out again as one (tests/store/undo-brought)',
  applyPreviewed: 'the same',
  rebuildClock: 'no act of a finger: the note of the last stamp, made anew where it is damaged',
  previewBackup: 'reads a file aside; nothing of the shop changes',
  waitingPreview: 'only reads',
  leavePreviewed: 'puts a file away that was read aside; the file itself is still there',
  noteBackup: 'that a backup was handed over is no change of the records',
  stageBackup: 'reads a file aside; nothing of the shop changes',
  stageBytes: 'the same, for pictures',
  markReady: 'the same, at its end',
  eachLine: 'only reads a file',
  comparePairs: 'only compares',
  alone: 'keeps two files from being read aside at once',
  readRecord: 'only reads a line of a file',
  throughTheDoor: 'the same, for all of them',
  readDemo: 'only reads the file of the demo',
  bundled: 'reads a file aside; nothing of the shop changes',
  flushAll: 'the same, at its end',
  meetAll:
    'what comes from home and what is here become one, as with a file; what was written apart is asked',
  pairWith: 'no change of the records: to leave home is the way back',
  unpair: 'no change of the records: to pair again is the way back',
  act: 'the frame that every write is made in',
  actOnCut: 'the same, for one cut: whoever calls it says what is undone',
  openStore: 'opens',
  openDatabase: 'opens',
  openDatabaseAsItIs: 'opens',
};
