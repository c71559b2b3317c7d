/** Whether a file left the app, as far as the phone tells, and the sentence for it. */
export type Given = { readonly given: boolean; readonly said: string };

/**
 * Hands a file to the person, and says what happened: through the phone's share sheet where that takes this kind of
 * file, else through "save as", else as a download. In an installed iPhone app a download leads nowhere: there the same
 * bytes go out as text, which every share sheet takes.
 */
export async function giveFile(file: File): Promise<string> {
  return (await handOver(file)).said;
}

/** The same, for who has to know whether it was called off. */
export async function handOver(file: File): Promise<Given> {
  const asText = new File([file], `${file.name}.txt`, { type: 'text/plain' });
  if (isTouchFirst() && canShare(file)) return (await shared(file)) ?? savedOrDownloaded(file);
  if (isTouchFirst() && isInstalled() && !picker() && canShare(asText))
    return (await shared(asText)) ?? savedOrDownloaded(file);
  return savedOrDownloaded(file);
}

function canShare(file: File): boolean {
  return typeof navigator.canShare === 'function' && navigator.canShare({ files: [file] });
}

/** Nothing is said where the share sheet failed: there are other ways. */
async function shared(file: File): Promise<Given | undefined> {
  try {
    await navigator.share({ files: [file], title: file.name });
    return { given: true, said: `${file.name} was handed over. Check that it arrived.` };
  } catch (error) {
    return isCalledOff(error)
      ? { given: false, said: 'Nothing was saved: the sharing was called off.' }
      : undefined;
  }
}

async function savedOrDownloaded(file: File): Promise<Given> {
  const pick = picker();
  if (!pick) return downloaded(file);
  try {
    const place = await pick({ suggestedName: file.name });
    const stream = await place.createWritable();
    await stream.write(file);
    await stream.close();
    return { given: true, said: `${file.name} is saved.` };
  } catch (error) {
    return isCalledOff(error)
      ? { given: false, said: 'Nothing was saved: it was called off.' }
      : downloaded(file);
  }
}

function downloaded(file: File): Given {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = file.name;
  link.click();
  // The browser reads the file after this; a minute is far more than it takes.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
  return { given: true, said: `${file.name} is in the downloads.` };
}

type SavePicker = (options: { readonly suggestedName: string }) => Promise<{
  readonly createWritable: () => Promise<{
    readonly write: (bytes: Blob) => Promise<void>;
    readonly close: () => Promise<void>;
  }>;
}>;

/** Only some browsers have it, so the types of the platform don't. */
function picker(): SavePicker | undefined {
  const found: unknown = Reflect.get(globalThis, 'showSaveFilePicker');
  // What a browser calls showSaveFilePicker has this form (File System Access).
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion
  return typeof found === 'function' ? (found.bind(globalThis) as SavePicker) : undefined;
}

function isCalledOff(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'AbortError';
}

function isTouchFirst(): boolean {
  return matchMedia('(pointer: coarse)').matches;
}

function isInstalled(): boolean {
  return matchMedia('(display-mode: standalone)').matches || Reflect.get(navigator, 'standalone') === true;
}
