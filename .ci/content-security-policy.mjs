/**
 * What the app may load and do: its own files, nothing else. Of the two Trusted Types policies one makes the service worker's
 * address (update.ts), the other that of home's worker (store/home/page-worker.ts), which the service worker holds to one
 * origin more once the phone is paired (sw.ts); the page itself never reaches out. `blob:` and `data:` are for pictures a fitter takes or imports.
 */
const rules = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob: data:",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "object-src 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types slipfit-worker slipfit-home',
];

/** For a <meta> tag: the only way on a host that lets us send no headers. */
export const policyForMeta = rules.join('; ');

/** For a response header. A browser ignores frame-ancestors in a <meta> tag, so only the header has it. */
export const policyForHeader = [...rules, "frame-ancestors 'none'"].join('; ');

/** The headers a careful host sends with every file. */
export const safeHeaders = {
  'Content-Security-Policy': policyForHeader,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
};
