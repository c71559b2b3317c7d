/** Changes to some fields of a record. A field that may be missing is taken out by `undefined`. */
export type Changes<T, Key extends keyof T> = {
  readonly [Name in Key]?: object extends Pick<T, Name> ? T[Name] | undefined : T[Name];
};

/** The record with these changes; fields set to `undefined` are gone. */
export function withChanges<T extends object, Key extends keyof T>(record: T, changes: Changes<T, Key>): T {
  const fields = Object.entries({ ...record, ...changes }).filter(([, value]) => value !== undefined);
  // Only fields that may be missing can be set to `undefined`, and those are left out here.
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion
  return Object.fromEntries(fields) as T;
}
