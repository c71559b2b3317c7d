import type { Id, Worksheet } from '../../store/base/records.ts';

const METALS: Readonly<Record<string, string>> = {
  bore: 'partMetal',
  reamed: 'partMetal',
  pin: 'pinMetal',
  outside: 'bushingMetal',
};

/** What a size's part is made of, where the worksheet was told; undefined where not. */
export function metalOf(
  { worksheet: { choices } }: { readonly worksheet: Pick<Worksheet, 'choices'> },
  sizeName: string,
): string | undefined {
  const choice = METALS[sizeName];
  return choice === undefined ? undefined : choices[choice];
}

/** The same of a feature that one of these worksheets has a size from. */
export function metalOfFeature(featureId: Id, all: readonly Worksheet[]): string | undefined {
  for (const worksheet of all) {
    for (const [name, size] of Object.entries(worksheet.sizes)) {
      const metal = metalOf({ worksheet }, name);
      if (metal !== undefined && size.from === 'feature' && size.featureId === featureId) return metal;
    }
  }
  return undefined;
}
