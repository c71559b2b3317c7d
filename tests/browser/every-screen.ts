import { demoJobIds } from '../../src/store/demo/demo-job-ids.ts';
import { demoWorksheets } from '../../src/store/demo/demo-worksheets.ts';
import type { Page } from './hands/hands.ts';
import { chooseInShop, follow, goTo, press, settled, typeSize, withoutPassingLines } from './on-a-screen.ts';
import { inFullSun, inTrouble } from './trouble-screens.ts';
import { putTwoValues } from './two-values.ts';

/** Every screen and state of the app, and how to get there: measured, checked and photographed by the files beside this one. */

export type AppScreen = {
  /** Also the name of its picture. */
  readonly name: string;
  /** Its address behind the #; absent, the screen is reached from the one before it by what is pressed. */
  readonly place?: string;
  /** What is pressed and typed there. */
  readonly arrange?: (page: Page) => Promise<void>;
  /** Presses that put a setting back which later screens should not have. */
  readonly leave?: (page: Page) => Promise<void>;
  /** What makes it can be asked of Chromium's driver alone. */
  readonly inChromiumOnly?: true;
};

const outfit = '/job/demo-outfit-7';
const trailer = '/job/demo-trailer-hub';
const stack = `${outfit}/worksheets/demo-bracket-float`;
const slop = `${outfit}/worksheets/demo-link-slop`;
const insert = `${outfit}/worksheets/demo-link-insert`;

/** A phone that was never used. */
const firstUse: readonly AppScreen[] = [
  { name: 'jobs-none', place: '/jobs' },
  { name: 'drawer-empty', place: '/drawer' },
  { name: 'charts-drills', place: '/charts/drills' },
  { name: 'new-job', place: '/new-job', arrange: (page) => press(page, 'brake') },
  { name: 'route-new', arrange: (page) => press(page, 'Make the job') },
  { name: 'readings-none', arrange: (page) => follow(page, /^Measure/) },
  { name: 'new-reading', arrange: (page) => follow(page, 'New size') },
  { name: 'pad-first-reading', arrange: (page) => press(page, /^Bore/) },
  {
    name: 'worksheets-none',
    arrange: async (page) => {
      await follow(page, /^Back/);
      await follow(page, /^Back/);
      await follow(page, /^Decide/);
    },
  },
  { name: 'hole-and-pin-first-question', arrange: (page) => press(page, /^Hole and pin/) },
  { name: 'hole-and-pin-unfinished', arrange: (page) => follow(page, /^Back/) },
];

const jobsAndReadings: readonly AppScreen[] = [
  { name: 'jobs', place: '/jobs' },
  {
    name: 'find',
    place: '/find',
    arrange: async (page) => {
      await page.getByLabel('Any word or size in a job').fill('.4487');
      await page.getByText('1 job.').waitFor();
    },
  },
  { name: 'job-not-here', place: '/job/nowhere/readings' },
  { name: 'route', place: outfit },
  { name: 'get', place: `${outfit}/get` },
  { name: 'photos-none', place: `${outfit}/photos/jobs/demo-outfit-7` },
  {
    name: 'camera',
    arrange: async (page) => {
      await follow(page, 'Camera');
      await page.getByRole('button', { name: 'Take it' }).click({ trial: true });
    },
  },
  {
    name: 'photo',
    arrange: async (page) => {
      await press(page, 'Take it');
      await page.locator('.camera-last').click();
      await page.getByLabel('Note').fill('Indicator on the disc rim');
    },
  },
  { name: 'photos', arrange: (page) => follow(page, /^Back/) },
  { name: 'money-none', place: `${outfit}/money` },
  {
    name: 'money-new-hours',
    arrange: async (page) => {
      await follow(page, 'Hours');
      await page.getByLabel('What for').fill('Machining the spacers and the ring');
      await typeSize(page, '1:20');
    },
  },
  { name: 'money-rate', arrange: (page) => press(page, 'Put it down') },
  {
    name: 'money-new-amount-refused',
    arrange: async (page) => {
      await typeSize(page, '65');
      await press(page, 'Use it');
      await follow(page, 'Part or cost');
      await typeSize(page, '1,250.00');
      await press(page, 'Put it down');
    },
  },
  {
    name: 'money',
    arrange: async (page) => {
      await typeSize(page, '12500.90');
      await press(page, 'Put it down');
    },
  },
  { name: 'money-line', arrange: (page) => follow(page, /^Machining/) },
  { name: 'money-currency', place: `${outfit}/money/currency` },
  { name: 'about-job', place: `${outfit}/about` },
  { name: 'readings', place: `${outfit}/readings` },
  { name: 'pad', place: `${outfit}/readings/demo-link-bore` },
  {
    name: 'pad-typed',
    place: `${outfit}/readings/demo-link-bolt`,
    arrange: (page) => typeSize(page, '.4371'),
  },
  {
    name: 'pad-long',
    place: `${outfit}/readings/demo-hub`,
    arrange: (page) => typeSize(page, '4-13/32'),
  },
  {
    name: 'pad-refused',
    place: `${outfit}/readings/demo-sleeve`,
    arrange: async (page) => {
      await typeSize(page, '1/3');
      await press(page, 'Log reading');
    },
  },
  {
    name: 'pad-slip-question',
    place: `${outfit}/readings/demo-bracket`,
    arrange: async (page) => {
      await typeSize(page, '7.500');
      await press(page, 'Log reading');
    },
  },
  {
    name: 'pad-struck-out',
    place: `${trailer}/readings/demo-bearing-bore`,
    arrange: (page) => press(page, /^Strike out last/),
  },
  { name: 'all-readings', place: `${outfit}/readings/demo-link-bore/all` },
  { name: 'tool-choice', place: `${outfit}/readings/demo-link-bore/tool` },
  { name: 'known-parts', place: `${trailer}/known` },
  { name: 'readings-of-another', arrange: (page) => press(page, /^Rear wheel/) },
  { name: 'pad-of-another', arrange: (page) => follow(page, /^Hub over the bearings/) },
];

const worksheetsInStates: readonly AppScreen[] = [
  { name: 'worksheets', place: `${outfit}/worksheets` },
  { name: 'stack', place: stack },
  {
    name: 'stack-one-part',
    arrange: async (page) => {
      await press(page, 'One part in place of several');
      const parts = page.getByRole('group', { name: 'Parts to replace' }).getByRole('button');
      await parts.nth(0).click();
      await parts.nth(2).click();
      await press(page, 'Why');
    },
  },
  { name: 'stack-size', place: `${stack}/fixed` },
  { name: 'stack-choice', place: `${stack}/want` },
  { name: 'stack-tape', place: `${stack}/parts` },
  { name: 'stack-part', place: `${stack}/part/demo-stack-spacer` },
  { name: 'stack-part-size', place: `${stack}/part/demo-stack-spacer/size` },
  { name: 'stack-part-least', place: `${stack}/part/demo-stack-spacer/leastLength` },
  { name: 'hole-and-pin', place: slop },
  {
    name: 'hole-and-pin-why',
    arrange: async (page) => {
      await page.getByRole('button', { name: 'Why', exact: true }).click();
    },
  },
  {
    name: 'hole-and-pin-compare',
    place: slop,
    arrange: async (page) => {
      await press(page, 'Compare');
      await page.getByText(/^Ruled out: /).click();
    },
  },
  { name: 'hole-and-pin-good', place: `${trailer}/worksheets/demo-bearing-fit` },
  { name: 'hole-and-pin-size', place: `${slop}/pin` },
  { name: 'hole-and-pin-below-zero', place: `${slop}/lower` },
  { name: 'hole-and-pin-thread', place: `${slop}/thread` },
  { name: 'hole-and-pin-about', place: `${slop}/about` },
  { name: 'thread-insert', place: insert },
  {
    name: 'thread-insert-why',
    arrange: (page) => page.getByRole('button', { name: 'Why', exact: true }).click(),
  },
  { name: 'steering-number', place: `${outfit}/worksheets/demo-steering/rake` },
  { name: 'bearing-seat-read', place: `${trailer}/worksheets/demo-hub-bearings/direct` },
];

/** The demo's worksheet of every other kind: a new one is walked through as soon as the demo has it. */
const ofFurtherKinds = demoWorksheets(...demoJobIds, 0)
  .map(({ id, jobId, kind }, index, all) => {
    // A kind that asks more than one question stands in the demo more than once.
    const isFirst = all.findIndex((one) => one.kind === kind) === index;
    return { name: isFirst ? kind : id, place: `/job/${jobId}/worksheets/${id}` };
  })
  .filter(({ place }) => worksheetsInStates.every((one) => one.place !== place));

const worksheets: readonly AppScreen[] = [...worksheetsInStates, ...ofFurtherKinds];

const sheetChartsDrawerShop: readonly AppScreen[] = [
  { name: 'sheet', place: `${outfit}/sheet` },
  { name: 'sheet-files', place: `${outfit}/sheet/files` },
  { name: 'sheet-spacer', place: `${outfit}/sheet/files/demo-bracket-float/0` },
  { name: 'sheet-spacer-size', place: `${outfit}/sheet/files/demo-bracket-float/0/outside` },
  { name: 'charts-drills-typed', place: '/charts/drills', arrange: (page) => typeSize(page, '29/64') },
  {
    name: 'charts-inserts',
    place: '/charts/inserts',
    arrange: async (page) => {
      await press(page, '7/16');
      await press(page, '7/16-20 UNF');
    },
  },
  { name: 'new-piece', place: '/drawer/new' },
  {
    name: 'drawer',
    arrange: async (page) => {
      await typeSize(page, '.010');
      await press(page, 'Put it in');
      await page.locator('.drawer-row').waitFor();
    },
  },
  { name: 'piece', arrange: (page) => page.locator('.drawer-piece').click() },
  { name: 'shop', place: '/shop' },
  { name: 'restore', place: '/shop/restore' },
  {
    name: 'restore-refused',
    arrange: async (page) => {
      const buffer = Buffer.from('a shopping list');
      const file = { name: 'list.txt', mimeType: 'text/plain', buffer };
      await page.getByLabel('Backup or job file').setInputFiles(file);
      await page.getByRole('alert').waitFor();
    },
  },
  { name: 'both-none', place: '/shop/both' },
  {
    name: 'both',
    place: '/shop',
    arrange: async (page) => {
      await putTwoValues(page);
      await goTo(page, '/shop/both');
      await page
        .getByRole('button', { name: /^Take / })
        .first()
        .waitFor();
    },
  },
  { name: 'jobs-both', place: '/jobs' },
  {
    name: 'both-settled',
    place: '/shop/both',
    arrange: async (page) => {
      await press(page, 'Take that one: .0095 in');
      await page.getByRole('button', { name: 'Undo' }).waitFor();
    },
  },
  { name: 'tool', place: '/shop/tool/digital-caliper' },
  { name: 'tool-figure', place: '/shop/tool/digital-caliper/mpe' },
];

const lathe = (cut: string) => `${outfit}/cuts/demo-cut-${cut}/lathe`;

const atTheLathe: readonly AppScreen[] = [
  { name: 'lathe', place: lathe('ring') },
  { name: 'lathe-lit', arrange: (page) => page.locator('.left-to-take-label').click() },
  { name: 'lathe-not-measured', arrange: (page) => press(page, /^Cut it, next/) },
  { name: 'lathe-figure-first', arrange: (page) => press(page, /^Cut it, next/) },
  { name: 'lathe-gauge-typing', arrange: (page) => page.keyboard.type('1.53') },
  {
    name: 'lathe-i-measured',
    arrange: async (page) => {
      await typeSize(page, '1.5185');
      await follow(page, /^I measured/);
    },
  },
  {
    name: 'lathe-slip-question',
    arrange: async (page) => {
      await typeSize(page, '15.185');
      await page.keyboard.press('Enter');
    },
  },
  {
    name: 'lathe-last-pass',
    arrange: async (page) => {
      await typeSize(page, '1.5000');
      await page.keyboard.press('Enter');
      await page.getByText(/^Last pass/).waitFor();
    },
  },
  {
    name: 'lathe-to-size',
    arrange: async (page) => {
      await typeSize(page, '1.4980');
      await page.keyboard.press('Enter');
      await page.getByText('To size', { exact: false }).first().waitFor();
    },
  },
  { name: 'lathe-tool', place: `${lathe('ring')}/tool` },
  { name: 'lathe-not-measured-yet', place: lathe('bushing') },
  {
    name: 'lathe-past-the-limit',
    arrange: async (page) => {
      await typeSize(page, '.5625');
      await page.keyboard.press('Enter');
      await page.getByText('No good').waitFor();
    },
  },
  { name: 'lathe-facing-which-slide', place: lathe('spacer') },
  {
    name: 'lathe-facing',
    arrange: async (page) => {
      await press(page, 'lead-screw handwheel');
      await page.getByText('Give its dial, for turns').waitFor();
    },
  },
  { name: 'lathe-how-big-around', place: `${lathe('spacer')}/work-diameter` },
  {
    name: 'mill',
    place: `${outfit}/worksheets/demo-adapter-plate`,
    arrange: async (page) => {
      await follow(page, 'Cut it');
      await press(page, /^Put .*on the cut list/);
      await goTo(page, `${outfit}/cuts`);
      await page.getByRole('link', { name: /^Hole B3/ }).click();
      await follow(page, 'To the mill');
    },
  },
  { name: 'mill-place-first', arrange: (page) => press(page, 'Drilled, next') },
  { name: 'mill-lit', arrange: (page) => page.locator('.left-to-take-label').first().click() },
  { name: 'mill-next', arrange: (page) => press(page, 'Drilled, next') },
  { name: 'mill-zero-off', arrange: (page) => follow(page, 'Zero was off') },
  { name: 'mill-zero-pad', arrange: (page) => follow(page, /^x reads over zero/) },
  { name: 'shop-mill-dial', place: '/shop/mill-x' },
  { name: 'shop-mill-marks', place: '/shop/mill-marks-x' },
  { name: 'shop-mill-edge-finder', place: '/shop/mill-edge-finder' },
  { name: 'shop-speeds-none', place: '/shop/speeds' },
  {
    name: 'shop-speeds',
    arrange: async (page) => {
      await typeSize(page, '210');
      await press(page, 'Add it');
      await page.getByRole('button', { name: 'Take out 210 rpm' }).waitFor();
    },
  },
  { name: 'shop-most-rpm', place: '/shop/most-rpm' },
  { name: 'shop-dial-marks', place: '/shop/dial-marks' },
  { name: 'shop-slide', place: '/shop/slide-lead-screw' },
  { name: 'shop-slide-backlash', place: '/shop/backlash-lead-screw' },
];

const theCuts: readonly AppScreen[] = [
  { name: 'cut-it', place: `${stack}/cuts` },
  { name: 'cut-it-ways', place: `${slop}/cuts` },
  { name: 'cut-it-left-out', arrange: (page) => press(page, /^Leave out Hole, drilled/) },
  { name: 'cut-it-material', place: `${slop}/cuts/thread-insert/0/material` },
  { name: 'cuts', place: `${outfit}/cuts` },
  { name: 'all-cuts', place: '/cuts' },
  { name: 'cut', place: `${outfit}/cuts/demo-cut-spacer` },
  { name: 'cut-measured', place: `${outfit}/cuts/demo-cut-ring` },
  { name: 'cut-target', place: `${outfit}/cuts/demo-cut-spacer/target` },
  { name: 'cut-machine', place: `${outfit}/cuts/demo-cut-spacer/machine` },
  { name: 'cut-name', place: `${outfit}/cuts/demo-cut-spacer/name` },
  { name: 'cut-again', place: `${outfit}/cuts/demo-cut-spacer/again` },
  { name: 'cut-spare', place: `${outfit}/cuts/demo-cut-spacer/spare` },
  { name: 'new-cut', place: `${outfit}/cuts/new` },
  { name: 'new-cut-form', place: `${outfit}/cuts/new/turn` },
  { name: 'cuts-none', place: `${trailer}/cuts` },
];

const fitUp: readonly AppScreen[] = [
  { name: 'fit-up-none', place: `${trailer}/fit-up` },
  { name: 'new-check', place: `${outfit}/fit-up/new` },
  { name: 'check-not-done', arrange: (page) => press(page, /^Float/) },
  { name: 'check-pad', arrange: (page) => follow(page, 'Log a reading') },
  {
    name: 'check-no-good',
    arrange: async (page) => {
      for (const size of ['.0040', '.0041', '.0039']) {
        await typeSize(page, size);
        await press(page, 'Log reading');
        await page.waitForTimeout(400);
      }
      await follow(page, 'Back to the check');
    },
  },
  { name: 'stack-read-directly', arrange: (page) => press(page, 'Back to the worksheet with this reading') },
  {
    name: 'check-too-close',
    arrange: async (page) => {
      await follow(page, /^Float Too tight/);
      await press(page, 'Take it again');
      await follow(page, 'Log a reading');
      await typeSize(page, '.010');
      await press(page, 'Log reading');
      await follow(page, 'Back to the check');
    },
  },
  { name: 'check-about', arrange: (page) => follow(page, 'About') },
  { name: 'usual-checks', place: `${outfit}/fit-up/new/list` },
  { name: 'check-by-eye', arrange: (page) => press(page, /^Brake lets go/) },
  {
    name: 'check-by-eye-fails',
    arrange: async (page) => {
      await page.getByLabel('Note').fill('drags on the left');
      await press(page, 'No good');
    },
  },
  { name: 'own-check', place: `${outfit}/fit-up/new/own` },
  { name: 'check-no-limits', arrange: (page) => press(page, /^Gap/) },
  { name: 'check-limit', arrange: (page) => follow(page, 'Give its limits') },
  { name: 'fit-up', place: `${outfit}/fit-up` },
];

const inTheAssembly: readonly AppScreen[] = [
  { name: 'assembly-none', place: `${trailer}/assembly` },
  { name: 'assembly', place: `${outfit}/assembly` },
  { name: 'assembly-who', arrange: (page) => press(page, 'Step 1 is done') },
  {
    name: 'assembly-step-done',
    arrange: async (page) => {
      await page.getByLabel('Name or initials').fill('Jo B.');
      await press(page, 'Use this name, step done');
      await page.getByRole('button', { name: 'Step 1 is not done after all' }).waitFor();
    },
  },
  { name: 'assembly-new-steps', place: `${outfit}/assembly/steps` },
  { name: 'step', place: `${outfit}/assembly/demo-step-link` },
  {
    name: 'step-torque',
    place: `${outfit}/assembly/demo-step-axle/torque`,
    arrange: (page) => typeSize(page, '72.5'),
  },
  { name: 'step-torque-source', place: `${outfit}/assembly/demo-step-axle/torque/source` },
  { name: 'step-cure', place: `${outfit}/assembly/demo-step-link/cure` },
  { name: 'step-drawing', place: `${outfit}/assembly/demo-step-stack/drawing` },
  { name: 'step-parts', place: `${outfit}/assembly/demo-step-stack/parts` },
  { name: 'part-mock-up', place: `${outfit}/assembly/parts/demo-spacer-part` },
  { name: 'part-new', place: `${outfit}/assembly/parts/new` },
  { name: 'recheck-new', place: `${outfit}/assembly/rechecks/new` },
  { name: 'recheck', place: `${outfit}/assembly/rechecks/demo-recheck-first-miles` },
  { name: 'recheck-days', place: `${outfit}/assembly/rechecks/demo-recheck-first-miles/days` },
  { name: 'recheck-distance', place: `${outfit}/assembly/rechecks/demo-recheck-first-miles/distance` },
  {
    name: 'odometer',
    place: `${outfit}/assembly/odometer`,
    arrange: (page) => typeSize(page, '120400'),
  },
  { name: 'sign-off-stopped', place: `${outfit}/sign-off` },
  {
    name: 'jobs-recheck-due',
    place: `${outfit}/assembly/odometer`,
    arrange: async (page) => {
      await press(page, 'Use it');
      await page.waitForTimeout(400); // the next press at this place is another one
      await goTo(page, `${outfit}/assembly/odometer`);
      await typeSize(page, '120472');
      await press(page, 'Use it');
      await goTo(page, '/jobs');
      await page.getByText('Overdue by 22 mi.').waitFor();
    },
  },
  { name: 'assembly-recheck-due', place: `${outfit}/assembly` },
  {
    name: 'sign-off',
    place: `${trailer}/about`,
    arrange: async (page) => {
      await press(page, 'none of these');
      await goTo(page, `${trailer}/sign-off`);
      await page.getByText('Nothing stands in the way of signing.').waitFor();
    },
  },
  {
    name: 'signed-sheet',
    arrange: async (page) => {
      await press(page, 'Sign off');
      await page.getByRole('heading', { name: /, signed$/ }).waitFor();
    },
  },
  { name: 'sheet-with-signed', place: `${trailer}/sheet` },
];

const inMillimetres: readonly AppScreen[] = [
  {
    name: 'pad-millimetres',
    place: '/shop',
    arrange: async (page) => {
      await press(page, 'millimetres');
      await goTo(page, `${trailer}/readings/demo-spindle-seat`);
    },
  },
  { name: 'readings-millimetres', place: `${outfit}/readings` },
  { name: 'stack-millimetres', place: stack },
  { name: 'fit-up-millimetres', place: `${outfit}/fit-up` },
  { name: 'hole-and-pin-millimetres', place: slop },
  { name: 'cut-it-millimetres', place: `${stack}/cuts` },
  { name: 'cuts-millimetres', place: `${outfit}/cuts` },
  { name: 'lathe-millimetres', place: lathe('spacer') },
  { name: 'thread-insert-millimetres', place: insert, leave: (page) => chooseInShop(page, 'inches') },
];

const withGloves: readonly AppScreen[] = [
  {
    name: 'pad-glove',
    place: '/shop',
    arrange: async (page) => {
      await press(page, 'wide, for gloves');
      await goTo(page, `${outfit}/readings/demo-link-bore`);
    },
  },
  { name: 'charts-drills-glove', place: '/charts/drills' },
  { name: 'stack-size-glove', place: `${stack}/fixed`, leave: (page) => chooseInShop(page, 'four columns') },
];

/** What is walked through on one phone, from its first use on or with the demo job in it. */
export type Chapter = {
  readonly demo: boolean;
  readonly screens: readonly AppScreen[];
};

/** Each has a test file of its own, so that two can be walked through at once; none needs another one before it. */
export const chapters = {
  'the first use': { demo: false, screens: firstUse },
  'jobs and readings': { demo: true, screens: jobsAndReadings },
  worksheets: { demo: true, screens: worksheets },
  'sheet, charts, drawer and shop': { demo: true, screens: sheetChartsDrawerShop },
  cuts: { demo: true, screens: theCuts },
  'the lathe': { demo: true, screens: atTheLathe },
  'fit-up': { demo: true, screens: fitUp },
  assembly: { demo: true, screens: inTheAssembly },
  'millimetres and gloves': { demo: true, screens: [...inMillimetres, ...withGloves] },
  'full sun': { demo: true, screens: inFullSun },
  trouble: { demo: true, screens: inTrouble },
} satisfies Record<string, Chapter>;

/** Goes through a chapter's screens in order, on a phone that was never used. */
export async function visitScreens(
  page: Page,
  url: string,
  { demo, screens }: Chapter,
  visit: (screen: AppScreen) => Promise<void>,
): Promise<void> {
  await page.goto(url);
  if (demo) await showTheDemo(page);
  await withoutPassingLines(page);
  for (const screen of screens) {
    if (screen.place !== undefined) await goTo(page, screen.place);
    if (screen.arrange) {
      await screen.arrange(page);
      await settled(page);
    }
    await visit(screen);
    await screen.leave?.(page);
  }
}

async function showTheDemo(page: Page): Promise<void> {
  await goTo(page, '/shop');
  await press(page, 'Show me with the demo job');
  await page.getByRole('button', { name: 'Remove the demo' }).waitFor();
}
