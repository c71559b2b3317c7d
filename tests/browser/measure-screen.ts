import type { Page } from './hands/hands.ts';

/** What a screen is held to, as a fitter would say it. */
export type Rule =
  | 'scrolls sideways'
  | 'target too small'
  | 'targets too near'
  | 'delete beside a digit'
  | 'digit key too small'
  | 'commit key too small'
  | 'text too small'
  | 'text in a drawing too small'
  | 'number that matters too small'
  | 'label to read from the lathe too small'
  | 'text cut off'
  | 'text on text'
  | 'word broken'
  | 'target covered'
  | 'pad does not fit'
  | 'figure out of sight'
  | 'two main keys';

export type Finding = { readonly rule: Rule; readonly what: string };

/**
 * Measures what is shown, in CSS pixels as rendered. Sizes: 60 a target, 8 between two, 80 × 72 a digit (109 wide for
 * gloves), 96 the commit key, 19 from commit to delete; text 17, in drawings 14, labels 26, the number that matters 72.
 * Source: human-factors figures for gloved thumbs and for reading at 70 cm; what they come to was chosen for this app.
 */
export function measureScreen(page: Page): Promise<readonly Finding[]> {
  // Runs in the page: nothing outside it may be used in it.
  return page.evaluate(() => {
    const found: { rule: Rule; what: string }[] = [];
    const NEARLY = 0.6;
    const note = (rule: Rule, what: string) => found.push({ rule, what });
    const px = (value: number) => Math.round(value * 10) / 10;
    const isShown = (element: Element) =>
      element.checkVisibility({ visibilityProperty: true, opacityProperty: true }) &&
      element.closest('.unseen') === null &&
      element.getBoundingClientRect().width > 0;
    const named = (element: Element) =>
      `${element.tagName.toLowerCase()} “${(element.getAttribute('aria-label') ?? element.textContent ?? '').trim().replace(/\s+/g, ' ').slice(0, 40)}”`;
    const all = (selector: string) => [...document.querySelectorAll(selector)].filter(isShown);
    const fontSize = (element: Element) => Number.parseFloat(getComputedStyle(element).fontSize);

    const place = document.querySelector('.app-place');
    for (const scroller of [document.documentElement, ...(place ? [place] : [])]) {
      if (scroller.scrollWidth > scroller.clientWidth)
        note('scrolls sideways', `${scroller.scrollWidth} wide in ${scroller.clientWidth}`);
    }

    for (const box of all('body *')) {
      const { overflowX } = getComputedStyle(box);
      const slides = overflowX === 'auto' || overflowX === 'scroll';
      if (slides && box.scrollWidth > box.clientWidth && !box.matches('input, .app-place'))
        note('scrolls sideways', `${named(box)} ${box.scrollWidth} wide in ${box.clientWidth}`);
    }

    document.querySelector('.size-pad')?.lastElementChild?.scrollIntoView({ block: 'end' });
    const targets = all('button, a[href], input, select, textarea, summary').filter(
      (target) => getComputedStyle(target).display !== 'inline',
    );
    for (const target of targets) {
      const { width, height } = target.getBoundingClientRect();
      if (Math.min(width, height) < 60 - NEARLY)
        note('target too small', `${named(target)} ${px(width)} × ${px(height)}`);
    }

    const probe = document.createElement('i');
    probe.style.background = 'var(--blue)';
    (document.querySelector('.page-main') ?? document.body).append(probe);
    const blue = getComputedStyle(probe).backgroundColor;
    probe.remove();
    const mains = targets.filter((target) => getComputedStyle(target).backgroundColor === blue);
    if (mains.length > 1) note('two main keys', mains.map(named).join(', '));

    // Lines of a list, tabs and the places of the bottom bar touch each other: a miss opens the neighbour and costs nothing.
    const touching =
      '.row, .account-ranked a, .read-already-row, .route-row, .get-tick, .charts-tabs a, .bottom-bar-place, summary';
    const layerOf = (element: Element): Element => {
      for (let at = element.parentElement; at; at = at.parentElement) {
        const { position, overflowY } = getComputedStyle(at);
        if (position !== 'static' && position !== 'relative') return at;
        if (overflowY === 'auto' || overflowY === 'scroll') return at;
      }
      return document.body;
    };
    const apart = (a: DOMRect, b: DOMRect) =>
      Math.hypot(
        Math.max(0, a.left - b.right, b.left - a.right),
        Math.max(0, a.top - b.bottom, b.top - a.bottom),
      );
    for (const [index, one] of targets.entries()) {
      for (const other of targets.slice(index + 1)) {
        if (layerOf(one) !== layerOf(other) || one.contains(other)) continue;
        if (one.id === 'size' || other.id === 'size') continue; // it is written by the pad, not pressed
        const gap = apart(one.getBoundingClientRect(), other.getBoundingClientRect());
        const mayTouch = one.matches(touching) && other.matches(touching);
        if (gap < 8 - NEARLY && !mayTouch)
          note('targets too near', `${named(one)}, ${named(other)}: ${px(gap)}`);
      }
    }

    const pad = document.querySelector('.size-pad');
    // With a long name the upper half of the heading may give way, the rest and the pad stay.
    const heading = document.querySelector('.page-head, .charts-tabs')?.clientHeight ?? 0;
    const isUsual = innerWidth === 390 && innerHeight === 844;
    const isRoomy = pad?.getAttribute('data-keys') === 'standard' && !document.querySelector('.undo-bar');
    if (pad && place && isUsual && isRoomy && place.scrollHeight - place.clientHeight > heading / 2)
      note('pad does not fit', `${place.scrollHeight - place.clientHeight} px too high`);
    const screenWidth = document.documentElement.clientWidth;
    if (pad) {
      const gloved = pad.getAttribute('data-keys') === 'glove';
      const digits = all('.size-pad-key').filter((key) => /^[0-9]$/.test(key.textContent ?? ''));
      for (const digit of digits) {
        const { width, height } = digit.getBoundingClientRect();
        const least = gloved ? 109 : 80;
        if (screenWidth >= 360 && (width < least - NEARLY || height < 72 - NEARLY))
          note('digit key too small', `${named(digit)} ${px(width)} × ${px(height)}`);
      }
      const remove = pad.querySelector('.size-pad-delete');
      const figure = pad.querySelector('.size-pad-figure')?.getBoundingClientRect() ?? new DOMRect();
      // Keys that have scrolled under the figure can only be pressed below it.
      const pressable = (key: Element) => {
        const { left, top, bottom, width } = key.getBoundingClientRect();
        const begins = left < figure.right ? Math.max(top, Math.min(bottom, figure.bottom)) : top;
        return new DOMRect(left, begins, width, bottom - begins);
      };
      for (const digit of remove ? digits : []) {
        const gap = remove ? apart(remove.getBoundingClientRect(), pressable(digit)) : 0;
        if (gap < 19 - NEARLY) {
          const a = remove?.getBoundingClientRect();
          const b = pressable(digit);
          const faces =
            a && ((a.left < b.right && b.left < a.right) || (a.top < b.bottom && b.top < a.bottom));
          if (faces) note('delete beside a digit', `${named(digit)}: ${px(gap)}`);
        }
      }
      const commit = pad.querySelector('.size-pad-commit');
      if (commit) {
        const { width, height } = commit.getBoundingClientRect();
        const line = pad.querySelector('.size-pad-figure')?.getBoundingClientRect();
        const whole = Math.min(line?.width ?? 0, screenWidth);
        // A key of the pad may share its row, a size read already, a part’s name or the end of a list: the commit key stays the widest, a
        // third of the row at least. What stands beside it and is none of the pad's makes it too narrow.
        const { top, bottom } = commit.getBoundingClientRect();
        const beside = [
          ...pad.querySelectorAll('.size-entry-extras .button, .size-pad-beside, .part-chips .button'),
        ]
          .filter(isShown)
          .map((key) => key.getBoundingClientRect())
          .filter((key) => Math.min(key.bottom, bottom) - Math.max(key.top, top) > height / 2);
        const row = beside.reduce((sum, key) => sum + key.width + 8, width);
        const least = Math.max(whole / 3, ...beside.map((key) => key.width));
        if (height < 96 - NEARLY || row < whole - 17 || width < least - NEARLY)
          note('commit key too small', `${px(width)} × ${px(height)}, the pad is ${px(whole)} wide`);
        if (remove && apart(commit.getBoundingClientRect(), remove.getBoundingClientRect()) < 19 - NEARLY)
          note('targets too near', 'commit and delete');
        for (const below of all('.bottom-bar-place')) {
          if (apart(commit.getBoundingClientRect(), below.getBoundingClientRect()) < 8 - NEARLY)
            note('targets too near', `commit and ${named(below)}`);
        }
      }
      const field = pad.querySelector('input');
      const seen = field?.getBoundingClientRect();
      if (seen && (seen.top < -1 || document.elementFromPoint(seen.left + 20, seen.top + 20) !== field))
        note('figure out of sight', `with the commit key in view the figure is at ${px(seen.top)}`);
      const shown = field && (field.value === '' ? field.placeholder : field.value);
      if (field && shown && shown.length <= 5 && fontSize(field) < 72)
        note('number that matters too small', `${shown}: ${fontSize(field)}`);
      if (field && field.scrollWidth > field.clientWidth + 1)
        note('text cut off', `the field with ${shown}: ${field.scrollWidth} in ${field.clientWidth}`);
      if (field && shown && field.value === '' && textWidth(field, shown) > field.clientWidth)
        note('text cut off', `the resting ${shown}: ${px(textWidth(field, shown))} in ${field.clientWidth}`);
    }
    function textWidth(like: Element, text: string): number {
      const ruler = document.createElement('span');
      const {
        fontFamily,
        fontSize: size,
        fontWeight,
        letterSpacing,
        fontVariantNumeric,
      } = getComputedStyle(like);
      Object.assign(ruler.style, { position: 'absolute', whiteSpace: 'pre' });
      Object.assign(ruler.style, {
        fontFamily,
        fontSize: size,
        fontWeight,
        letterSpacing,
        fontVariantNumeric,
      });
      ruler.textContent = text;
      document.body.append(ruler);
      const { width } = ruler.getBoundingClientRect();
      ruler.remove();
      return width + 8;
    }

    for (const figure of all('.lead-figure')) {
      const digits = (figure.firstChild?.textContent ?? '').trim();
      if (digits.length <= 6 && fontSize(figure) < 72)
        note('number that matters too small', `${digits}: ${fontSize(figure)}`);
    }
    for (const label of all('.lead-label, .lead-next')) {
      if (fontSize(label) < 26)
        note('label to read from the lathe too small', `${named(label)} ${fontSize(label)}`);
    }

    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const drawn: { svg: Element; text: string; box: DOMRect }[] = [];
    while (walker.nextNode()) {
      const { currentNode } = walker;
      const parent = currentNode.parentElement;
      const text = (currentNode.textContent ?? '').trim();
      if (!parent || text === '' || !isShown(parent)) continue;
      const range = document.createRange();
      range.selectNodeContents(currentNode);
      const box = range.getBoundingClientRect();
      if (box.width === 0) continue;
      if (parent instanceof SVGGraphicsElement) {
        const svg = parent.closest('svg');
        const size = fontSize(parent) * (parent.getScreenCTM()?.a ?? 1);
        if (size < 14 - 0.05) note('text in a drawing too small', `“${text}” ${px(size)}`);
        const frame = svg?.getBoundingClientRect();
        if (
          frame &&
          (box.left < frame.left - 1 || box.right > frame.right + 1 || box.bottom > frame.bottom + 4)
        )
          note('text cut off', `“${text}” leaves its drawing`);
        if (svg) drawn.push({ svg, text, box });
        continue;
      }
      if (fontSize(parent) < 17) note('text too small', `“${text.slice(0, 40)}” ${fontSize(parent)}`);
      // A word that a line of the screen has room for stands on one line; a dash may end one.
      for (const word of text.matchAll(/[^\s–-]+/g)) {
        const begins = (currentNode.textContent ?? '').indexOf(text) + word.index;
        range.setStart(currentNode, begins);
        range.setEnd(currentNode, begins + word[0].length);
        const pieces = [...range.getClientRects()].filter(({ width }) => width > 1);
        const wide = pieces.reduce((sum, { width }) => sum + width, 0);
        if (new Set(pieces.map(({ top }) => Math.round(top))).size > 1 && wide < screenWidth * 0.8)
          note('word broken', `“${word[0]}” of “${text.slice(0, 40)}”`);
      }
      const scrolls = parent.closest('.readings-panel-list');
      if (!scrolls && (box.left < -0.5 || box.right > screenWidth + 0.5))
        note('text cut off', `“${text.slice(0, 40)}” ends at ${px(box.right)} of ${screenWidth}`);
      const target = parent.closest('button, a[href]');
      const frame = target?.getBoundingClientRect();
      const clips = parent.closest('.readings-panel-list, .readings-panel-all, .page-subtitle, .jobs-what');
      if (
        frame &&
        !clips &&
        (box.left < frame.left - 1 || box.right > frame.right + 1 || box.bottom > frame.bottom + 1)
      )
        note('text cut off', `“${text.slice(0, 40)}” is larger than what is pressed`);
    }
    for (const [index, one] of drawn.entries()) {
      for (const other of drawn.slice(index + 1)) {
        if (one.svg !== other.svg) continue;
        const across = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
        const down = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
        if (across > 1 && down > 5) note('text on text', `“${one.text}” and “${other.text}”`);
      }
    }

    // Lines that are meant to end in dots, and fields of words, which follow the caret.
    const meant = '.readings-panel-list, .page-subtitle, .jobs-what, input, svg, svg *';
    for (const element of all('body *')) {
      if (element.matches(meant)) continue;
      const { overflowX, overflowY, clipPath } = getComputedStyle(element);
      if (clipPath !== 'none') continue; // only spoken
      const wide = overflowX === 'hidden' && element.scrollWidth > element.clientWidth + 1;
      const tall = overflowY === 'hidden' && element.scrollHeight > element.clientHeight + 1;
      if (wide || tall) note('text cut off', `${named(element)} .${element.className}`);
    }
    for (const target of targets) {
      target.scrollIntoView({ block: 'center', inline: 'nearest' });
      const { left, top, width, height } = target.getBoundingClientRect();
      const hit = document.elementFromPoint(left + width / 2, top + height / 2);
      if (!hit || !(target === hit || target.contains(hit)))
        note('target covered', `${named(target)} by ${hit ? named(hit) : 'nothing'}`);
    }
    return found;
  });
}

/** Each finding once, with where it was found. */
export function gathered(): {
  add: (where: string, findings: readonly Finding[]) => void;
  of: (rule: Rule) => readonly string[];
} {
  const lines = new Map<Rule, string[]>();
  return {
    add: (where, findings) => {
      for (const { rule, what } of findings)
        lines.set(rule, [...(lines.get(rule) ?? []), `${where}: ${what}`]);
    },
    of: (rule) => lines.get(rule) ?? [],
  };
}
