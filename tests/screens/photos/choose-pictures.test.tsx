import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { PhotosScreen } from '../../../src/screens/photos/photos-screen.tsx';
import { createJob } from '../../../src/store/kept/jobs.ts';
import { photosOf } from '../../../src/store/kept/photos.ts';
import { fillDisk } from '../../store/fill-disk.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

beforeEach(() => {
  // The stand-in page decodes and draws nothing. Here a picture is whatever isn't called .heic.
  vi.stubGlobal(
    'Image',
    class {
      src = '';
      naturalWidth = 4;
      naturalHeight = 3;
      async decode() {
        if (this.src.endsWith('.heic')) throw new Error('not a picture');
      }
    },
  );
  vi.spyOn(URL, 'createObjectURL').mockImplementation((file) => (file instanceof File ? file.name : 'kept'));
  const context = { fillRect: () => undefined, drawImage: () => undefined };
  Object.defineProperty(HTMLCanvasElement.prototype, 'getContext', {
    configurable: true,
    value: () => context,
  });
  Object.defineProperty(HTMLCanvasElement.prototype, 'toBlob', {
    configurable: true,
    value: (done: (blob: Blob) => void) => done(new Blob(['jpeg'])),
  });
});
afterEach(async () => {
  await clearAway();
  Reflect.deleteProperty(HTMLCanvasElement.prototype, 'getContext');
  Reflect.deleteProperty(HTMLCanvasElement.prototype, 'toBlob');
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

async function choose(...names: readonly string[]) {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  onScreen(store, <PhotosScreen jobId={job.id} ownerStore="jobs" ownerId={job.id} />);
  const field = await screen.findByLabelText<HTMLInputElement>('Pictures from the phone');
  Object.defineProperty(field, 'files', { value: names.map((name) => new File(['x'], name)) });
  fireEvent.change(field);
  const done = () => screen.findByRole('button', { name: 'From the phone' });
  return { done, kept: async () => (await photosOf(store, { store: 'jobs', id: job.id })).length };
}

const told = () => screen.queryByRole('alert')?.textContent;

describe('of several pictures chosen at once', () => {
  test('one that can’t be read is named at the end, and the others are kept', async () => {
    const { kept } = await choose('a.jpg', 'b.heic', 'c.jpg', 'd.jpg');
    await waitFor(async () => expect(await kept()).toBe(3));
    await waitFor(() =>
      expect(told()).toBe(
        '“b.heic” is not a picture this browser can read. Choose a JPEG or PNG, or take it with the camera here.',
      ),
    );
  });

  test('two that can’t be read are both named, in one sentence', async () => {
    const { kept } = await choose('a.heic', 'b.jpg', 'c.heic');
    await waitFor(() =>
      expect(told()).toBe('“a.heic” and “c.heic” could not be read. Choose JPEGs or PNGs of at most 60 MB.'),
    );
    expect(await kept()).toBe(1);
  });

  test('a full phone keeps no more of them, and says how many are left', async () => {
    fillDisk('photoBytes');
    const { kept } = await choose('a.heic', 'b.jpg', 'c.jpg', 'd.jpg');
    await waitFor(() =>
      expect(told()).toMatch(
        /^The phone is full.* 3 of the 4 pictures were not kept\. “a\.heic” is not a picture/,
      ),
    );
    expect(await kept()).toBe(0);
  });

  test('all that can be read are kept without a word', async () => {
    const { kept, done } = await choose('a.jpg', 'b.jpg');
    await waitFor(async () => expect(await kept()).toBe(2));
    await done();
    expect(told()).toBeUndefined();
  });
});

test('of one picture alone a full phone counts nothing', async () => {
  fillDisk('photoBytes');
  await choose('a.jpg');
  await waitFor(() => expect(told()).toMatch(/Make room, then press again\.$/));
});
