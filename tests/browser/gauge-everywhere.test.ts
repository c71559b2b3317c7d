import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { someOf } from '../trials/seeded.ts';
import { openPhone, removeTemporaryFolders, startServer, type Phone } from './launch.ts';
import { goTo, settled } from './on-a-screen.ts';

/**
 * What a gauge and a keyboard do on every pad of the app, not on the reading pad alone: behind an entry that was refused a
 * gauge's number stands for itself, and backspace takes a digit back wherever the last press was.
 */

let server: Awaited<ReturnType<typeof startServer>>;
let phone: Phone;

beforeAll(async () => {
  server = await startServer();
  phone = await openPhone();
  const { page } = phone;
  await page.goto(server.url);
  await page.getByRole('button', { name: 'Show me with the demo job' }).click();
  await page.getByText('Outfit 7').first().waitFor();
});
afterAll(async () => {
  await phone.close();
  await server.stop();
  await removeTemporaryFolders();
});

const outfit = '/job/demo-outfit-7';
const stack = `${outfit}/worksheets/demo-bracket-float`;

type Pad = {
  readonly name: string;
  readonly place: string;
  /** What the gauge sends: a size that this pad takes. */
  readonly sends: string;
  /** How it gets there from its place. */
  readonly arrange?: (page: Page) => Promise<void>;
  /** A chart keeps what was typed in its field. */
  readonly keeps?: string;
};

const pads: readonly Pad[] = [
  { name: 'the reading pad', place: `${outfit}/readings/demo-link-bolt`, sends: '.4371' },
  { name: 'a size of a worksheet', place: `${outfit}/worksheets/demo-link-slop/pin`, sends: '.4372' },
  { name: 'a number of a worksheet', place: `${outfit}/worksheets/demo-steering/rake`, sends: '27.5' },
  { name: 'the tape of a stack', place: `${stack}/parts`, sends: '.0625' },
  { name: 'the length of a part in a stack', place: `${stack}/part/demo-stack-spacer/size`, sends: '1.1550' },
  { name: 'the lathe', place: `${outfit}/cuts/demo-cut-ring/lathe`, sends: '1.5345' },
  { name: 'the pad of the lathe', place: `${outfit}/cuts/demo-cut-ring/lathe/measured`, sends: '1.5300' },
  {
    name: 'the diameter of the work',
    place: `${outfit}/cuts/demo-cut-spacer/lathe/work-diameter`,
    sends: '1.250',
  },
  { name: 'a new cut', place: `${outfit}/cuts/new/face/target`, sends: '.750' },
  { name: 'the blank of a cut', place: `${outfit}/cuts/demo-cut-spacer/blank`, sends: '1.1650' },
  {
    name: 'the limit of a check',
    place: `${outfit}/fit-up/new/own`,
    sends: '.008',
    arrange: async (page) => {
      await page.getByRole('button', { name: /^Gap/ }).click();
      await page.getByRole('link', { name: 'Give its limits' }).click();
      await page.locator('#size').waitFor();
    },
  },
  { name: 'a tool’s error limit', place: '/shop/tool/digital-caliper/mpe', sends: '.0015' },
  { name: 'a dial’s marks', place: '/shop/dial-marks', sends: '125' },
  { name: 'the most a chuck may turn', place: '/shop/most-rpm', sends: '1200' },
  { name: 'the backlash of a slide', place: '/shop/backlash-lead-screw', sends: '.012' },
  { name: 'a torque of a step', place: `${outfit}/assembly/demo-step-axle/torque`, sends: '55' },
  { name: 'the chart of drills', place: '/charts/drills', sends: '.4531', keeps: '.4531' },
];

async function open(page: Page, { place, arrange }: Pad): Promise<void> {
  await goTo(page, place);
  await arrange?.(page);
  await page.locator('#size').waitFor();
  await settled(page);
  // What another test left half typed.
  await page.locator('#size').fill('');
  await settled(page);
}

/** Keys as a gauge sends them, with times that hang on the page alone. */
async function gauge(page: Page, text: string): Promise<void> {
  await page.evaluate(async (keys) => {
    const down = (key: string) => {
      const target = document.activeElement ?? document.body;
      return target.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
    };
    for (const key of keys) {
      const field = document.querySelector<HTMLInputElement>('#size');
      const isTaken = !down(key);
      if (!isTaken && field && document.activeElement === field) {
        field.value += key;
        field.dispatchEvent(new InputEvent('input', { bubbles: true }));
      }
      await new Promise((done) => setTimeout(done, 10));
    }
    down('Enter');
  }, text.split(''));
}

const value = (page: Page) => page.locator('#size').inputValue();
const hash = (page: Page) => page.evaluate(() => location.hash);

describe.each(someOf(pads, 3))('on $name', (pad) => {
  test('a gauge behind an entry that was refused starts a new one', async () => {
    const { page } = phone;
    await open(page, pad);
    const before = await hash(page);
    // No size and no number.
    await page.keyboard.type('4.4.8', { delay: 150 });
    await page.keyboard.press('Enter');
    await settled(page);
    expect(await value(page), 'it was not refused').toBe('4.4.8');
    await gauge(page, pad.sends);
    await settled(page);
    // Taken: it leads on, or the field waits for the next one.
    await expect
      .poll(async () => (await hash(page)) !== before || (await value(page)) === (pad.keeps ?? ''), {
        timeout: 5000,
      })
      .toBe(true);
    expect(await page.getByRole('alert').allTextContents()).toEqual([]);
  });

  test('backspace takes a digit back wherever the focus is', async () => {
    const { page } = phone;
    await open(page, pad);
    await page.keyboard.type('123', { delay: 150 });
    const keys = page.locator('.size-pad-key, main a, main button').filter({ visible: true });
    await keys.first().focus();
    await page.keyboard.press('Backspace');
    expect(await value(page)).toBe('12');
    await page.keyboard.press('Backspace');
    await page.keyboard.press('Backspace');
    expect(await value(page)).toBe('');
    await settled(page);
  });
});

describe.each(
  someOf(
    pads.filter(({ name }) => name !== 'the lathe'),
    3,
  ),
)('on $name, behind a press of its keys', (pad) => {
  test('backspace takes back what the finger typed', async () => {
    const { page } = phone;
    await open(page, pad);
    await page.keyboard.type('12', { delay: 150 });
    await page.getByRole('button', { name: '7', exact: true }).first().tap();
    expect(await value(page)).toBe('127');
    await page.keyboard.press('Backspace');
    await page.keyboard.press('Backspace');
    expect(await value(page)).toBe('1');
  });
});

describe('behind a size that is asked about as a slip', () => {
  test.each([
    { name: 'the reading pad', place: `${outfit}/readings/demo-hub`, slipped: '44.12', sends: '4.412' },
    {
      name: 'a size of a worksheet',
      place: `${outfit}/worksheets/demo-link-slop/bore`,
      slipped: '44.8',
      sends: '.4487',
    },
    {
      name: 'the length of a part in a stack',
      place: `${stack}/part/demo-stack-spacer/size`,
      slipped: '11.55',
      sends: '1.1550',
    },
    { name: 'the lathe', place: `${outfit}/cuts/demo-cut-ring/lathe`, slipped: '15.29', sends: '1.5290' },
  ])('a gauge starts a new one on $name', async (pad) => {
    const { page } = phone;
    await open(page, pad);
    const before = await hash(page);
    await page.keyboard.type(pad.slipped, { delay: 150 });
    await page.keyboard.press('Enter');
    await settled(page);
    expect(await value(page), 'it was not asked about').toBe(pad.slipped);
    await gauge(page, pad.sends);
    await settled(page);
    await expect
      .poll(async () => (await hash(page)) !== before || (await value(page)) === '', { timeout: 5000 })
      .toBe(true);
  });
});
