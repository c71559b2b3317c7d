import type { AssemblyStep, Recheck } from '../base/records.ts';

type OwnStep = Pick<AssemblyStep, 'id' | 'text'> & Partial<AssemblyStep>;

/** How the demo's brake side goes together: one step done, one whose torque nobody has looked up yet. Invented, as all of the demo. */
export function demoSteps(outfit: string, nowMs: number): AssemblyStep[] {
  const steps: readonly OwnStep[] = [
    {
      id: 'demo-step-stack',
      text: 'Stack on the sleeve from the left: inner washer, bracket, outer spacer, outer washer',
      worksheetId: 'demo-bracket-float',
      partIds: ['demo-sleeve-part', 'demo-bracket-part', 'demo-spacer-part'],
    },
    {
      id: 'demo-step-bracket',
      text: 'Grease the sleeve and try the bracket: it slides by hand',
      orientation: 'boss of the bracket to the hub',
      grease: 'thin film of silicone grease',
      partIds: ['demo-bracket-part'],
      done: { at: nowMs - 3_600_000, by: 'Demo fitter' },
    },
    {
      id: 'demo-step-link',
      text: 'Tighten the shock-link bolts',
      locker: 'medium',
      cureHours: '24',
      torque: { typed: '45', unit: 'lbf-ft', source: 'Demo manual, page 7-12' },
      partIds: ['demo-link-bolts'],
    },
    {
      id: 'demo-step-axle',
      text: 'Tighten the axle nut',
      torque: { typed: '', unit: 'lbf-ft', source: '' },
      cotterPin: true,
      partIds: ['demo-rear-wheel'],
    },
  ];
  return steps.map((step, order) => ({ jobId: outfit, partIds: [], order, createdAt: nowMs, ...step }));
}

export function demoRechecks(outfit: string, nowMs: number): Recheck[] {
  return [
    {
      id: 'demo-recheck-first-miles',
      jobId: outfit,
      what: 'Nuts, torque, runout',
      afterDistance: 50,
      unit: 'mi',
      from: nowMs,
      createdAt: nowMs,
    },
  ];
}
