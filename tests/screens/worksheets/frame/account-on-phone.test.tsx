import { fireEvent, render, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { lengthOf } from '../../../../src/engine/length/length.ts';
import type { Account, Block, WayBlock } from '../../../../src/engine/worksheets/account.ts';
import { AccountCaution } from '../../../../src/screens/worksheets/frame/account-caution.tsx';
import { AccountOnPhone } from '../../../../src/screens/worksheets/frame/account-on-phone.tsx';
import { WithAssumed } from '../../../../src/screens/worksheets/said-assumed.tsx';
import { clearAway } from '../../on-screen.tsx';
import { typedSize, worksheetOf } from '../worksheet-for-test.ts';

afterEach(clearAway);

const tooTight: Block = {
  is: 'verdict',
  kind: 'no-good',
  headline: 'Too tight: .022 proud. Face a spacer.',
};
const face: Block = {
  is: 'lead',
  label: 'Face outer spacer',
  figure: '.032',
  unit: 'in off',
  change: '1.155 → 1.123',
  limits: 'good from 1.121 to 1.125',
};
const proof: Block = { is: 'proof', sentence: 'Calipers prove this to ±.003.' };
const why: Block = {
  is: 'why',
  lines: [{ what: 'Gap', how: 'sleeve − parts', source: 'sum of a dimension chain' }],
};
const line: Block = {
  is: 'line',
  label: 'float',
  value: lengthOf('.010 in'),
  halfWidth: lengthOf('.003 in'),
  limits: { lower: lengthOf('.008 in'), upper: lengthOf('.012 in'), source: 'own' },
  verdict: 'too-close',
};

function shown(account: Account): Element {
  const { container } = render(
    <AccountOnPhone
      account={account}
      unit="in"
      hrefFor={(field) => `#/${field}`}
      sizes={{ count: 6, rows: <p>six sizes</p> }}
    />,
  );
  return container;
}

/** The text of the page before anything is unfolded, in its order. */
const read = (page: Element) => page.textContent?.replaceAll(/\s+/g, ' ') ?? '';

describe('an answer that says what to face', () => {
  test('stands in the order verdict, what, how much, from and to, limits, proof, folded keys', () => {
    const words = read(shown([why, proof, face, line, tooTight]));
    const order = [
      'Too tight: .022 proud.',
      'Face outer spacer',
      '.032 in off',
      '1.155 → 1.123',
      'good from 1.121 to 1.125',
      'Calipers prove this to ±.003.',
      'Sizes 6',
      'Why',
    ].map((part) => words.indexOf(part));
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    expect(order).not.toContain(-1);
  });

  test('has one sentence in its band; what to do about it is said under the figure', () => {
    const page = shown([tooTight, face]);
    const band = page.querySelector('.verdict-band');
    expect(band?.textContent).toBe('Too tight: .022 proud.');
    expect(read(page).indexOf('Face a spacer.')).toBeGreaterThan(read(page).indexOf('good from 1.121'));
  });

  test('keeps how it came about behind Why, with the number line and its source, and loses nothing of it', () => {
    const said = (sentence: string): Block => ({ is: 'said', sentence });
    const page = shown([tooTight, face, proof, said('One.'), said('Two.'), line, why]);
    expect(read(page)).not.toContain('dimension chain');
    fireEvent.click(screen.getByRole('button', { name: 'Why' }));
    expect(read(page)).toContain('Source: sum of a dimension chain');
    expect(read(page)).toContain('One.');
    expect(read(page)).toContain('Two.');
    expect(page.querySelector('.number-line')).not.toBeNull();
    expect(screen.getByRole('button', { name: 'Why' }).getAttribute('aria-expanded')).toBe('true');
  });

  test('lists its sizes behind a key with their count, one list open at a time', () => {
    const page = shown([tooTight, face, why]);
    fireEvent.click(screen.getByRole('button', { name: 'Sizes 6' }));
    expect(read(page)).toContain('six sizes');
    fireEvent.click(screen.getByRole('button', { name: 'Why' }));
    expect(read(page)).not.toContain('six sizes');
  });

  test('says what it assumed in the verdict’s line, and its key stands after the figure', () => {
    const data = worksheetOf('ring', { sizes: { recess: typedSize('1.5'), stem: typedSize('.75') } });
    const { container } = render(
      <WithAssumed data={data}>
        <AccountOnPhone
          account={[tooTight, face, proof]}
          unit="in"
          hrefFor={(field) => `#/${field}`}
          sizes={{ count: 2, rows: null }}
        />
      </WithAssumed>,
    );
    const words = read(container);
    expect(words).toContain('Too tight: .022 proud; assumed: the recess locates it');
    const band = container.querySelector('.verdict-band');
    expect(band?.querySelector('a')).toBeNull();
    expect(words.indexOf('Not the recess locates it?')).toBeGreaterThan(words.indexOf('Calipers prove'));
  });
});

test('without a verdict the assumption stands behind the figure’s limits, and the label stays what it is', () => {
  const data = worksheetOf('ring', { sizes: { recess: typedSize('1.5'), stem: typedSize('.75') } });
  const { container } = render(
    <WithAssumed data={data}>
      <AccountOnPhone
        account={[face]}
        unit="in"
        hrefFor={(field) => `#/${field}`}
        sizes={{ count: 2, rows: null }}
      />
    </WithAssumed>,
  );
  expect(screen.getByRole('heading').textContent).toBe('Face outer spacer');
  const lead = container.querySelector('.account-lead');
  expect(lead && read(lead)).toContain('good from 1.121 to 1.125; assumed: the recess locates it');
});

const way = (
  rank: number | undefined,
  title: string,
  more: Partial<Pick<WayBlock, 'asks' | 'stands'>> = {},
): WayBlock => ({ is: 'way', title, detail: `${title} it is.`, stands: 'open', rank, ...more });

describe('ways that are ranked', () => {
  const ways = [
    way(4, 'Weld and bore'),
    way(2, 'Half-inch bolt'),
    way(1, 'Thread insert', { asks: 'wall' }),
    way(3, 'Bushing'),
    way(5, 'Sleeve on the bolt', { stands: 'out' }),
  ];

  test('stand on the page by their rank, three of them and the one that is ruled out; all behind one key', () => {
    const page = shown([tooTight, ...ways]);
    const titles = [...page.querySelectorAll('.account-ranked strong')].map((one) => one.textContent);
    expect(titles).toEqual(['Thread insert', 'Half-inch bolt', 'Bushing', 'Sleeve on the bolt']);
    expect(read(page)).toContain('All ways 5');
  });

  test('lead to what has to be given first for them', () => {
    shown([tooTight, ...ways]);
    expect(screen.getByRole('link', { name: /Thread insert/ }).getAttribute('href')).toBe('#/wall');
  });

  test('are followed by the one thing that is asked first', () => {
    const page = shown([
      tooTight,
      ...ways,
      { is: 'ask', sentence: 'how much wall at the thinnest side?', field: 'wall', key: 'Give the wall' },
    ]);
    expect(read(page)).toContain('One thing first: how much wall at the thinnest side?');
  });

  test('without a rank are other ways, behind their key', () => {
    const page = shown([tooTight, face, way(undefined, 'From a new bar')]);
    expect(read(page)).not.toContain('From a new bar');
    fireEvent.click(screen.getByRole('button', { name: 'Other ways 1' }));
    expect(read(page)).toContain('From a new bar');
  });
});

test('lengths that belong together stand on the page where they lead, else behind Why', () => {
  const rows = (title: string, leads: boolean): Block => ({
    is: 'rows',
    title,
    rows: [{ what: 'left spacer', figure: '1.240' }],
    ...(leads && { leads: true }),
  });
  const page = shown([tooTight, rows('All four', true), rows('Before', false)]);
  expect(read(page)).toContain('All four');
  expect(read(page)).not.toContain('Before');
});

test.each([
  ['insert', /not the metal that was lost/],
  ['bushing', /not the metal’s strength/],
  ['steering', /Steering kills/],
] as const)('the caution about %s stands on the phone in two sentences or three', (of, words) => {
  const { container } = render(<AccountCaution of={of} />);
  expect(container.textContent).toMatch(words);
});
