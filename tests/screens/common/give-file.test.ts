import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { giveFile } from '../../../src/screens/common/give-file.ts';

const drawing = () => new File(['0\nEOF\n'], 'ring.dxf', { type: 'image/vnd.dxf' });
const clicked = vi.fn<(name: string) => void>();
const shared = vi.fn<(data: ShareData) => Promise<void>>();

beforeEach(() => {
  clicked.mockReset();
  shared.mockReset().mockResolvedValue(undefined);
  vi.stubGlobal(
    'URL',
    Object.assign(URL, { createObjectURL: () => 'blob:file', revokeObjectURL: () => undefined }),
  );
  vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function clickLink(
    this: HTMLAnchorElement,
  ) {
    clicked(this.download);
  });
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

describe('a file is given', () => {
  test('through the share sheet on a phone that takes it', async () => {
    phone({ takes: () => true });
    expect(await giveFile(drawing())).toBe('ring.dxf was handed over. Check that it arrived.');
    expect(namesShared()).toEqual(['ring.dxf']);
    expect(clicked).not.toHaveBeenCalled();
  });

  test('not a second way where the person calls the share sheet off', async () => {
    phone({ takes: () => true });
    shared.mockRejectedValue(new DOMException('', 'AbortError'));
    expect(await giveFile(drawing())).toBe('Nothing was saved: the sharing was called off.');
    expect(clicked).not.toHaveBeenCalled();
  });

  test('as a download where the share sheet fails', async () => {
    phone({ takes: () => true });
    shared.mockRejectedValue(new DOMException('', 'NotAllowedError'));
    expect(await giveFile(drawing())).toBe('ring.dxf is in the downloads.');
    expect(clicked).toHaveBeenCalledWith('ring.dxf');
  });

  test('as text in an installed app whose share sheet refuses the kind, with the same bytes', async () => {
    phone({ takes: (file) => file.name.endsWith('.txt'), installed: true });
    expect(await giveFile(drawing())).toBe('ring.dxf.txt was handed over. Check that it arrived.');
    const [file] = shared.mock.calls[0]?.[0].files ?? [];
    expect(await file?.text()).toBe('0\nEOF\n');
  });

  test('through "save as" where the phone has it and its share sheet refuses the kind', async () => {
    phone({ takes: (file) => file.name.endsWith('.txt'), installed: true });
    const written = picker();
    expect(await giveFile(drawing())).toBe('ring.dxf is saved.');
    expect(written.map(({ name }) => name)).toEqual(['ring.dxf']);
    expect(shared).not.toHaveBeenCalled();
  });

  test('through "save as" on a bench computer, which has a share sheet nobody looks for', async () => {
    phone({ takes: () => true, touch: false });
    picker();
    expect(await giveFile(drawing())).toBe('ring.dxf is saved.');
    expect(shared).not.toHaveBeenCalled();
  });

  test('as a download where there is nothing else', async () => {
    phone({ takes: () => false, touch: false });
    expect(await giveFile(drawing())).toBe('ring.dxf is in the downloads.');
  });
});

function phone({
  takes,
  touch = true,
  installed = false,
}: {
  readonly takes: (file: File) => boolean;
  readonly touch?: boolean;
  readonly installed?: boolean;
}) {
  vi.stubGlobal('navigator', {
    canShare: ({ files = [] }: ShareData) => files.every(takes),
    share: shared,
  });
  vi.stubGlobal('matchMedia', (query: string) => ({
    matches: query.includes('coarse') ? touch : installed,
  }));
}

/** "Save as", and what is written with it. */
function picker(): File[] {
  const written: File[] = [];
  vi.stubGlobal('showSaveFilePicker', async () => ({
    createWritable: async () => ({
      write: async (file: File) => void written.push(file),
      close: async () => undefined,
    }),
  }));
  return written;
}

function namesShared(): readonly string[] {
  return shared.mock.calls.flatMap(([{ files = [] }]) => files.map(({ name }) => name));
}
