/** Hands text over: by the phone's share sheet where it has one, else onto the clipboard. Says what became of it. */
export async function giveText(text: string): Promise<string> {
  if (typeof navigator.share === 'function') {
    try {
      await navigator.share({ text });
      return 'The list was handed over.';
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError')
        return 'Nothing was sent: the sharing was called off.';
    }
  }
  try {
    await navigator.clipboard.writeText(text);
    return 'The list is copied: paste it into a message.';
  } catch {
    return 'This browser neither shares nor copies. The list stands on this page.';
  }
}
