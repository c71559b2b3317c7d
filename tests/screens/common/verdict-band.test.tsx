import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { cleanup, render, screen } from '@testing-library/preact';
import { afterEach, beforeAll, describe, expect, test } from 'vitest';
import { VerdictBand, VerdictMark, type VerdictKind } from '../../../src/screens/common/verdict-band.tsx';

afterEach(cleanup);

const css = readFileSync(join(import.meta.dirname, '../../../src/screens/common/verdict-band.css'), 'utf8');

beforeAll(() => {
  const style = document.createElement('style');
  style.textContent = css;
  document.head.append(style);
});

const verdicts: readonly {
  kind: VerdictKind;
  word: string;
  mark: string;
  drawn: Readonly<Record<string, number>>;
  edge: string;
}[] = [
  {
    kind: 'good',
    word: 'good',
    mark: 'a ring with a dot',
    drawn: { circle: 2, path: 0, rect: 0 },
    edge: 'solid',
  },
  {
    kind: 'too-close',
    word: 'too close to call',
    mark: 'a half-filled ring',
    drawn: { circle: 1, path: 1, rect: 0 },
    edge: 'double',
  },
  { kind: 'no-good', word: 'no good', mark: 'a bar', drawn: { circle: 0, path: 0, rect: 1 }, edge: 'dashed' },
];

describe.each(verdicts)('a verdict of $word', ({ kind, word, mark, drawn, edge }) => {
  test(`is spoken as “${word}”`, () => {
    render(<VerdictMark kind={kind} />);
    expect(screen.getByRole('img', { name: word })).toBeTruthy();
  });

  test(`has ${mark} for its mark`, () => {
    const { container } = render(<VerdictMark kind={kind} />);
    for (const [shape, count] of Object.entries(drawn))
      expect(container.querySelectorAll(shape)).toHaveLength(count);
  });

  test(`has a ${edge} edge`, () => {
    const { container } = render(<VerdictBand kind={kind} headline="float .010" />);
    const band = container.querySelector('.verdict-band');
    expect(band && getComputedStyle(band).borderLeftStyle).toBe(edge);
  });

  test('says its sentence beside the mark', () => {
    render(
      <VerdictBand kind={kind} headline="float .010, want .008 to .012.">
        <p>rocks ±.004</p>
      </VerdictBand>,
    );
    expect(screen.getByText('float .010, want .008 to .012.')).toBeTruthy();
    expect(screen.getByText('rocks ±.004')).toBeTruthy();
  });
});
