import type { ComponentType } from 'preact';
import { BearingShims } from './bearing-seat/shims-on-hand.tsx';
import { StackOnePart, StackShims } from './spacer-stack/stack-extras.tsx';
import { RoutesBeside } from './hole-and-pin/routes-beside.tsx';
import { TakeRingBlank } from './ring/take-ring-blank.tsx';
import type { WorksheetData } from './worksheet-data.ts';

/** What only one kind has, by the name that its account gives it. */
export const extras: Readonly<Record<string, ComponentType<{ readonly data: WorksheetData }>>> = {
  'bearing-shims': BearingShims,
  routes: RoutesBeside,
  'take-blank': TakeRingBlank,
  'drawer-shims': StackShims,
  'one-part': StackOnePart,
};
