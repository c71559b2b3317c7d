import { cleanup, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { bushingPlan } from '../../../src/screens/worksheets/bushing-plan.ts';
import { BushingView } from '../../../src/screens/worksheets/bushing-view.tsx';
import { openForTest } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';
import { typedSize, worksheetOf } from './worksheet-for-test.ts';

afterEach(async () => {
  cleanup();
  await clearAway();
});

// FN1 at 5/8: hole 0 to +.4, pin +.6 to +.9 thou: interference .0002 to .0009.
const sizes = {
  bore: typedSize('.5050'),
  pin: typedSize('.5000'),
  wall: typedSize('.400'),
  length: typedSize('1'),
};

const choices = {
  joint: 'turns-under-load',
  condition: 'plain',
  partMetal: 'low-carbon-steel',
  bushingMetal: 'bearing-bronze',
};

async function shown(more: Record<string, ReturnType<typeof typedSize>> = {}) {
  const data = worksheetOf('bushing', { sizes: { ...sizes, ...more }, choices });
  const { container } = onScreen(await openForTest(), <BushingView data={data} plan={bushingPlan} />);
  return {
    label: container.querySelector('.lead-label')?.textContent,
    figure: container.querySelector('.lead-figure')?.textContent,
    verdict: container.querySelector('.verdict-band-headline')?.textContent,
    drawing: screen.getByRole('img', { name: /^Bushing in section/ }).getAttribute('aria-label'),
    text: container.textContent,
  };
}

describe('the next cut', () => {
  test('is the reamer, with the bore it wants first', async () => {
    const { label, figure, text } = await shown();
    expect(label).toBe('Ream to');
    expect(figure).toBe('5/8 in');
    // .120 in is far more than a reamer takes; .625 − .010
    expect(text).toContain('Drill or bore it to .615 in first');
  });

  test('is the bushing’s outside once the bore is reamed', async () => {
    // .6250 + .00055 ± .00015: .6254 to .6257, but no whole thou lies inside: the dial is too coarse, and that is said
    const { label, text } = await shown({ reamed: typedSize('.6250') });
    expect(label).toBe('Turn the bushing to');
    expect(text).toContain('none of them falls between');
  });

  test('is the press and then the bore once both fit', async () => {
    const { label, figure, verdict } = await shown({
      reamed: typedSize('.6250'),
      outside: typedSize('.6255'),
    });
    expect(verdict).toBe('Good: interference .0005, want .0002 to .0009.');
    expect(label).toBe('Press it, then bore to');
    // .5006 to .5023: middle .50145, down to the thou
    expect(figure).toBe('.501 in');
  });

  test('too tight, it is turned down; too loose, a new one is turned: neither is pressed', async () => {
    const tight = await shown({ reamed: typedSize('.6250'), outside: typedSize('.6262') });
    expect(tight.verdict).toBe('Too tight: interference .0012, want .0002 to .0009.');
    expect(tight.label).toBe('Turn it down to');
    cleanup();
    const loose = await shown({ reamed: typedSize('.6250'), outside: typedSize('.6251') });
    expect(loose.label).toBe('Turn a new one to');
  });
});

test('what must stop the job is said before any cut', async () => {
  const { verdict } = await shown({ wall: typedSize('.300') });
  expect(verdict).toMatch(/^\.240 in is left round the hole, and \.3125 in is the least/);
});

test('the section is spoken with every size it shows', async () => {
  const { drawing } = await shown();
  // FN1 on 5/8: .6256 to .6259; RC4 on 1/2: .5006 to .5023; (.625 − .5023)/2 = .06135; .400 − .060
  expect(drawing).toBe(
    'Bushing in section: ream to .625 in, turn the outside to .6256 to .6259, bore pressed in .5006 to .5023, bushing wall .0614 in, .340 in of wall left in the part.',
  );
});
