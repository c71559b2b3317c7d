import type { Id, StackPartInput, Worksheet } from '../../../store/base/records.ts';

/** What of a part an address means: its size, its least length, or all else about it. */
export type PartPath = {
  readonly id: Id;
  readonly part: StackPartInput;
  readonly asked: 'size' | 'leastLength' | 'about';
};

/** A part that is in the stack, as it stands in an address: `part/<id>/size`; nothing for any other field. */
export function partAt(worksheet: Pick<Worksheet, 'parts'>, field: string | undefined): PartPath | undefined {
  if (!isPartPath(field)) return undefined;
  const [, id = '', asked = ''] = field.split('/');
  const part = worksheet.parts[id];
  return part && { id, part, asked: asked === 'size' || asked === 'leastLength' ? asked : 'about' };
}

/** Whether an address means a part at all, one that was taken out since too. */
export function isPartPath(field: string | undefined): field is string {
  return field?.startsWith('part/') === true;
}

/** Where its size stands in the drawing, whatever of it is asked. */
export function partField({ id }: Pick<PartPath, 'id'>): string {
  return `part/${id}/size`;
}
