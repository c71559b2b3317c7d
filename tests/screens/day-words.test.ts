import { afterEach, describe, expect, test, vi } from 'vitest';
import {
  dayAndMonthWords,
  dayWords,
  longDayWords,
  timeWords,
  wholeTimeWords,
} from '../../src/screens/common/day-words.ts';
import { dayOf, momentOf } from '../../src/screens/sheet/sheet-words.ts';

afterEach(() => vi.restoreAllMocks());

/** A phone set to this language, with the calendar and the digits that it counts in by itself. */
function phoneIn(locale: string): void {
  vi.spyOn(Date.prototype, 'toLocaleDateString').mockImplementation(function (this: Date, _own, options) {
    return new Intl.DateTimeFormat(locale, options).format(this);
  });
  vi.spyOn(Date.prototype, 'toLocaleString').mockImplementation(function (this: Date, _own, options) {
    return new Intl.DateTimeFormat(locale, options).format(this);
  });
}

const at = new Date(2026, 10, 29, 14, 5).getTime();
const longAgo = new Date(2019, 1, 3, 9, 7).getTime();

// The year 2026 is 2569 in Thailand, 1448 by the Hijri calendar, 1405 in Iran and 8 of Reiwa in Japan.
describe.each([
  'ar-EG',
  'th-TH',
  'th-TH-u-nu-thai',
  'fa-IR',
  'ar-SA',
  'ja-JP-u-ca-japanese',
  'mr-IN',
  'my-MM',
  'he-IL-u-ca-hebrew',
  'en-GB',
])('on a phone in %s', (locale) => {
  test('every date is of the year 2026, in the digits of the figures', () => {
    phoneIn(locale);
    for (const words of [dayWords(at), wholeTimeWords(at), longDayWords(at), dayOf(at), momentOf(at)]) {
      expect(words).toMatch(/2026/);
      expect(words).toMatch(/29/);
      expect(words).not.toMatch(/(?![0-9])\p{Nd}/u);
    }
    expect(timeWords(longAgo)).toMatch(/2019/);
    for (const words of [timeWords(at), dayAndMonthWords(at)]) expect(words).not.toMatch(/(?![0-9])\p{Nd}/u);
  });
});
