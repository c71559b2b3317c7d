import { cleanup, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { fitPlan } from '../../../src/screens/worksheets/fit-plan.ts';
import { FitView } from '../../../src/screens/worksheets/fit-view.tsx';
import { openForTest } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';
import { typedSize, worksheetOf } from './worksheet-for-test.ts';

afterEach(async () => {
  cleanup();
  await clearAway();
});

async function shown(
  sizes: Record<string, ReturnType<typeof typedSize>>,
  choices: Record<string, string> = { joint: 'turns' },
) {
  const data = worksheetOf('fit', { sizes, choices });
  const { container } = onScreen(await openForTest(), <FitView data={data} plan={fitPlan} />);
  return {
    label: container.querySelector('.lead-label')?.textContent,
    figure: container.querySelector('.lead-figure')?.textContent,
    verdict: container.querySelector('.verdict-band-headline')?.textContent,
    text: container.textContent,
  };
}

const half = { nominal: typedSize('1/2') };

describe('a fit leads with what is asked of it', () => {
  test('its class while nothing is measured', async () => {
    const { label, figure } = await shown(half);
    expect(label).toBe('Medium running');
    expect(figure).toBe('RC5');
    // RC5 at .40 to .71: hole 0 to +1, pin −1.2 to −1.9
    expect(screen.getByRole('img').getAttribute('aria-label')).toBe(
      'RC5 at .500 in: hole .5000 to .5010, pin .4981 to .4988, .0012 to .0029 of clearance.',
    );
  });

  test('the pin to make where the bore is there, and the bore where the pin is', async () => {
    const bore = await shown({ ...half, bore: typedSize('.5023') });
    expect(bore.label).toBe('Make the pin');
    // .4994 to .5011, half way .50025: up to the mark that leaves metal on
    expect(bore.figure).toBe('.501 in');
    cleanup();
    const pin = await shown({ ...half, pin: typedSize('.4950') });
    expect(pin.label).toBe('Make the bore');
  });

  test('the verdict where both are there, though neither may keep its own size', async () => {
    const { verdict, text } = await shown({ ...half, bore: typedSize('.5023'), pin: typedSize('.5003') });
    expect(verdict).toBe('Good: clearance .002, want .0012 to .0029.');
    expect(text).toContain('As a pair they run as RC5 wants');
  });

  test('why not, where the class isn’t made at the size', async () => {
    const { verdict } = await shown(half, { joint: 'pressed', ansiClass: 'FN3' });
    expect(verdict).toBe('FN3 is not made at .500 in. Pick the class next to it.');
  });
});
