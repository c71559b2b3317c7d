import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact';
import { render as draw } from 'preact';
import { useState } from 'preact/hooks';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { writeDecimalsWith } from '../../../src/engine/length/decimal-mark.ts';
import type { Unit } from '../../../src/engine/length/length.ts';
import type { HalfTyped } from '../../../src/screens/common/pad-text.ts';
import { SizePad } from '../../../src/screens/common/size-pad.tsx';

afterEach(() => {
  cleanup();
  writeDecimalsWith('.');
});

const logged = vi.fn<(typed: string) => void>();
beforeEach(() => logged.mockReset());

type PadProps = { typed?: string; unit?: Unit; chart?: boolean; message?: string };

/** The pad with the state its screen holds for it; what was logged leaves the field. */
function Pad({ typed = '', unit = 'in', chart = false, message }: PadProps) {
  const [half, setHalf] = useState<HalfTyped>({ typed, unit });
  const log = () => {
    logged(half.typed);
    setHalf({ typed: '', unit });
  };
  return (
    <>
      <button type="button">Tool</button>
      <SizePad
        label="Left bore, reading 1"
        half={half}
        onChange={setHalf}
        {...(!chart && { commit: { text: 'Log reading', onPress: log } })}
        {...(message !== undefined && { message: <p role="alert">{message}</p> })}
      />
    </>
  );
}

const field = () => screen.getByLabelText<HTMLInputElement>('Left bore, reading 1');
const press = (name: string) => fireEvent.click(screen.getByRole('button', { name }));
const unitNow = () =>
  ['in', 'thou', 'mm'].filter(
    (unit) => screen.getByRole('button', { name: unit }).getAttribute('aria-pressed') === 'true',
  );

describe('a press on the pad', () => {
  test('types: .4487 takes five presses and is shown in millimetres and as a fraction', () => {
    const { container } = render(<Pad />);
    for (const key of ['decimal point', '4', '4', '8', '7']) press(key);
    expect(field().value).toBe('.4487');
    // .4487 · 25.4 = 11.39698; 29/64 = .453125, .004425 more
    expect(container.querySelector('.size-pad-echo')?.textContent).toBe('11.397 mm · 29/64 less .0044');
  });

  test('in a shop that types commas the key shows one, types one, and the echo has one', () => {
    writeDecimalsWith(',');
    const { container } = render(<Pad unit="mm" />);
    for (const key of ['1', '1', 'decimal comma', '4']) press(key);
    expect(screen.getByRole('button', { name: 'decimal comma' }).textContent).toBe(',');
    expect(field().value).toBe('11,4');
    // 11.4 / 25.4 = .448819; 29/64 = .453125, .004306 less
    expect(container.querySelector('.size-pad-echo')?.textContent).toBe('0,4488 in · 29/64 less 0,0043');
    press('decimal comma');
    expect(field().value).toBe('11,4');
  });

  test('types a mixed size with the space and the bar', () => {
    render(<Pad />);
    press('1');
    press('1 a/b: space, for a fraction after a whole number');
    for (const key of ['1', 'a/b: fraction bar', '2']) press(key);
    expect(field().value).toBe('1 1/2');
  });

  test('on the space key does nothing where no fraction can follow, and says that it is off', () => {
    render(<Pad typed=".44" />);
    const space = screen.getByRole('button', { name: '1 a/b: space, for a fraction after a whole number' });
    fireEvent.click(space);
    expect(field().value).toBe('.44');
    expect(space.getAttribute('aria-disabled')).toBe('true');
  });

  test('on delete takes the last digit and leaves an empty field alone', () => {
    render(<Pad typed=".4" />);
    press('delete last digit');
    press('delete last digit');
    press('delete last digit');
    expect(field().value).toBe('');
  });

  test('on a unit means the same figure in that unit', () => {
    render(<Pad typed="12" />);
    expect(unitNow()).toEqual(['in']);
    press('thou');
    expect(unitNow()).toEqual(['thou']);
    expect(field().value).toBe('12');
  });

  test('leaves the focus in the field, where a gauge types next', () => {
    render(<Pad />);
    expect(document.activeElement).toBe(field());
    // A prevented pointer-down is what keeps a browser from moving the focus to the key.
    expect(fireEvent.pointerDown(screen.getByRole('button', { name: '4' }))).toBe(false);
  });
});

describe('the keys and the field have names for a screen reader', () => {
  test('every key says what it types', () => {
    render(<Pad />);
    const names = [
      ...'0123456789'.split(''),
      'decimal point',
      'a/b: fraction bar',
      '1 a/b: space, for a fraction after a whole number',
      'delete last digit',
      'in',
      'thou',
      'mm',
      'Log reading',
    ];
    for (const name of names) expect(screen.getAllByRole('button', { name })).toHaveLength(1);
    expect(screen.getByRole('group', { name: 'Keypad' })).toBeTruthy();
  });

  test('the field brings up no keyboard of the phone', () => {
    render(<Pad />);
    expect(field().inputMode).toBe('none');
  });
});

describe('a keyboard, or a gauge that types its value and Enter', () => {
  test('logs what stands in the field', () => {
    render(<Pad />);
    fireEvent.input(field(), { target: { value: '.4487' } });
    fireEvent.keyDown(field(), { key: 'Enter' });
    expect(logged.mock.calls).toEqual([['.4487']]);
  });

  test('Enter on an empty field logs nothing: it may come from a foot switch', () => {
    render(<Pad />);
    fireEvent.keyDown(field(), { key: 'Enter' });
    expect(logged).not.toHaveBeenCalled();
  });

  test('the first key of a gauge counts in the very frame the pad appears', async () => {
    // Drawn without the waiting for effects that `render` does: what listens a frame later is not there yet.
    const phone = document.body.appendChild(document.createElement('div'));
    draw(<Pad />, phone);
    expect(document.activeElement).toBe(field());
    fireEvent.keyDown(document.body, { key: '4' });
    await waitFor(() => expect(field().value).toBe('4'));
    draw(null, phone);
    phone.remove();
  });

  test('a digit typed while a button has the focus lands in the field and brings the focus there', () => {
    render(<Pad typed=".4" />);
    const elsewhere = screen.getByRole('button', { name: 'Tool' });
    elsewhere.focus();
    fireEvent.keyDown(elsewhere, { key: '4' });
    expect(field().value).toBe('.44');
    expect(document.activeElement).toBe(field());
  });

  test('the browser’s own keys are left to it: Ctrl and 4 changes a tab, not the size', () => {
    render(<Pad typed=".4" />);
    fireEvent.keyDown(document.body, { key: '4', ctrlKey: true });
    fireEvent.keyDown(document.body, { key: 'a' });
    expect(field().value).toBe('.4');
  });

  test('a digit typed into a line of words stays there', () => {
    render(
      <>
        <input aria-label="Name" />
        <Pad typed=".4" />
      </>,
    );
    fireEvent.keyDown(screen.getByLabelText('Name'), { key: '4' });
    expect(field().value).toBe('.4');
  });

  test('a unit typed behind the figure is the one that is shown as meant', () => {
    render(<Pad typed="11.4 mm" unit="in" />);
    expect(unitNow()).toEqual(['mm']);
  });
});

describe('the commit key', () => {
  afterEach(() => vi.useRealTimers());

  test('pressed twice within a moment by a glove that bounces, commits once', () => {
    vi.useFakeTimers({ toFake: ['performance'] });
    render(<Pad typed=".4487" />);
    press('Log reading');
    vi.advanceTimersByTime(200);
    press('Log reading');
    fireEvent.keyDown(field(), { key: 'Enter' });
    expect(logged).toHaveBeenCalledTimes(1);
  });

  test('takes a second value of a fast gauge within the same moment: it is not a bounce', () => {
    vi.useFakeTimers({ toFake: ['performance'] });
    render(<Pad />);
    for (const value of ['.4487', '.4490']) {
      fireEvent.input(field(), { target: { value } });
      fireEvent.keyDown(field(), { key: 'Enter' });
      vi.advanceTimersByTime(100);
    }
    expect(logged.mock.calls).toEqual([['.4487'], ['.4490']]);
  });

  test('pressed on an empty field is heard, so that the screen can say that nothing is typed', () => {
    render(<Pad />);
    press('Log reading');
    expect(logged.mock.calls).toEqual([['']]);
  });

  test('is not pressed by a foot switch: Enter leaves what a finger half typed, and says why', () => {
    render(<Pad />);
    for (const key of ['decimal point', '4', '4']) press(key);
    fireEvent.keyDown(field(), { key: 'Enter' });
    expect(logged).not.toHaveBeenCalled();
    expect(field().value).toBe('.44');
    expect(screen.getByRole('status').textContent).toContain('Log reading');
    // A keyboard that goes on from there logs.
    fireEvent.input(field(), { target: { value: '.4487' } });
    fireEvent.keyDown(field(), { key: 'Enter' });
    expect(logged.mock.calls).toEqual([['.4487']]);
  });

  test('is left out on a chart, and Enter is harmless there', () => {
    render(<Pad typed=".4487" chart />);
    fireEvent.keyDown(field(), { key: 'Enter' });
    expect(screen.queryByRole('button', { name: 'Log reading' })).toBeNull();
    expect(field().value).toBe('.4487');
  });
});

describe('what the field shows', () => {
  test('why a size can’t be taken stands by the field and is spoken', () => {
    render(<Pad typed="29/0" message="The bottom of a fraction can’t be zero." />);
    expect(screen.getByRole('alert').textContent).toBe('The bottom of a fraction can’t be zero.');
  });

  test('the last reading, in grey, until something is typed', () => {
    const resting = { figure: '.4487', unit: 'in', note: 'reading 3' };
    const pad = (typed: string) => (
      <SizePad label="Bore" half={{ typed, unit: 'in' }} onChange={() => undefined} resting={resting} />
    );
    const { container, rerender } = render(pad(''));
    expect(screen.getByLabelText<HTMLInputElement>('Bore').placeholder).toBe('.4487');
    expect(container.querySelector('.size-pad-echo')?.textContent).toBe('reading 3');
    rerender(pad('1'));
    // 1 in = 25.4 mm
    expect(container.querySelector('.size-pad-echo')?.textContent).toBe('25.40 mm · 1 in exactly');
  });

  test('degrees have no unit key, no fraction and no size in millimetres', () => {
    const { container } = render(
      <SizePad
        label="Lead angle"
        half={{ typed: '3.5', unit: 'in' }}
        onChange={() => undefined}
        number={{ unit: '°' }}
      />,
    );
    expect(container.querySelector('.size-pad-unit')?.textContent).toBe('°');
    expect(container.querySelector('.size-pad-echo')?.textContent).toBe('');
    for (const name of ['in', 'thou', 'mm', 'a/b: fraction bar'])
      expect(screen.queryByRole('button', { name })).toBeNull();
  });
});
