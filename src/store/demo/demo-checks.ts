import type { Check } from '../base/records.ts';

/** One check of the demo that is done, by eye. Invented, as all of the demo. */
export function demoChecks(outfit: string, nowMs: number): Check[] {
  return [
    {
      id: 'demo-check-hose',
      jobId: outfit,
      name: 'Hose over the whole travel',
      by: 'by-eye',
      limitsFrom: 'by eye',
      how: 'Machine held so that it can’t fall; springs out, or tied down: a tied-down spring is loaded. Move the wheel through its whole travel: the hose neither pulls nor rubs.',
      takes: {
        'demo-check-hose-1': { at: nowMs - 1_800_000, seen: 'holds', seenNote: '1/2 in clear of the tire' },
      },
      createdAt: nowMs,
    },
  ];
}
