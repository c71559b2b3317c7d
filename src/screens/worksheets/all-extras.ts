import type { ComponentType } from 'preact';
import { TakeRingBlank } from './ring/take-ring-blank.tsx';
import type { WorksheetData } from './worksheet-data.ts';

/** What only one kind has, by the name that its account gives it. */
export const extras: Readonly<Record<string, ComponentType<{ readonly data: WorksheetData }>>> = {
  'take-blank': TakeRingBlank,
};
