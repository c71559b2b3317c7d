/** Written in by the build; tests and the dev server have none. */
declare const BUILT_FROM: string | undefined;

/** The release and commit this code was built from, for the Shop screen. */
export const appVersion = typeof BUILT_FROM === 'string' ? BUILT_FROM : 'not built';
