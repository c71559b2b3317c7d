import { describe, expect, test } from 'vitest';
import { blocksOf } from '../../../../src/engine/worksheets/account.ts';
import { steeringWorksheet } from '../../../../src/engine/worksheets/steering-geometry/worksheet.ts';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { drawSteering } from '../../../../src/screens/worksheets/steering-geometry/steering-drawing.tsx';
import { typedSize, worksheetOf } from '../worksheet-for-test.ts';

const machine = {
  frontRadius: typedSize('299.9 mm'),
  rearRadius: typedSize('300 mm'),
  wheelbase: typedSize('1410 mm'),
  clampOffset: typedSize('36 mm'),
};

function told(sizes: Record<string, ReturnType<typeof typedSize>>, choices: Record<string, string>) {
  const given = givenOf(worksheetOf('steering-geometry', { sizes, choices }));
  const account = steeringWorksheet.account(given);
  return {
    account,
    lead: blocksOf(account, 'lead')[0],
    verdicts: blocksOf(account, 'verdict'),
    rows: blocksOf(account, 'rows'),
    why: blocksOf(account, 'why').flatMap(({ lines }) => lines),
    assumed: steeringWorksheet.assumed(given).map(({ words }) => words),
    words: drawSteering(given, { width: 320, height: 130 }).words,
  };
}

describe('steering geometry', () => {
  test('leads with the trail, assumes what a digital level knows, and cautions that steering kills', () => {
    const { lead, assumed, account, why } = told(machine, { rake: '23.5' });
    // WE61: 91.14 mm = 3.588 in
    expect(lead).toMatchObject({ label: 'Trail', figure: '3.59', unit: 'in' });
    expect(assumed).toEqual(['rake to ±0.2°']);
    expect(blocksOf(account, 'caution')).toEqual([{ is: 'caution', of: 'steering' }]);
    expect(why.find(({ what }) => what === 'Rounding')?.how).toMatch(/floating point.*Rounded to \.01 in\./);
  });

  test('shows trail before and after, what each change did by itself, and the verdict on the wanted trail', () => {
    const { lead, rows, verdicts, words } = told(
      {
        ...machine,
        forkLonger: typedSize('20 mm'),
        newClampOffset: typedSize('46 mm'),
        lower: typedSize('90 mm'),
      },
      { rake: '23.5' },
    );
    expect(lead?.change).toMatch(/^3\.59 → \d\.\d\d$/);
    expect(rows.map(({ title }) => title)).toEqual(['Before and after', 'Which change moved it']);
    expect(rows[1]?.rows.map(({ what }) => what)).toEqual(['Fork length', 'Clamp offset', 'Together']);
    expect(verdicts[0]?.headline).toMatch(/^Too small: trail/);
    expect(words).toMatch(/Before: rake 23\.5°/);
  });

  test('a trail of 1.5 ± 2.5 mm is no good before anything else, though its own limits let it pass', () => {
    // Rake 27°, R 310 mm, offset 139.4005 mm, rake known to ±.461°: worked out in the engine's test.
    const sizes = {
      ...machine,
      frontRadius: typedSize('310 mm'),
      clampOffset: typedSize('139.4005 mm'),
      upper: typedSize('100 mm'),
    };
    const { account, verdicts } = told(sizes, { rake: '27', rakeWithin: '0.461' });
    expect(account[0]).toMatchObject({ is: 'verdict', kind: 'no-good' });
    // 1.5 mm = .059 in; 2.5005 mm = .0984 in
    expect(verdicts[0]?.headline).toMatch(
      /^Trail possibly negative: \.06 in, ±\.09[89]\d?\. Do not ride it\.$/,
    );
    expect(verdicts.filter(({ headline }) => headline.startsWith('Good'))).toEqual([]);
  });

  test('asks for the fork’s length where clamps lean the fork', () => {
    const { verdicts } = told(machine, { rake: '23.5', newExtraAngle: '3' });
    expect(verdicts[0]?.headline).toMatch(/Give the length from the clamps to the axle\.$/);
  });
});
