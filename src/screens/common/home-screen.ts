/**
 * Whether this is a tab of an iPhone's or iPad's browser: only there the browser says whether a page was opened from the
 * Home Screen. What is kept in the tab and in the Home Screen app are two separate things, and the tab's is thrown away
 * after seven days without a visit (WebKit, "Full third-party cookie blocking and more", 2020).
 */
export function isTabOnIphone(): boolean {
  return Reflect.get(navigator, 'standalone') === false && matchMedia('(pointer: coarse)').matches;
}
