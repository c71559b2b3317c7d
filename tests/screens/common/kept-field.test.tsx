import { act, cleanup, fireEvent, render, screen } from '@testing-library/preact';
import { useState } from 'preact/hooks';
import { afterEach, expect, test } from 'vitest';
import { KeptField } from '../../../src/screens/common/kept-field.tsx';

afterEach(cleanup);

/** A record whose writes the test ends, and an undo that puts back what it said before the last one. */
function aRecord(first: string) {
  const waiting: { words: string; end: (isKept: boolean) => void }[] = [];
  let put: (words: string) => void = () => undefined;
  function Record() {
    const [kept, setKept] = useState(first);
    put = setKept;
    const write = async (words: string) => {
      const isKept = await new Promise<boolean>((end) => waiting.push({ words, end }));
      if (isKept) setKept(words);
      return isKept;
    };
    return <KeptField label="Note" kept={kept} onWords={write} />;
  }
  render(<Record />);
  const field = () => screen.getByLabelText<HTMLInputElement>('Note');
  return {
    text: () => field().value,
    type: (value: string) => fireEvent.input(field(), { target: { value } }),
    answer: (isKept: boolean) => act(async () => waiting.shift()?.end(isKept)),
    says: (words: string) => act(() => put(words)),
  };
}

test('after a write that was refused an undo shows what the record says', async () => {
  const { text, type, answer, says } = aRecord('ab');
  type('abX');
  await answer(false); // the disk is full
  expect(text()).toBe('abX');
  type('ab');
  await answer(true);
  type('abX'); // there is room again
  await answer(true);
  await says('ab');
  expect(text()).toBe('ab');
});

test('words refused take only themselves out of what is on its way', async () => {
  const { text, type, answer } = aRecord('');
  type('a');
  type('ab');
  type('abc');
  await answer(false);
  await answer(true);
  expect(text()).toBe('abc');
  await answer(true);
  expect(text()).toBe('abc');
});
