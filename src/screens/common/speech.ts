import { useEffect } from 'preact/hooks';
import { putSetting } from '../../store/kept/settings.ts';
import { saidIfRefused } from './said-if-refused.ts';
import { useStore } from './store-context.ts';
import { useSetting } from './use-settings.ts';

/** Whether this phone can read a sentence out. One without a voice stays quiet, and nothing depends on it. */
export function canSpeak(): boolean {
  return 'speechSynthesis' in globalThis && typeof SpeechSynthesisUtterance === 'function';
}

/** Reads a sentence out, over whatever was being said before: at a lathe only the newest figure counts. */
export function speak(sentence: string): void {
  if (!canSpeak() || sentence === '') return;
  speechSynthesis.cancel();
  const words = new SpeechSynthesisUtterance(sentence);
  words.lang = 'en-US';
  // Chosen, not published: a little slower than talk, beside a running machine.
  words.rate = 0.9;
  speechSynthesis.speak(words);
}

export function hush(): void {
  if (canSpeak()) speechSynthesis.cancel();
}

/** Whether the lathe screen reads its figures out, and the key for it. `undefined` where the phone has no voice. */
export function useSayAloud():
  | { readonly isOn: boolean; readonly change: (isOn: boolean) => void }
  | undefined {
  const store = useStore();
  const kept = useSetting('sayAloud');
  useEffect(() => hush, []);
  if (!canSpeak()) return undefined;
  return {
    isOn: kept === 'on',
    change: (isOn) => {
      if (!isOn) hush();
      void saidIfRefused(putSetting(store, 'sayAloud', isOn ? 'on' : 'off'));
    },
  };
}
