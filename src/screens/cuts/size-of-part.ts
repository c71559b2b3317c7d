import type { SizeInput, Worksheet } from '../../store/base/records.ts';

/** The size of a worksheet that a cut's part was measured by; undefined for a part that is made new. */
export function sizeOfPart(
  { sizes, parts }: Pick<Worksheet, 'sizes' | 'parts'>,
  part: string,
): SizeInput | undefined {
  const inStack = Object.values(parts).find(({ name }) => name === part)?.size;
  const named: Readonly<Record<string, SizeInput | undefined>> = {
    bore: sizes['bore'],
    hole: sizes['bore'] ?? sizes['hole'],
    pin: sizes['pin'],
    sleeve: sizes['sleeve'],
    recess: sizes['depth'],
    shim: sizes['shim'],
  };
  return inStack ?? named[part];
}
