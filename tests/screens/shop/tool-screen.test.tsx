import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { lengthOf, sameLength } from '../../../src/engine/length/length.ts';
import { ToolScreen } from '../../../src/screens/shop/tool-screen.tsx';
import { measuringTools } from '../../../src/store/kept/tools.ts';
import { openForTest } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

afterEach(clearAway);

async function typed(toolId: string, field: string, text: string) {
  const store = await openForTest();
  onScreen(store, <ToolScreen toolId={toolId} field={field} />);
  fireEvent.input(await screen.findByRole('textbox'), { target: { value: text } });
  fireEvent.click(screen.getByRole('button', { name: 'Use it' }));
  return async () => (await measuringTools(store)).find(({ id }) => id === toolId);
}

describe('what a tool can be trusted to', () => {
  test.each([
    ['mpe', 'No tool is without error. Its paper says how far off it may be.'],
    ['resolution', 'A step is more than nothing.'],
    ['repeatability', 'The scatter is more than nothing: no two readings come out quite alike.'],
    ['jawWidth', 'A flat is more than nothing wide.'],
  ] as const)('is never nothing: %s', async (field, sentence) => {
    const tool = await typed('digital-caliper-inside', field, '0/64');
    expect((await screen.findByRole('alert')).textContent).toBe(sentence);
    const kept = (await tool())?.[field];
    expect(kept && sameLength(kept, lengthOf('0 in'))).not.toBe(true);
  });

  test('is what its paper says, however little', async () => {
    const tool = await typed('digital-caliper', 'mpe', '.00001');
    await waitFor(async () => expect((await tool())?.source).toBe('your own figure'));
    expect(screen.queryByRole('alert')).toBeNull();
  });

  test('a plug goes or doesn’t: its readings may scatter by nothing, as the usual ones do', async () => {
    const tool = await typed('plug-gauges', 'repeatability', '.0001');
    await waitFor(async () => {
      const kept = (await tool())?.repeatability;
      expect(kept && sameLength(kept, lengthOf('.0001 in'))).toBe(true);
    });
    fireEvent.input(screen.getByRole('textbox'), { target: { value: '0' } });
    fireEvent.click(screen.getByRole('button', { name: 'Use it' }));
    await waitFor(async () => {
      const kept = (await tool())?.repeatability;
      expect(kept && sameLength(kept, lengthOf('0 in'))).toBe(true);
    });
  });
});

describe('the range of a tool', () => {
  test('is given by the shop: a 12 in caliper reaches 12', async () => {
    const tool = await typed('digital-caliper', 'most', '12');
    await waitFor(async () => {
      const most = (await tool())?.most;
      expect(most && sameLength(most, lengthOf('12 in'))).toBe(true);
    });
  });

  test.each([
    ['least', '2', 'It has to begin below the greatest size it reads.'],
    ['most', '1', 'It has to end above the least size it reads.'],
  ] as const)('runs upwards: %s of a 1–2 in micrometer is not %s', async (field, text, sentence) => {
    await typed('micrometer-1-2', field, text);
    expect((await screen.findByRole('alert')).textContent).toBe(sentence);
  });
});
