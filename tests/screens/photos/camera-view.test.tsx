import { act, cleanup, fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { PhotosScreen } from '../../../src/screens/photos/photos-screen.tsx';
import { fitWithin } from '../../../src/screens/photos/shrink-photo.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import { photosOf } from '../../../src/store/kept/photos.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

beforeEach(() => {
  // The stand-in page takes only streams of its own here.
  Object.defineProperty(HTMLVideoElement.prototype, 'srcObject', {
    configurable: true,
    writable: true,
    value: null,
  });
  vi.spyOn(HTMLVideoElement.prototype, 'play').mockResolvedValue();
});
afterEach(async () => {
  await clearAway();
  Reflect.deleteProperty(HTMLVideoElement.prototype, 'srcObject');
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
  Reflect.deleteProperty(navigator, 'mediaDevices');
});

/** A phone whose camera answers so. */
function cameraAnswers(getUserMedia: (() => Promise<unknown>) | undefined): void {
  Object.defineProperty(navigator, 'mediaDevices', {
    configurable: true,
    value: getUserMedia && { getUserMedia },
  });
}

function stream() {
  const track = { stop: vi.fn<() => void>(), addEventListener: vi.fn<() => void>() };
  return { track, getTracks: () => [track], getVideoTracks: () => [track] };
}

async function atTheCamera() {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  onScreen(store, <PhotosScreen jobId={job.id} ownerStore="jobs" ownerId={job.id} field="camera" />);
  await screen.findByText('Take a photo');
  return { store, job };
}

const failing = (name: string) => () => Promise.reject(new DOMException('no', name));

test('a camera that was on its way when the phone was put away does not count as on later', async () => {
  let comeOn: () => void = () => undefined;
  vi.spyOn(HTMLVideoElement.prototype, 'play').mockReturnValue(new Promise((done) => (comeOn = done)));
  const refused = failing('NotAllowedError');
  const first = stream();
  const answers = [() => Promise.resolve(first), refused];
  cameraAnswers(() => (answers.shift() ?? refused)());
  await atTheCamera();
  await waitFor(() => expect(document.querySelector('video')?.srcObject).toBe(first));
  vi.spyOn(document, 'visibilityState', 'get').mockReturnValue('visible');
  fireEvent(document, new Event('visibilitychange'));
  await screen.findByRole('alert');
  await act(async () => comeOn());
  expect(screen.getByRole('alert').textContent).toMatch(/not allowed here/);
});

describe('without a camera the screen says why, and pictures can still be chosen', () => {
  test.each([
    ['a browser that gives pages none', undefined, /gives a page no camera/],
    ['permission refused', failing('NotAllowedError'), /not allowed here\. Allow it/],
    ['no camera in the phone', failing('NotFoundError'), /No camera was found/],
    ['a camera another app holds', failing('NotReadableError'), /another app holds it/],
    ['anything else', failing('TypeError'), /did not start/],
  ])('%s', async (_what, answer, sentence) => {
    cameraAnswers(answer);
    await atTheCamera();
    expect((await screen.findByRole('alert')).textContent).toMatch(sentence);
    expect(screen.getByRole('alert').textContent).toContain('can still be chosen from the phone');
    expect(screen.getByRole('button', { name: 'From the phone' })).toBeTruthy();
    expect(screen.queryByRole('button', { name: 'Take it' })).toBeNull();
  });

  test('allowed after all, it starts at the next try', async () => {
    let refusals = 1;
    cameraAnswers(() => {
      refusals -= 1;
      return refusals >= 0 ? failing('NotAllowedError')() : Promise.resolve(stream());
    });
    await atTheCamera();
    fireEvent.click(await screen.findByRole('button', { name: 'Try again' }));
    await waitFor(() =>
      expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Take it' }).disabled).toBe(false),
    );
    expect(screen.queryByRole('alert')).toBeNull();
  });
});

describe('the camera is off', () => {
  test('as soon as its screen is left', async () => {
    const seen = stream();
    cameraAnswers(() => Promise.resolve(seen));
    await atTheCamera();
    await waitFor(() =>
      expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Take it' }).disabled).toBe(false),
    );
    expect(seen.track.stop).not.toHaveBeenCalled();
    cleanup();
    await waitFor(() => expect(seen.track.stop).toHaveBeenCalledOnce());
  });

  test('also when it only comes on after the screen was left', async () => {
    const seen = stream();
    const asked: ((stream: unknown) => void)[] = [];
    cameraAnswers(() => new Promise((done) => asked.push(done)));
    await atTheCamera();
    await waitFor(() => expect(asked).toHaveLength(1));
    expect(screen.getByText('The camera is starting…')).toBeTruthy();
    cleanup();
    asked[0]?.(seen);
    await waitFor(() => expect(seen.track.stop).toHaveBeenCalled());
  });

  test('while the phone is put away, and on again after', async () => {
    const streams = [stream(), stream()];
    let asked = 0;
    cameraAnswers(() => Promise.resolve(streams[asked++]));
    await atTheCamera();
    await waitFor(() =>
      expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Take it' }).disabled).toBe(false),
    );
    const hidden = vi.spyOn(document, 'visibilityState', 'get').mockReturnValue('hidden');
    document.dispatchEvent(new Event('visibilitychange'));
    expect(streams[0]?.track.stop).toHaveBeenCalled();
    hidden.mockReturnValue('visible');
    document.dispatchEvent(new Event('visibilitychange'));
    await waitFor(() => expect(asked).toBe(2));
    expect(streams[1]?.track.stop).not.toHaveBeenCalled();
  });
});

test('a camera that gives no picture says so, and nothing is kept', async () => {
  cameraAnswers(() => Promise.resolve(stream()));
  const { store, job } = await atTheCamera();
  const take = await screen.findByRole<HTMLButtonElement>('button', { name: 'Take it' });
  await waitFor(() => expect(take.disabled).toBe(false));
  fireEvent.click(take);
  expect((await screen.findByRole('alert')).textContent).toBe('The camera gave no picture. Press once more.');
  expect(await photosOf(store, { store: 'jobs', id: job.id })).toEqual([]);
});

test('a file that is too large is said so before it is read', async () => {
  cameraAnswers(undefined);
  await atTheCamera();
  const file = new File(['x'], 'wall.jpg', { type: 'image/jpeg' });
  Object.defineProperty(file, 'size', { value: 60_000_001 });
  const field = screen.getByLabelText<HTMLInputElement>('Pictures from the phone');
  Object.defineProperty(field, 'files', { value: [file] });
  fireEvent.change(field);
  expect(await screen.findByText('“wall.jpg” is larger than 60 MB. Choose a smaller picture.')).toBeTruthy();
});

test('the field for pictures never leaves for the camera app, which may cost the page its life', async () => {
  cameraAnswers(undefined);
  await atTheCamera();
  const field = screen.getByLabelText('Pictures from the phone');
  expect(field.getAttribute('accept')).toBe('image/*');
  expect(field.hasAttribute('capture')).toBe(false);
});

test.each([
  [{ width: 4000, height: 3000 }, 1600, { width: 1600, height: 1200 }],
  [{ width: 3000, height: 4000 }, 1600, { width: 1200, height: 1600 }],
  [{ width: 640, height: 480 }, 1600, { width: 640, height: 480 }],
  [{ width: 1600, height: 1200 }, 240, { width: 240, height: 180 }],
  [{ width: 10_000, height: 1 }, 240, { width: 240, height: 1 }],
])('a picture of %o within %i is %o', (size, longest, fitted) => {
  expect(fitWithin(size, longest)).toEqual(fitted);
});
