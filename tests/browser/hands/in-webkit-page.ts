/** What runs in a page of WebKit in place of playwright's own: each is sent as text, so nothing outside it may be used in it. */

export type Words = string | { readonly source: string; readonly flags: string };

/** One link of the chain that says what is meant. */
export type Step =
  | { readonly css: string; readonly hasText?: Words | undefined }
  | { readonly role: string; readonly name?: Words | undefined; readonly exact?: boolean | undefined }
  | { readonly text: Words; readonly exact?: boolean | undefined }
  | { readonly label: Words; readonly exact?: boolean | undefined }
  | { readonly nth: number }
  | { readonly visible?: boolean | undefined; readonly hasText?: Words | undefined }
  | { readonly or: readonly Step[] };

/** All elements of the page that a chain means, in their order. */
export function meantBy(chain: readonly Step[]): Element[] {
  const roles: Record<string, string> = {
    alert: '[role=alert]',
    button: 'button, [role=button], input[type=button], input[type=submit]',
    group: 'fieldset, [role=group]',
    heading: 'h1, h2, h3, h4, h5, h6, [role=heading]',
    link: 'a[href], [role=link]',
  };
  const tidy = (text: string) => text.replace(/\s+/g, ' ').trim();
  const isSeen = (element: Element) =>
    element.checkVisibility({ visibilityProperty: true }) && element.getClientRects().length > 0;
  const agrees = (text: string, words: Words, exact?: boolean) => {
    if (typeof words !== 'string') return new RegExp(words.source, words.flags).test(text);
    return exact ? text === tidy(words) : text.toLowerCase().includes(tidy(words).toLowerCase());
  };
  // As it is read aloud: what is hidden from that is left out, blocks stand apart.
  const spoken = (node: Node): string => {
    if (node instanceof Text) return node.data;
    if (!(node instanceof Element) || node.getAttribute('aria-hidden') === 'true') return '';
    const { display, visibility } = getComputedStyle(node);
    if (display === 'none' || visibility === 'hidden') return '';
    const own = node.getAttribute('aria-label') ?? (node instanceof HTMLImageElement ? node.alt : null);
    const inside = own ?? [...node.childNodes].map(spoken).join('');
    return display === 'inline' ? inside : ` ${inside} `;
  };
  const named = (element: Element): string => {
    const by = element.getAttribute('aria-labelledby');
    const others = by?.split(/\s+/).map((id) => document.getElementById(id));
    if (others) return tidy(others.map((one) => (one ? spoken(one) : '')).join(' '));
    const own = element.getAttribute('aria-label');
    if (own !== null) return tidy(own);
    const labels = element instanceof HTMLInputElement || element instanceof HTMLTextAreaElement;
    if (labels) return tidy([...(element.labels ?? [])].map(spoken).join(' '));
    const legend = element.matches('fieldset') ? element.querySelector('legend') : null;
    return tidy(spoken(legend ?? element));
  };
  const inDocument = (found: Element[]) =>
    [...new Set(found)].toSorted((a, b) =>
      a.compareDocumentPosition(b) & Node.DOCUMENT_POSITION_FOLLOWING ? -1 : 1,
    );
  const within = (scope: readonly (Element | Document)[], css: string) =>
    inDocument(scope.flatMap((one) => [...one.querySelectorAll(css)]));
  const follow = (steps: readonly Step[], from: readonly (Element | Document)[]): Element[] => {
    let found = from;
    for (const step of steps) {
      const elements = found.filter((one) => one instanceof Element);
      if ('nth' in step) found = elements.slice(step.nth, step.nth + 1);
      else if ('or' in step) found = inDocument([...elements, ...follow(step.or, from)]);
      else if ('css' in step) {
        const { hasText } = step;
        found = within(found, step.css).filter(
          (one) => hasText === undefined || agrees(tidy(one.textContent ?? ''), hasText),
        );
      } else if ('role' in step) {
        const { name, exact } = step;
        found = within(found, roles[step.role] ?? `[role=${step.role}]`)
          .filter((one) => isSeen(one) && !one.closest('[aria-hidden=true]'))
          .filter((one) => name === undefined || agrees(named(one), name, exact));
      } else if ('label' in step)
        found = within(found, 'input, textarea, select, [aria-label], [aria-labelledby]').filter((one) =>
          agrees(named(one), step.label, step.exact),
        );
      else if ('text' in step) {
        const says = (one: Element) => agrees(tidy(one.textContent ?? ''), step.text, step.exact);
        found = within(found, 'body *')
          .filter((one) => !one.matches('script, style, title') && says(one))
          .filter((one) => ![...one.children].some(says));
      } else {
        const { visible, hasText } = step;
        found = elements.filter(
          (one) =>
            (visible === undefined || isSeen(one) === visible) &&
            (hasText === undefined || agrees(tidy(one.textContent ?? ''), hasText)),
        );
      }
    }
    return found.filter((one) => one instanceof Element);
  };
  return follow(chain, [document]);
}

/** The middle of an element, once it stands still and nothing covers it; until then what is in the way of a tap. */
export async function placeToTap(element: Element | undefined): Promise<[number, number] | string> {
  if (!element) return 'it is not there';
  if (!element.checkVisibility({ visibilityProperty: true })) return 'it is not seen';
  if (element.matches(':disabled')) return 'it is disabled';
  const frame = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
  const middle = (): [number, number] => {
    const { left, top, width, height } = element.getBoundingClientRect();
    return [Math.floor(left + width / 2), Math.floor(top + height / 2)];
  };
  const covers: string[] = [];
  for (const block of ['nearest', 'center', 'end', 'start'] as const) {
    element.scrollIntoView({ block, behavior: 'instant' });
    const at = middle();
    // oxlint-disable-next-line no-await-in-loop -- one place after the other
    await frame();
    if (String(at) !== String(middle())) return 'it moves';
    const hit = document.elementFromPoint(...at);
    if (hit && (element === hit || element.contains(hit) || hit.closest('label')?.contains(element)))
      return at;
    covers.push(hit ? hit.outerHTML.slice(0, 80) : 'nothing');
  }
  return `it is covered by ${covers.join(', ')}`;
}

/** Puts a text in place of what stands in a field, as if it were pasted. */
export function filledIn(element: Element | undefined, text: string): string {
  if (!(element instanceof HTMLInputElement || element instanceof HTMLTextAreaElement))
    return 'no field is there';
  element.focus();
  element.select();
  if (element.value !== '' || text !== '')
    document.execCommand(text === '' ? 'delete' : 'insertText', false, text);
  return '';
}

/** What `waitFor` asks of the first that is meant. */
export function stateOf(element: Element | undefined): 'detached' | 'hidden' | 'visible' {
  if (!element) return 'detached';
  const isSeen = element.checkVisibility({ visibilityProperty: true }) && element.getClientRects().length > 0;
  return isSeen && element.getBoundingClientRect().width > 0 ? 'visible' : 'hidden';
}
