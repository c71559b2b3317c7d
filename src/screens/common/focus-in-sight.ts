/** What gets the focus by Tab comes out from under the main action: one engine leaves it there, as long as it is in the window. */
export function bringFocusInSight(): () => void {
  let isByTab = false;
  const onKey = ({ key }: KeyboardEvent) => {
    isByTab = key === 'Tab';
  };
  const onFocus = ({ target }: FocusEvent) => {
    if (isByTab && target instanceof Element) target.scrollIntoView({ block: 'nearest', inline: 'nearest' });
    isByTab = false;
  };
  addEventListener('keydown', onKey, { capture: true });
  addEventListener('focusin', onFocus);
  return () => {
    removeEventListener('keydown', onKey, { capture: true });
    removeEventListener('focusin', onFocus);
  };
}
