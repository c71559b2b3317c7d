import { cleanup, fireEvent, screen, waitFor, within } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { addressOf, hrefOf } from '../../../src/screens/address.ts';
import { JobsScreen } from '../../../src/screens/jobs/jobs-screen.tsx';
import { ownerNamed, photosAddress, placeOf } from '../../../src/screens/photos/photo-address.ts';
import { PhotoStrip } from '../../../src/screens/photos/photo-strip.tsx';
import { PhotosScreen } from '../../../src/screens/photos/photos-screen.tsx';
import { addPiece } from '../../../src/store/kept/drawer.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { addPhoto, photosOf } from '../../../src/store/kept/photos.ts';
import type { PhotoOwner } from '../../../src/store/base/records.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { jpeg } from '../../store/pictures-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

const lent = new Set<string>();
beforeEach(() => {
  let count = 0;
  vi.spyOn(URL, 'createObjectURL').mockImplementation(() => {
    count += 1;
    lent.add(`blob:${count}`);
    return `blob:${count}`;
  });
  vi.spyOn(URL, 'revokeObjectURL').mockImplementation((url) => {
    lent.delete(url);
  });
});
afterEach(async () => {
  await clearAway();
  vi.restoreAllMocks();
  lent.clear();
});

// Its bytes are never decoded here: a happy stand-in page draws no pictures.

async function photoOf(store: Store, owner: PhotoOwner, jobId?: string, note = '') {
  const picture = {
    mime: 'image/jpeg',
    width: 1600,
    height: 1200,
    bytes: jpeg(1600, 1200),
    preview: jpeg(240, 180),
  };
  return worked(await addPhoto(store, { owner, ...(jobId !== undefined && { jobId }), ...picture, note }));
}

async function jobWithPhotos(count: number) {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: ['axle'] }));
  const owner = { store: 'jobs', id: job.id } as const;
  const photos = [];
  // One after the other, as they are taken.
  // oxlint-disable-next-line no-await-in-loop
  for (let taken = 0; taken < count; taken += 1) photos.push(await photoOf(store, owner, job.id));
  return { store, job, owner, photos };
}

function shownAt(job: { id: string }, field?: string) {
  return (
    <PhotosScreen jobId={job.id} ownerStore="jobs" ownerId={job.id} {...(field !== undefined && { field })} />
  );
}

describe('photos of a job', () => {
  test('none yet: one sentence says what goes here, and the camera is one press away', async () => {
    const { store, job } = await jobWithPhotos(0);
    onScreen(store, shownAt(job));
    await screen.findByText(/Photos of the set-up go here/);
    expect(screen.getByRole('link', { name: 'Camera' }).getAttribute('href')).toBe(
      `#/job/${job.id}/photos/jobs/${job.id}/camera`,
    );
  });

  test('stand with the newest first, each leading to itself', async () => {
    const { store, job, photos } = await jobWithPhotos(2);
    onScreen(store, shownAt(job));
    await screen.findByAltText('Photo 2 of 2');
    const links = within(screen.getByRole('list')).getAllByRole('link');
    expect(links.map((link) => link.getAttribute('href')?.split('/').at(-1))).toEqual(
      photos.map(({ id }) => id).toReversed(),
    );
  });

  test('lend the browser no picture any longer once the screen is left', async () => {
    const { store, job } = await jobWithPhotos(2);
    onScreen(store, shownAt(job));
    await screen.findByAltText('Photo 2 of 2');
    expect(lent.size).toBe(2);
    cleanup();
    await waitFor(() => expect(lent.size).toBe(0));
  });

  test('of something that was removed are not here', async () => {
    const store = await openForTest();
    onScreen(store, <PhotosScreen jobId="nowhere" ownerStore="jobs" ownerId="nowhere" />);
    expect(await screen.findByText('Not here')).toBeTruthy();
  });
});

describe('one photo', () => {
  test('takes a note, which it is then called by', async () => {
    const { store, job, owner, photos } = await jobWithPhotos(1);
    onScreen(store, shownAt(job, photos[0]?.id));
    fireEvent.input(await screen.findByLabelText('Note'), { target: { value: ' Indicator on the rim ' } });
    await screen.findByAltText('Indicator on the rim');
    expect((await photosOf(store, owner))[0]?.note).toBe('Indicator on the rim');
  });

  test('removed is gone from the list, and undo brings it back with its picture', async () => {
    const { store, job, owner, photos } = await jobWithPhotos(1);
    onScreen(store, shownAt(job, photos[0]?.id));
    fireEvent.click(await screen.findByRole('button', { name: 'Remove this photo' }));
    await waitFor(async () => expect(await photosOf(store, owner)).toEqual([]));
    const undo = await latestUndo(store, job.id);
    expect(undo?.label).toBe('Removed a photo');
    worked(await undoLast(store, undo?.id ?? ''));
    expect(await photosOf(store, owner)).toMatchObject([{ id: photos[0]?.id }]);
  });
});

describe('the strip of photos on another screen', () => {
  test('shows the last ones, says how many more there are, and leads to the camera', async () => {
    const { store, job, owner } = await jobWithPhotos(5);
    onScreen(store, <PhotoStrip owner={owner} jobId={job.id} />);
    await screen.findByAltText('Photo 5 of 5');
    expect(screen.getAllByRole('img', { name: /Photo/ }).map((one) => one.getAttribute('alt'))).toEqual([
      'Photo 4 of 5',
      'Photo 5 of 5',
    ]);
    expect(screen.getByRole('link', { name: '+3: all 5 photos' })).toBeTruthy();
    expect(screen.getByRole('link', { name: /^Photo: take/ })).toBeTruthy();
  });

  test('follows what another screen or phone adds', async () => {
    const { store, job, owner } = await jobWithPhotos(0);
    onScreen(store, <PhotoStrip owner={owner} jobId={job.id} />);
    await screen.findByRole('link', { name: /^Photo: take/ });
    await photoOf(store, owner, job.id, 'as it came');
    expect(await screen.findByAltText('as it came')).toBeTruthy();
  });
});

test('the job list shows the newest photo of a job, and is whole without one', async () => {
  const { store } = await jobWithPhotos(2);
  worked(await createJob(store, { name: 'Trailer', systems: [] }));
  const { container } = onScreen(store, <JobsScreen />);
  await screen.findByText('Trailer');
  await waitFor(() => expect(container.querySelectorAll('.job-cover')).toHaveLength(1));
});

describe('the address of photos', () => {
  test.each(['jobs', 'parts', 'features', 'worksheets', 'cuts', 'checks', 'steps'] as const)(
    'of one of the %s comes back to the same place after a reload',
    (store) => {
      const address = photosAddress({ owner: { store, id: 'a-1' }, jobId: 'j-1' }, 'camera');
      expect(addressOf(hrefOf(address))).toEqual(address);
      expect(addressOf(hrefOf(placeOf({ owner: { store, id: 'a-1' }, jobId: 'j-1' })))).toBeTruthy();
    },
  );

  test('of a piece in the drawer belongs to no job', () => {
    const of = { owner: { store: 'drawer', id: 'p-1' } } as const;
    expect(hrefOf(photosAddress(of, 'camera'))).toBe('#/drawer/piece/p-1/photos/camera');
    expect(addressOf('#/drawer/piece/p-1/photos/camera')).toEqual(photosAddress(of, 'camera'));
    expect(hrefOf(placeOf(of))).toBe('#/drawer/piece/p-1');
  });

  test('of a kind no Slipfit knows leads nowhere', () => {
    expect(ownerNamed('wheels', 'a')).toBeUndefined();
  });
});

test('a piece of the drawer can have photos', async () => {
  const store = await openForTest();
  const piece = worked(await addPiece(store, { kind: 'washer', name: 'Washer 3/4', material: '' }, 1));
  await photoOf(store, { store: 'drawer', id: piece.id });
  onScreen(store, <PhotosScreen ownerStore="drawer" ownerId={piece.id} />);
  expect(await screen.findByText('Washer 3/4')).toBeTruthy();
  expect(await screen.findByAltText('Photo 1 of 1')).toBeTruthy();
});
