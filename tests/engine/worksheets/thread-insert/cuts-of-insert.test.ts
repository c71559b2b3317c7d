import { describe, expect, test } from 'vitest';
import { cutsOfInsert } from '../../../../src/engine/worksheets/thread-insert/cuts-of-insert.ts';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import { lengthOf } from '../../../../src/engine/length/length.ts';
import { insertInLegs } from '../../../../src/engine/worksheets/thread-insert/insert-in-legs.ts';
import type { InsertQuestion } from '../../../../src/engine/worksheets/thread-insert/thread-insert.ts';
import { threadNamed } from '../../../../src/engine/thread/threads.ts';
import { usualTools } from '../../../../src/engine/reading/measuring-tool.ts';
import { keepsItsLimits, waysSaid } from '../../cut/cut-said.ts';

const inch = (text: string) => lengthOf(`${text} in`);

function offers(more: Partial<InsertQuestion>, designation = '7/16-20') {
  const thread = threadNamed(designation);
  if (!thread) throw new Error('no such thread');
  const { thickness, blind, ...shared } = more;
  const q = { thread, metal: 'steel', ...shared } as const;
  const answer = insertInLegs({ ...q, legs: [{ ...(thickness && { thickness }), ...(blind && { blind }) }] });
  if (!answer.ok) throw new Error(answer.refusal.code);
  const ways = cutsOfInsert(q, answer.value);
  expect(ways.flatMap((way) => way.offers).every(keepsItsLimits)).toBe(true);
  return ways;
}

const hole = (tightest: string, loosest = tightest, tool?: (typeof usualTools)[number]) => ({
  tightest: typedEstimate(inch(tightest), tool),
  loosest: typedEstimate(inch(loosest), tool),
});

// 7/16-20: least minor .4375 + .216506/20 = .4483; the drill listed is 29/64 = .4531 (memory of charts).
describe('an insert for a 7/16-20 bolt', () => {
  test('in solid metal is drilled 29/64, then tapped', () => {
    const [way] = offers({});
    expect(way?.offers.map(({ operation, drill, thread }) => [operation, drill ?? thread])).toEqual([
      ['drill', '29/64'],
      ['tap', '7/16-20 UNF'],
    ]);
    // 29/64 = .453125; least .448325, most by the standard's tolerance
    expect(waysSaid(offers({}))['insert']?.[0]).toMatch(
      /^Hole, drilled 29\/64: \.4531 \(\.4483 to \.45\d\d\)$/,
    );
  });

  test('in a hole of .440 has .440 to start the drill from', () => {
    expect(waysSaid(offers({ hole: hole('.4400') }))['insert']?.[0]).toMatch(/: \.4400 → \.4531 /);
  });

  test('in a hole that is clearly large enough goes straight to the tap, which has the hole as it is', () => {
    expect(waysSaid(offers({ hole: hole('.4500') }))['insert']).toEqual([
      expect.stringMatching(/^Hole, STI tap 7\/16-20 UNF, follows the hole: \.4500 \(\.4483 to/),
    ]);
  });

  test('in a hole too close to the least has the drill run through anyway', () => {
    // .4487 is .0004 over .4483, less than the caliper's band
    const caliper = usualTools.find(({ id }) => id === 'digital-caliper');
    const [way] = offers({ hole: hole('.4487', '.4487', caliper) });
    expect(way?.offers.map(({ operation }) => operation)).toEqual(['drill', 'tap']);
  });

  test('in a hole past the standard’s most is tapped all the same while enough thread is left, and says so', () => {
    // (.50245 − .4590) / (1.299038/20) = 67 %: over the most, still worth tapping
    const [way] = offers({ hole: hole('.4590') });
    expect(way?.offers.map(({ operation }) => operation)).toEqual(['tap']);
    expect(way?.offers[0]?.limitsFrom).toContain('past the standard’s');
  });

  test('in a hole with too little thread left is not tapped at all', () => {
    // (.50245 − .4700) / .06495 = 50 %
    expect(offers({ hole: hole('.4700') })).toEqual([]);
  });

  // #41 is .0960: (.0860 + 1.299038/56 − .0960) / (1.299038/56) = 56.9 %, and inside .0899 to .0962 all the same.
  test('a drill inside the standard’s limits is cut however little thread its fine pitch has: #2-56 in steel', () => {
    const [way] = offers({}, '#2-56');
    expect(way?.offers.map(({ operation, drill, thread }) => [operation, drill ?? thread])).toEqual([
      ['drill', '#41'],
      ['tap', '#2-56 UNC'],
    ]);
    expect(offers({ hole: hole('.0950') }, '#2-56')).toHaveLength(1);
    // Over the most there is, .0962, and 52 % left: (.1092 − .0971) / .0232.
    expect(offers({ hole: hole('.0971') }, '#2-56')).toEqual([]);
  });

  test('in a blind hole whose floor would be too thin is not cut', () => {
    // 1D bottoming: .4375 + 4/20 + .3004 · .4531 = .7736, and .0591 (1.5 mm) of floor: .8327.
    const blind = { tap: 'bottoming' } as const;
    expect(offers({ blind, thickness: inch('.832') })).toEqual([]);
    expect(offers({ blind, thickness: inch('.833') })).toHaveLength(1);
    expect(offers({ blind, thickness: inch('.833'), thicknessOff: inch('.001') })).toEqual([]);
  });

  test('beside a wall that would be too thin is not cut', () => {
    expect(offers({ hole: hole('.4400'), wall: { kind: 'present', wall: inch('.100') } })).toEqual([]);
    expect(offers({ hole: hole('.4400'), wall: { kind: 'present', wall: inch('.310') } })).toHaveLength(1);
  });
});
