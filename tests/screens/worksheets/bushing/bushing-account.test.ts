import { describe, expect, test } from 'vitest';
import { blocksOf } from '../../../../src/engine/worksheets/account.ts';
import { bushingWorksheet } from '../../../../src/engine/worksheets/bushing/worksheet.ts';
import { drawBushing } from '../../../../src/screens/worksheets/bushing/bushing-drawing.tsx';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { typedSize, worksheetOf } from '../worksheet-for-test.ts';

// FN1 at 5/8: hole 0 to +.4, pin +.6 to +.9 thou: interference .0002 to .0009.
const sizes = {
  bore: typedSize('.5050'),
  pin: typedSize('.5000'),
  wall: typedSize('.400'),
  length: typedSize('1'),
};

const choices = {
  joint: 'turns-under-load',
  condition: 'plain',
  partMetal: 'low-carbon-steel',
  bushingMetal: 'bearing-bronze',
};

function shown(more: Record<string, ReturnType<typeof typedSize>> = {}) {
  const given = givenOf(worksheetOf('bushing', { sizes: { ...sizes, ...more }, choices }));
  const account = bushingWorksheet.account(given);
  return {
    given,
    account,
    lead: blocksOf(account, 'lead')[0],
    verdict: blocksOf(account, 'verdict')[0]?.headline,
    said: blocksOf(account, 'said').map(({ sentence }) => sentence),
  };
}

describe('the next cut', () => {
  test('is the reamer, with the bore it wants first', () => {
    const { lead, said } = shown();
    expect(lead).toMatchObject({
      label: 'Ream where the wear is, to',
      figure: '.625',
      unit: 'in',
      change: '5/8 in reamer',
    });
    // .120 in is far more than a reamer takes; .625 − .010
    expect(said).toContain('Drill or bore it to .615 in first: a reamer only sizes.');
  });

  test('is the bushing’s outside once the bore is reamed', () => {
    // .6250 + .00055 ± .00015: .6254 to .6257, but no whole thou lies inside: the dial is too coarse, and that is said
    const { lead, said } = shown({ reamed: typedSize('.6250') });
    expect(lead?.label).toBe('Turn the bushing to');
    expect(said.join(' ')).toContain('No step of the dial');
  });

  test('is the press and then the bore once both fit', () => {
    const { lead, verdict } = shown({ reamed: typedSize('.6250'), outside: typedSize('.6255') });
    expect(verdict).toBe('Good: interference .0005, want .0002 to .0009.');
    // .5006 to .5023: middle .50145, down to the thou
    expect(lead).toMatchObject({ label: 'Press it, then bore to', figure: '.501', unit: 'in' });
  });

  test('too tight, it is turned down; too loose, a new one is turned: neither is pressed', () => {
    const tight = shown({ reamed: typedSize('.6250'), outside: typedSize('.6262') });
    expect(tight.verdict).toBe('Too tight: interference .0012, want .0002 to .0009.');
    expect(tight.lead?.label).toBe('Turn it down to');
    const loose = shown({ reamed: typedSize('.6250'), outside: typedSize('.6251') });
    expect(loose.lead?.label).toBe('Turn a new one to');
  });
});

describe('what must stop the job', () => {
  const thin = () => shown({ wall: typedSize('.300') });

  test('is said before any cut, and no cut is offered', () => {
    const { verdict, lead, given } = thin();
    expect(verdict).toMatch(/^\.240 in is left round the hole, and \.3125 in is the least/);
    expect(lead).not.toHaveProperty('cut');
    expect(bushingWorksheet.cuts(given)).toEqual([]);
  });

  test('is what the list and the sign-off say; its source stands under Why', () => {
    const { given, verdict, account } = thin();
    expect(bushingWorksheet.verdict(given)).toEqual({ found: 'no-good', said: verdict });
    expect(verdict).not.toContain('common practice');
    expect(JSON.stringify(blocksOf(account, 'why'))).toContain("half the hole's diameter, common practice");
  });
});

describe('how it goes in', () => {
  test('is the force on the press where its length is known, and what it asks for where not', () => {
    const rows = (more: Record<string, ReturnType<typeof typedSize>> = {}) =>
      blocksOf(shown(more).account, 'rows').find(({ leads }) => leads)?.rows;
    expect(rows()?.[0]).toMatchObject({ what: 'On the press, up to' });
    expect(rows()?.[0]?.figure).toMatch(/lbf/);
    const { length: _length, ...noLength } = sizes;
    const given = givenOf(worksheetOf('bushing', { sizes: noLength, choices }));
    const [row] = blocksOf(bushingWorksheet.account(given), 'rows').find(({ leads }) => leads)?.rows ?? [];
    expect(row?.more).toBe('give its length for the force');
  });

  test('by heat or cold that may not be used is ruled out with the reason, never with a temperature to go to', () => {
    const ways = blocksOf(shown().account, 'way');
    expect(ways.every(({ stands }) => stands === 'out')).toBe(true);
    expect(ways.filter(({ title }) => /^(Heat the part|Cool the bushing) to/.test(title))).toEqual([]);
  });
});

test('the section is spoken with every size it shows', () => {
  const drawn = drawBushing(shown().given, { width: 390, height: 184 });
  // FN1 on 5/8: .6256 to .6259; RC4 on 1/2: .5006 to .5023; (.625 − .5023)/2 = .06135; .400 − .060
  expect(drawn.words).toBe(
    'Bushing in section: ream to .625 in, turn the outside to .6256 to .6259, bore pressed in .5006 to .5023, bushing wall .0614 in, .340 in of wall left in the part.',
  );
});
