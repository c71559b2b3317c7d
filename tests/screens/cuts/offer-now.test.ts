import { describe, expect, test } from 'vitest';
import type { CutOffer } from '../../../src/engine/cut/cut.ts';
import { insertOffers } from '../../../src/engine/worksheets/thread-insert/cuts-of-insert.ts';
import { drillNamed } from '../../../src/engine/thread/drill-series.ts';
import { lengthOf } from '../../../src/engine/length/length.ts';
import { threadNamed } from '../../../src/engine/thread/threads.ts';
import { nameNow, offerNow } from '../../../src/screens/cuts/offer-now.ts';

/** What an insert asks for: a drill, then its tap. */
function insert(designation: string, drillName: string): readonly CutOffer[] {
  const thread = threadNamed(designation);
  const drill = drillNamed(drillName);
  if (!thread || !drill) throw new Error(`${designation}, ${drillName}`);
  return insertOffers({ thread, drill });
}

const cutOf = ({ name, part, operation, of }: CutOffer) => ({ name, part, operation, of });

describe('what a worksheet asks for now in place of a cut', () => {
  test('after M8 became M10 the tap and the drill are the new ones, by name too', () => {
    const now = insert('M10×1.5', '10.4 mm');
    for (const [index, was] of insert('M8×1.25', '8.4 mm').entries()) {
      const offer = offerNow(cutOf(was), now);
      expect(offer).toBe(now[index]);
      expect(offer && offer !== 'several' && nameNow(was, offer)).toBe(now[index]?.name);
    }
  });

  test('two such cuts with other figures are not chosen between', () => {
    const [was] = insert('M8×1.25', '8.4 mm');
    const now = [...insert('M8×1.25', '8.5 mm'), ...insert('M10×1.5', '10.4 mm')];
    expect(was && offerNow(cutOf(was), now)).toBe('several');
    expect(was && offerNow(cutOf(was), [...now, ...insert('M8×1.25', '8.4 mm')])).toMatchObject({
      target: lengthOf('8.4 mm'),
    });
  });

  test('two that are set over differently are not chosen between', () => {
    const [was] = insert('M8×1.25', '8.4 mm');
    const over = (by: string): readonly CutOffer[] =>
      was ? [{ ...was, setOver: { by: lengthOf(by) } }] : [];
    expect(was && offerNow(cutOf(was), [...over('1.5 mm'), ...over('1.6 mm')])).toBe('several');
    expect(was && offerNow(cutOf(was), [...over('1.5 mm'), ...over('1.50 mm')])).toMatchObject({
      setOver: { by: lengthOf('1.5 mm') },
    });
  });

  test('none where nothing like it is cut any more', () => {
    const [was] = insert('M8×1.25', '8.4 mm');
    expect(was && offerNow({ ...cutOf(was), part: 'housing' }, insert('M8×1.25', '8.5 mm'))).toBeUndefined();
  });

  test('a name the fitter gave stays', () => {
    const [offer] = insert('M10×1.5', '10.4 mm');
    expect(offer && nameNow({ name: 'left lug' }, offer)).toBe('left lug');
    expect(offer && nameNow({ name: 'Hole, drilled 8.4 mm' }, offer)).toBe('Hole, drilled 10.4 mm');
  });
});
