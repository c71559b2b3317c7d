import { describe, expect, test } from 'vitest';
import type { CutOffer } from '../../../src/engine/cut/cut.ts';
import { lengthOf } from '../../../src/engine/length/length.ts';
import type { Account, WayBlock, WhyLine } from '../../../src/engine/worksheets/account.ts';
import { paperAccount } from '../../../src/screens/sheet/paper-account.ts';

const way = (title: string, rank: number | undefined, more: Partial<WayBlock> = {}): WayBlock => ({
  is: 'way',
  title,
  detail: '',
  stands: 'open',
  rank,
  ...more,
});
const insert = way('Thread insert', 1, { goes: 'thread-insert' });
const largerPin = way('Larger pin', 2, { goes: 'larger-pin' });
const sleeve = way('Sleeve on the pin', 3, { stands: 'out' });
const why = (...lines: readonly WhyLine[]) => ({ is: 'why', lines }) as const;
const loose = { is: 'verdict', kind: 'no-good', headline: 'Too loose.' } as const;
const cured: Account = [loose, insert, largerPin, sleeve, why({ what: 'Limits', how: '0 to .002' })];
const nothing = { cutWays: [], cutNames: [], takenFurther: [] };

const titles = (account: Account) => account.flatMap((block) => (block.is === 'way' ? block.title : []));

describe('of ranked ways', () => {
  test('the first is printed while none was chosen, with a count of the others', () => {
    const { blocks, others } = paperAccount(cured, nothing);
    expect(titles(blocks)).toEqual(['Thread insert']);
    expect(others).toBe('1 other way, 1 ruled out');
  });

  test('only the one whose cuts are on the list is printed', () => {
    const reamed: CutOffer = {
      name: 'Bore, reamed',
      part: 'bore',
      operation: 'ream',
      of: 'bore',
      target: lengthOf('.501 in'),
      lower: lengthOf('.500 in'),
      upper: lengthOf('.502 in'),
      limitsFrom: 'RC5',
    };
    const cutWays = [{ id: 'larger-pin', name: 'Larger pin', offers: [reamed] }];
    const { blocks, others } = paperAccount(cured, { ...nothing, cutWays, cutNames: ['Bore, reamed'] });
    expect(titles(blocks)).toEqual(['Larger pin']);
    expect(others).toBeUndefined();
  });

  test('the one that a worksheet of its own goes on with counts as chosen', () => {
    const { blocks, others } = paperAccount(cured, { ...nothing, takenFurther: ['larger-pin'] });
    expect(titles(blocks)).toEqual(['Larger pin']);
    expect(others).toBeUndefined();
  });
});

describe('beside a leading figure', () => {
  const lead = { is: 'lead', label: 'Add a shim of', figure: '.022', unit: 'in' } as const;
  const longer = way('Make spacer new, longer', undefined, { cut: 'Spacer, made new' });
  const account: Account = [loose, lead, longer];

  test('other ways are counted', () => {
    const { blocks, others } = paperAccount(account, nothing);
    expect(titles(blocks)).toEqual([]);
    expect(others).toBe('1 other way');
  });

  test('one of them is printed once its cut is on the list', () => {
    const { blocks } = paperAccount(account, { ...nothing, cutNames: ['Spacer, made new'] });
    expect(titles(blocks)).toEqual(['Make spacer new, longer']);
  });
});

describe('the sources', () => {
  test('stand once each, and what a longer one names already isn’t said again', () => {
    const { sources } = paperAccount(
      [
        why(
          { what: 'Band', how: '', source: 'JCGM 100:2008' },
          { what: 'Limits', how: '', source: 'your own limits' },
          { what: 'Verdict', how: '', source: 'JCGM 100:2008; ISO 14253-1' },
          { what: 'Aim', how: '', source: 'your own limits' },
        ),
      ],
      nothing,
    );
    expect(sources).toBe('your own limits; JCGM 100:2008; ISO 14253-1');
  });

  test('of a way that isn’t printed stay away', () => {
    const lines = why({ way: 'larger-pin', what: 'Larger pin', how: '', source: 'ISO 286-1' });
    expect(paperAccount([...cured, lines], nothing).sources).toBeUndefined();
  });

  test('that a line has no room for are counted', () => {
    const long = (letter: string) => ({ what: letter, how: '', source: letter.repeat(150) });
    const { sources } = paperAccount([why(long('a'), long('b'), long('c'))], nothing);
    expect(sources).toBe(`${'a'.repeat(150)}; 2 more behind Why`);
  });
});
