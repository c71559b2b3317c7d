import type { Page } from 'playwright-core';

const AT_ONCE = 12;
const MOST = 96;

type Stop = { readonly name: string; readonly isSeen: boolean; readonly hasRing: boolean };
type Walk = { readonly stops: readonly Stop[]; readonly isAround: boolean };

/** Through all stops of a screen by Tab, once around: each must be seen, and its focus ring too. */
export async function walkedByTab(page: Page): Promise<readonly string[]> {
  await page.evaluate(startWalk);
  const keyboard = await page.context().newCDPSession(page);
  // Key by key from here would take ten times as long; the page itself notes what each one reached.
  const tab = { type: 'rawKeyDown', key: 'Tab', code: 'Tab', windowsVirtualKeyCode: 9 } as const;
  let walk: Walk = { stops: [], isAround: false };
  for (let presses = 0; presses < MOST && !walk.isAround; presses += AT_ONCE) {
    await Promise.all(Array.from({ length: AT_ONCE }, () => keyboard.send('Input.dispatchKeyEvent', tab)));
    walk = await page.evaluate(walkSoFar);
  }
  await keyboard.detach();
  await page.evaluate(() => dispatchEvent(new Event('walkends')));
  const found = walk.stops.flatMap(({ name, isSeen, hasRing }) => [
    ...(isSeen ? [] : [`covered: ${name}`]),
    ...(hasRing ? [] : [`no ring: ${name}`]),
  ]);
  return walk.isAround ? found : [...found, `does not come around in ${MOST} presses of Tab`];
}

/** Runs in the page: from its top on, what has the focus is noted before each Tab takes it away. */
function startWalk(): void {
  if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
  document.querySelector('.app-place')?.scrollTo(0, 0);
  const walked = new Set<Element>();
  const walk: { stops: Stop[]; isAround: boolean } = { stops: [], isAround: false };
  const note = () => {
    const now = document.activeElement;
    const isOutside = !now || now === document.body;
    if (walk.isAround || (isOutside && walked.size === 0)) return;
    // A name alone is not one: two rows may be alike.
    if (isOutside || walked.has(now)) {
      walk.isAround = true;
      return;
    }
    walked.add(now);
    const { left, top, width, height } = now.getBoundingClientRect();
    const hit = document.elementFromPoint(left + width / 2, top + height / 2);
    const { outlineStyle, outlineWidth } = getComputedStyle(now);
    walk.stops.push({
      name: (now.getAttribute('aria-label') ?? now.textContent ?? '').slice(0, 40),
      isSeen: now === hit || now.contains(hit),
      hasRing: outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2,
    });
  };
  const listen = (event: KeyboardEvent) => event.key === 'Tab' && note();
  addEventListener('keydown', listen, { capture: true });
  addEventListener('walkends', () => removeEventListener('keydown', listen, { capture: true }), {
    once: true,
  });
  Reflect.set(globalThis, 'walkSoFar', () => {
    note();
    return walk;
  });
}

function walkSoFar(): Walk {
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- put on the window by `startWalk`, unknown to the types
  const soFar = Reflect.get(globalThis, 'walkSoFar') as () => Walk;
  return soFar();
}
