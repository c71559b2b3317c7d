import { act, cleanup, fireEvent, render, screen } from '@testing-library/preact';
import { useState } from 'preact/hooks';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { Button } from '../../../src/screens/common/button.tsx';
import type { HalfTyped } from '../../../src/screens/common/pad-text.ts';
import { Row } from '../../../src/screens/common/row.tsx';
import { SizePad } from '../../../src/screens/common/size-pad.tsx';

let now = 10_000;
/** Every write set going, oldest first, ended by the test. */
let writes: (() => void)[] = [];
const write = () => new Promise<void>((done) => writes.push(done));

beforeEach(() => {
  writes = [];
  now += 10_000;
  vi.spyOn(performance, 'now').mockImplementation(() => now);
});
afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
});

/** A pad that empties only when its screen goes, as one for money does. */
function Pad({ commit }: { commit: () => unknown }) {
  const [half, setHalf] = useState<HalfTyped>({ typed: '', unit: 'in' });
  return (
    <SizePad
      label="Amount"
      half={half}
      onChange={setHalf}
      commit={{ text: 'Put it down', onPress: commit }}
    />
  );
}

const key = () => screen.getByRole('button', { name: 'Put it down' });
const enter = () => fireEvent.keyDown(screen.getByLabelText('Amount'), { key: 'Enter' });
const type = (text: string) => fireEvent.input(screen.getByLabelText('Amount'), { target: { value: text } });

/** Each way to press something that writes: how it is drawn, and how it is pressed. */
const ways = [
  {
    what: 'Enter on a pad',
    draw: () => {
      render(<Pad commit={write} />);
      type('125');
    },
    press: enter,
  },
  {
    what: 'the commit key of a pad',
    draw: () => {
      render(<Pad commit={write} />);
      type('125');
    },
    press: () => fireEvent.click(key(), { detail: 1 }),
  },
  {
    what: 'a finger on the key behind Enter',
    draw: () => {
      render(<Pad commit={write} />);
      type('125');
    },
    press: () => (writes.length === 0 ? enter() : fireEvent.click(key(), { detail: 1 })),
  },
  {
    what: 'a button',
    draw: () => render(<Button onPress={write}>Put it down</Button>),
    press: () => fireEvent.click(key(), { detail: 1 }),
  },
  {
    what: 'a row',
    draw: () => render(<Row title="Put it down" onPress={write} />),
    press: () => fireEvent.click(key(), { detail: 0 }),
  },
];

describe.each(ways)('$what', ({ draw, press }) => {
  test('writes once while that is on its way, however long it takes', async () => {
    draw();
    press();
    now += 5000;
    press();
    expect(writes).toHaveLength(1);
    await act(async () => writes[0]?.());
    press();
    expect(writes).toHaveLength(1);
    now += 400;
    press();
    expect(writes).toHaveLength(2);
  });

  test('writes once where the second press comes when the first is written already', async () => {
    draw();
    press();
    await act(async () => writes[0]?.());
    now += 200;
    press();
    expect(writes).toHaveLength(1);
  });
});

test('a pad that tells of no write takes a press that comes at once for the one before it', () => {
  const logged = vi.fn<() => void>();
  render(<Pad commit={logged} />);
  type('125');
  enter();
  enter();
  expect(logged).toHaveBeenCalledTimes(1);
});

test('two readings, each typed and sent with Enter, are two however quickly they come', () => {
  const logged = vi.fn<() => void>();
  render(<Pad commit={logged} />);
  for (const reading of ['.4487', '.4487', '.4489']) {
    type('');
    type(reading);
    enter();
  }
  expect(logged).toHaveBeenCalledTimes(3);
});

test('a key that only counts on is pressed as often as it is pressed', () => {
  const counted = vi.fn<() => void>();
  render(<Button onPress={counted}>Put in one</Button>);
  for (let times = 0; times < 3; times += 1) fireEvent.click(screen.getByRole('button'));
  expect(counted).toHaveBeenCalledTimes(3);
});

test('the main key of a screen commits: it is pressed once in a moment whatever it tells', () => {
  const made = vi.fn<() => void>();
  render(
    <Button kind="main" onPress={made}>
      Make it
    </Button>,
  );
  fireEvent.click(screen.getByRole('button'));
  fireEvent.click(screen.getByRole('button'));
  expect(made).toHaveBeenCalledTimes(1);
});

test('what is typed after a refusal is committed at once', async () => {
  const made = vi.fn<() => Promise<void>>(() => Promise.resolve());
  render(
    <>
      <input aria-label="Name" />
      <Button kind="main" onPress={made}>
        Make it
      </Button>
    </>,
  );
  await act(async () => void fireEvent.click(screen.getByRole('button')));
  fireEvent.input(screen.getByLabelText('Name'), { target: { value: 'Caliper' } });
  fireEvent.click(screen.getByRole('button'));
  expect(made).toHaveBeenCalledTimes(2);
});
