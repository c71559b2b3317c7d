import { parse } from 'csv-parse/sync';
import { screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { isWorksheetKind, worksheets } from '../../../src/engine/worksheets/all-worksheets.ts';
import { openPageOf } from '../../../src/engine/worksheets/open-page.ts';
import { AccountOnPaper } from '../../../src/screens/sheet/account-on-paper.tsx';
import { cutsCsv } from '../../../src/screens/sheet/csv.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import { newCuts } from '../../../src/screens/worksheets/new-cuts.ts';
import type { WorksheetData } from '../../../src/screens/worksheets/worksheet-data.ts';
import { createCuts } from '../../../src/store/kept/cuts.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';
import { tool, typedSize, worksheetOf } from './worksheet-for-test.ts';

/** A worn bore opens where the wear is or on its old axis: page, paper, cuts and files say which of the two. */

afterEach(clearAway);

const metals = { partMetal: 'alloy-steel', bushingMetal: 'bearing-bronze' };

// 5/8 worn to .655: the middle of the wear is .015 off; on the old axis it is clean at .625 + 2 · .030 + .002 = .687.
const pivot = (axis?: 'old' | 'follows', more: WorksheetData['worksheet']['sizes'] = {}) =>
  worksheetOf('hole-and-pin', {
    sizes: {
      bore: typedSize('.6550'),
      pin: typedSize('.6250'),
      wall: typedSize('.700'),
      boreLength: typedSize('1.250'),
      reach: typedSize('9'),
      ...more,
    },
    choices: { joint: 'turns', pinSkin: 'soft', ...metals, ...(axis && { axis }) },
  });
// With a wall of .300 it has to be stopped: two sentences stand before all others.
const bushed = (axis?: 'old', more: WorksheetData['worksheet']['sizes'] = {}) =>
  worksheetOf('bushing', {
    sizes: { bore: typedSize('.6550'), pin: typedSize('.6250'), wall: typedSize('.300'), ...more },
    choices: { joint: 'turns', ...metals, ...(axis && { axis }) },
  });
// 3/8-24: the hole of .379 is .004 over the bolt; by caliper it is too close to the insert's least of .3840.
const insert = worksheetOf('thread-insert', {
  sizes: { hole: typedSize('.3845', tool('digital-caliper-inside')), wall: typedSize('.400') },
  choices: { thread: '3/8-24 UNF', metal: 'steel', bottom: 'through' },
});

function kindOf({ worksheet: { kind } }: WorksheetData) {
  if (!isWorksheetKind(kind)) throw new Error(`no kind ${kind}`);
  return kind;
}

function pageOf(data: WorksheetData): string {
  const { lead, said, ranked } = openPageOf(worksheets[kindOf(data)].account(givenOf(data)));
  return [lead?.label, ...said, ...ranked.map(({ detail }) => detail)].join(' ');
}

describe('on the page of an answer, before anything is unfolded', () => {
  test('a hole and its pin say both, and what the old axis takes', () => {
    expect(pageOf(pivot())).toContain(
      'A reamer follows the wear: the middle may move .015 in. On the old axis it is clean at .687 in.',
    );
    expect(pageOf(pivot('follows'))).toContain('A reamer follows the wear');
    expect(pageOf(pivot('old'))).toContain(
      'Bored on the old axis it is clean at .687 in at the most. A reamer alone follows the wear.',
    );
    expect(pageOf(pivot('old'))).toMatch(/Bore [.\d]+ on its old axis\./);
  });

  test('a bushing says it with the figure, whatever else has to be said', () => {
    expect(pageOf(bushed())).toContain('Ream where the wear is, to');
    expect(pageOf(bushed('old'))).toContain('Bore on its old axis, ream to');
    // A drill follows the wear too: on the old axis nothing but boring does it.
    expect(pageOf(bushed('old'))).not.toMatch(/[Dd]rill/);
  });

  test('a size that no reamer has is bored, and never called reamed', () => {
    const own = (axis?: 'old') => bushed(axis, { reamTo: typedSize('.760'), wall: typedSize('.900') });
    expect(pageOf(own())).toContain('Bore where the wear is, to');
    expect(pageOf(own('old'))).toContain('Bore on its old axis to');
    expect(pageOf(own())).not.toContain('reamer only sizes');
  });

  test('an insert says that drill and tap go where the hole is', () => {
    expect(pageOf(insert)).toContain('where the hole is');
  });

  test('a bore that is not worn says nothing of it', () => {
    const sound = { bore: typedSize('.6265') };
    expect(pageOf(bushed(undefined, sound))).toMatch(/^Ream to/);
    expect(pageOf(pivot(undefined, sound))).not.toMatch(/wear|old axis/);
  });
});

describe('on paper', () => {
  test.each([
    ['hole and pin', pivot(), /A reamer follows the wear: the middle may move \.015 in/],
    ['hole and pin on the old axis', pivot('old'), /Bored on the old axis it is clean at \.687 in/],
    ['bushing', bushed(), /A reamer follows the wear/],
    ['bushing on the old axis', bushed('old'), /Bored on the old axis/],
    [
      'bushing, once it was reamed',
      bushed(undefined, { reamed: typedSize('.7503'), wall: typedSize('.9') }),
      /Opened where the wear is: its middle may stand \.015 in off\./,
    ],
    [
      'bushing on the old axis, once it was reamed',
      bushed('old', { reamed: typedSize('.7503'), wall: typedSize('.9') }),
      /Opened on its old axis\./,
    ],
    ['insert', insert, /Drill and tap follow the hole as it is/],
  ] as const)('%s says which', async (_what, data, said) => {
    onScreen(await openForTest(), <AccountOnPaper data={data} kind={kindOf(data)} />);
    expect(screen.getAllByText(said).length).toBeGreaterThan(0);
  });
});

describe('among the cuts', () => {
  const wide = { wall: typedSize('.900') };
  test.each([
    ['hole and pin', pivot(), 'follows the wear'],
    ['hole and pin on the old axis', pivot('old'), 'on its old axis'],
    ['bushing', bushed(undefined, wide), 'follows the wear'],
    ['bushing on the old axis', bushed('old', wide), 'on its old axis'],
    ['insert', insert, 'follows the hole'],
  ] as const)(
    'the one of %s that opens it is called by it, in lists and files',
    async (_what, data, called) => {
      const ways = worksheets[kindOf(data)].cuts(givenOf(data));
      const opening = ways.filter(({ offers }) =>
        offers.some(({ part }) => part === 'bore' || part === 'hole'),
      );
      expect(opening.length).toBeGreaterThan(0);
      for (const { offers } of opening) expect(offers[0]?.name).toContain(called);
      const store = await openForTest();
      const { id: jobId } = worked(await createJob(store, { name: 'Outfit', systems: [] }));
      const [way] = opening;
      const onList = way
        ? newCuts(data, way, []).map(({ worksheetId: _none, ...cut }) => ({ ...cut, jobId }))
        : [];
      const made = worked(await createCuts(store, onList));
      const rows: readonly Record<string, string>[] = parse(cutsCsv(made, new Set()), {
        columns: true,
        bom: true,
      });
      expect(rows[0]?.['cut']).toContain(called);
    },
  );
});
