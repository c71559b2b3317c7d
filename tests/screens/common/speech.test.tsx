import { afterEach, expect, test, vi } from 'vitest';
import { canSpeak, speak } from '../../../src/screens/common/speech.ts';

afterEach(() => vi.unstubAllGlobals());

test('a phone without a voice stays quiet and nothing breaks', () => {
  vi.stubGlobal('SpeechSynthesisUtterance', undefined);
  expect(canSpeak()).toBe(false);
  expect(() => speak('Dial in eighteen.')).not.toThrow();
});

test('only the newest figure is read out: it cuts off the one before', () => {
  const voice = { cancel: vi.fn<() => void>(), speak: vi.fn<(words: { text: string }) => void>() };
  vi.stubGlobal('speechSynthesis', voice);
  vi.stubGlobal(
    'SpeechSynthesisUtterance',
    class {
      text: string;
      constructor(text: string) {
        this.text = text;
      }
    },
  );
  speak('Dial in eighteen.');
  expect(voice.cancel).toHaveBeenCalledTimes(1);
  expect(voice.speak.mock.calls.map(([words]) => words.text)).toEqual(['Dial in eighteen.']);
});
