import { describe, expect, test } from 'vitest';
import { ringFit } from '../../../src/engine/fit/ring-fit.ts';
import type { Ring, RingLoad } from '../../../src/engine/fit/tables/iso492-rings.ts';
import { lengthOf, minus, toText, times } from '../../../src/engine/length/length.ts';

const mm = (text: string) => lengthOf(`${text} mm`);

function fitOf(ring: Ring, load: RingLoad, nominal: string) {
  const fit = ringFit({ ring, load, nominal: mm(nominal) });
  if (!fit.ok) throw new Error(fit.refusal.code);
  return fit.value;
}

const microns = (length: ReturnType<typeof mm>) => Number(toText(times(length, 1000)));

describe('a bearing of the normal class on its shaft', () => {
  // A bearing maker's printed table of radial bearings of the normal class on shafts: greatest room and greatest grip, µm.
  test.each([
    { nominal: '15', load: 'stands', room: 17, grip: 2 }, // g6
    { nominal: '25', load: 'stands', room: 20, grip: 3 },
    { nominal: '60', load: 'stands', room: 29, grip: 5 },
    { nominal: '25', load: 'light', room: 6.5, grip: 16.5 }, // js6
    { nominal: '40', load: 'light', room: 8, grip: 20 },
    { nominal: '60', load: 'light', room: 9.5, grip: 24.5 },
  ] as const)(
    '$nominal mm, the load $load: at most $room room and $grip grip',
    ({ nominal, load, room, grip }) => {
      const { clearance } = fitOf('inner', load, nominal);
      expect(microns(clearance.upper)).toBe(room);
      expect(microns(clearance.lower)).toBe(-grip);
    },
  );
});

describe('the seat of a ring', () => {
  // ISO 286-2, and a bearing maker's table of shafts and housings, µm from the nominal.
  test.each([
    { ring: 'inner', load: 'normal', nominal: '25', seatClass: 'k6', lower: 2, upper: 15 },
    { ring: 'inner', load: 'normal', nominal: '40', seatClass: 'k6', lower: 2, upper: 18 },
    { ring: 'inner', load: 'heavy', nominal: '25', seatClass: 'm6', lower: 8, upper: 21 },
    { ring: 'outer', load: 'stands', nominal: '52', seatClass: 'H7', lower: 0, upper: 30 },
    { ring: 'outer', load: 'light', nominal: '47', seatClass: 'M7', lower: -25, upper: 0 },
    { ring: 'outer', load: 'normal', nominal: '47', seatClass: 'N7', lower: -33, upper: -8 },
    { ring: 'outer', load: 'normal', nominal: '52', seatClass: 'N7', lower: -39, upper: -9 },
    { ring: 'outer', load: 'heavy', nominal: '47', seatClass: 'P7', lower: -42, upper: -17 },
  ] as const)('of $nominal mm, $ring, $load, is $seatClass', ({ ring, load, nominal, ...wanted }) => {
    const { seatClass, seat } = fitOf(ring, load, nominal);
    expect(seatClass).toBe(wanted.seatClass);
    expect(microns(minus(seat.lower, mm(nominal)))).toBe(wanted.lower);
    expect(microns(minus(seat.upper, mm(nominal)))).toBe(wanted.upper);
  });

  test('that the load goes round on always grips more than one it stands still on', () => {
    for (const ring of ['inner', 'outer'] as const)
      for (const nominal of ['10', '17', '25', '47', '62', '120'])
        expect(microns(fitOf(ring, 'normal', nominal).clearance.upper)).toBeLessThan(
          microns(fitOf(ring, 'stands', nominal).clearance.upper),
        );
  });

  test.each(['2.5', '0.5', '250.1'])('of %s mm is refused: the table has none', (nominal) => {
    const fit = ringFit({ ring: 'inner', load: 'normal', nominal: mm(nominal) });
    expect(!fit.ok && fit.refusal.code).toBe('size-outside-fit-table');
  });
});
