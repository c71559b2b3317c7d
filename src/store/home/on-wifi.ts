import { isPlainObject } from '../base/paths.ts';

/**
 * Whether the phone says that it is on Wi-Fi or on a cable. Where a browser doesn't tell, as on iPhones, it counts as not:
 * pictures wait for a word then.
 */
export function onWifi(): boolean {
  // Not in the types yet, and in no other browsers than Chromium's.
  const connection: unknown =
    typeof navigator === 'undefined' ? undefined : Reflect.get(navigator, 'connection');
  if (!isPlainObject(connection)) return false;
  return (
    (connection['type'] === 'wifi' || connection['type'] === 'ethernet') && connection['saveData'] !== true
  );
}
