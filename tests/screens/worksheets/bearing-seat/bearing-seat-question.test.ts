import { describe, expect, test } from 'vitest';
import { mean } from '../../../../src/engine/reading/estimate.ts';
import { worksheets } from '../../../../src/engine/worksheets/all-worksheets.ts';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import {
  bearingLegs,
  bearingQuestion,
  sleeveWant,
} from '../../../../src/engine/worksheets/bearing-seat/question.ts';
import { setAside } from '../../../../src/screens/worksheets/worksheet-data.ts';
import { worksheetVerdict } from '../../../../src/screens/worksheets/worksheet-verdict.ts';
import { featureOf, is, ofFeature, readingOf, tool, typedSize, worksheetOf } from '../worksheet-for-test.ts';

type Given = Parameters<typeof worksheetOf>[1];

const ask = (given: Given) => bearingQuestion(givenOf(worksheetOf('bearing-seat', given)));

describe('the sleeve between ball bearings', () => {
  const ball = { bearing: 'ball' };

  test('is asked with the distance alone: it is to be made', () => {
    const question = ask({ choices: ball, sizes: { between: typedSize('2.750') } });
    expect(question?.kind).toBe('ball');
    expect(question?.kind === 'ball' && is(mean(question.ask.between), '2.75 in')).toBe(true);
    expect(question?.kind === 'ball' && question.ask.sleeve).toBeUndefined();
    expect(ask({ choices: ball })).toBeUndefined();
  });

  test('is ruled by the sleeve’s shortest place and the distance’s longest: that is where it side-loads', () => {
    const caliper = { tool: tool('digital-caliper') };
    const question = ask({
      choices: ball,
      sizes: { between: ofFeature('hub'), sleeve: ofFeature('sleeve') },
      features: [featureOf('hub', 'length'), featureOf('sleeve', 'length')],
      readings: [
        readingOf('hub', '2.750', { place: 'top', ...caliper }),
        readingOf('hub', '2.752', { place: 'bottom', ...caliper }),
        readingOf('sleeve', '2.755', { place: 'top', ...caliper }),
        readingOf('sleeve', '2.753', { place: 'bottom', ...caliper }),
      ],
    });
    expect(question?.kind === 'ball' && is(mean(question.ask.between), '2.752 in')).toBe(true);
    expect(
      question?.kind === 'ball' && question.ask.sleeve && is(mean(question.ask.sleeve), '2.753 in'),
    ).toBe(true);
  });

  test('is usually wanted 0 to .005 longer; with one’s own least or most as much room as is usual', () => {
    const wantWith = (sizes: NonNullable<Given>['sizes'] = {}) =>
      sleeveWant(givenOf(worksheetOf('bearing-seat', { choices: ball, sizes })));
    expect(is(wantWith().limits.upper, '.005 in')).toBe(true);
    expect(is(wantWith({ aim: typedSize('.001') }).aim, '.001 in')).toBe(true);
    const least = wantWith({ lower: typedSize('.002') });
    // .002 + .005; half-way .0045
    expect(is(least.limits.upper, '.007 in') && is(least.aim, '.0045 in')).toBe(true);
    expect(is(wantWith({ upper: typedSize('.003') }).limits.lower, '0 in')).toBe(true);
    expect(is(wantWith({ upper: typedSize('-.003') }).limits.lower, '-.003 in')).toBe(true);
  });
});

describe('taper rollers', () => {
  const choices = { bearing: 'taper', setBy: 'nut' };
  const sizes = { endPlay: typedSize('.009'), lower: typedSize('.001'), upper: typedSize('.005') };

  test('are judged by the maker’s figure, aimed half-way', () => {
    const question = ask({ choices, sizes });
    const want = question?.kind === 'taper' ? question.ask.want : undefined;
    expect(is(want?.aim, '.003 in')).toBe(true);
    expect(want?.limits.source).toMatch(/the maker’s figure/);
  });

  test.each(['endPlay', 'lower', 'upper'] as const)('can’t be judged without %s', (left) => {
    const { [left]: _left, ...others } = sizes;
    expect(ask({ choices, sizes: others })).toBeUndefined();
  });

  test('can’t be judged without what sets them', () => {
    expect(ask({ choices: { bearing: 'taper' }, sizes })).toBeUndefined();
    expect(ask({ choices: { bearing: 'taper', setBy: 'luck' }, sizes })).toBeUndefined();
  });

  test('have no answer by end play that was read with another shim in', () => {
    // .009 − .003 aimed = .006 more behind the cup: .106 for .100. Put in, it must not be asked for .112.
    const shimmed = {
      choices: { bearing: 'taper', setBy: 'shim-behind' },
      sizes: { ...sizes, endPlay: { ...typedSize('.009'), at: 5 }, shim: typedSize('.106') },
    };
    const before = worksheetOf('bearing-seat', shimmed);
    const partsChanged = { at: 6, why: 'a part of another size' };
    const after = { ...before, worksheet: { ...before.worksheet, partsChanged } };
    expect(bearingQuestion(givenOf(before))).toBeDefined();
    expect(bearingQuestion(givenOf(after))).toBeUndefined();
    expect(worksheetVerdict(after).found).toBe('no-answer');
    expect(worksheets['bearing-seat'].nextNeed(givenOf(after))).toBe('endPlay');
    expect(setAside(after, ['endPlay'])?.why).toBe('a part of another size');
  });

  test('take the pitch of the nut’s thread and the shim that is in', () => {
    const nut = ask({ choices: { ...choices, thread: 'not a thread' }, sizes });
    expect(nut?.kind === 'taper' && nut.ask.pitch).toBeUndefined();
    const fine = ask({ choices: { ...choices, thread: '3/4-16 UNF' }, sizes });
    expect(fine?.kind === 'taper' && is(fine.ask.pitch, '1/16 in')).toBe(true);
    const shim = ask({
      choices: { ...choices, setBy: 'shim-behind' },
      sizes: { ...sizes, shim: typedSize('.100'), aim: typedSize('.002') },
    });
    expect(shim?.kind === 'taper' && shim.ask.shim && is(mean(shim.ask.shim), '.1 in')).toBe(true);
    expect(shim?.kind === 'taper' && is(shim.ask.want.aim, '.002 in')).toBe(true);
  });
});

describe('a bearing in its recess', () => {
  const choices = { bearing: 'seat' };
  const sizes = { depth: typedSize('.650'), width: typedSize('15 mm') };

  test('is asked with depth and width, without limits till both were given', () => {
    const question = ask({ choices, sizes: { ...sizes, lower: typedSize('.001') } });
    expect(question?.kind === 'seat' && question.ask.want).toBeUndefined();
    expect(question?.kind === 'seat' && question.ask.goesIn).toHaveLength(1);
    expect(ask({ choices, sizes: { depth: sizes.depth } })).toBeUndefined();
    expect(ask({ choices, sizes: { width: sizes.width } })).toBeUndefined();
  });

  test('counts what else goes in, and the limits one gave', () => {
    const question = ask({
      choices,
      sizes: { ...sizes, alsoIn: typedSize('.062'), lower: typedSize('-.003'), upper: typedSize('-.001') },
    });
    expect(question?.kind === 'seat' && question.ask.goesIn).toHaveLength(2);
    expect(question?.kind === 'seat' && is(question.ask.want?.aim, '-.002 in')).toBe(true);
  });
});

describe('a bearing worksheet whose sizes were read at several places', () => {
  // A depth micrometer's band is far below the thous between the places.
  const micrometer = { tool: tool('depth-micrometer') };
  const places = (id: string, first: string, second: string) => [
    readingOf(id, first, { place: 'top', ...micrometer }),
    readingOf(id, second, { place: 'bottom', ...micrometer }),
  ];
  const found = (given: Given) => worksheetVerdict(worksheetOf('bearing-seat', given)).found;

  // End play by the maker .001 to .005.
  test.each([
    { first: '.0030', second: '.0035', is: 'good' },
    { first: '.0030', second: '.0080', is: 'no-good' },
    { first: '.0080', second: '.0030', is: 'no-good' },
    // .0009 under, and an indicator's own error is about as much: not surely.
    { first: '.0001', second: '.0030', is: 'too-close' },
  ])('rollers with $first and $second of end play are $is', ({ first, second, is: kind }) => {
    const taper = {
      choices: { bearing: 'taper', setBy: 'nut' },
      sizes: { endPlay: ofFeature('play'), lower: typedSize('.001'), upper: typedSize('.005') },
      features: [featureOf('play', 'gap')],
      readings: places('play', first, second).map((one) => ({ ...one, tool: tool('dial-indicator') })),
    };
    expect(found(taper)).toBe(kind);
  });

  // Proud .002 to .006 is wanted, .500 goes in. Depth .495 and .497: .005 and .003. .495 and .499: .005 and .001.
  test.each([
    { first: '.495', second: '.497', is: 'good' },
    { first: '.495', second: '.499', is: 'no-good' },
    { first: '.493', second: '.497', is: 'no-good' },
  ])('a recess $first and $second deep is $is', ({ first, second, is: kind }) => {
    const seat = {
      choices: { bearing: 'seat' },
      sizes: {
        depth: ofFeature('recess'),
        width: typedSize('.500'),
        lower: typedSize('.002'),
        upper: typedSize('.006'),
      },
      features: [featureOf('recess', 'depth')],
      readings: places('recess', first, second),
    };
    expect(found(seat)).toBe(kind);
  });

  // 0 to .005 longer than 1.750: 1.7515 and 1.7530 are; 1.7515 and 1.7580 is .008 over at its longest.
  test.each([
    { second: '1.7530', is: 'good' },
    { second: '1.7580', is: 'no-good' },
    { second: '1.7480', is: 'no-good' },
  ])('a sleeve 1.7515 and $second long is $is', ({ second, is: kind }) => {
    const ball = {
      choices: { bearing: 'ball' },
      sizes: { between: typedSize('1.750'), sleeve: ofFeature('sleeve') },
      features: [featureOf('sleeve', 'length')],
      readings: places('sleeve', '1.7515', second).map((one) => ({ ...one, tool: tool('micrometer-1-2') })),
    };
    expect(found(ball)).toBe(kind);
  });
});

test('the tools that could settle it are asked for the sizes it is made of', () => {
  const kinds = (given: Given) => {
    const question = ask(given);
    return question && bearingLegs(question).map(({ kind, coefficient }) => `${kind} ${coefficient}`);
  };
  const sizes = {
    between: typedSize('2.75'),
    sleeve: typedSize('2.76'),
    endPlay: typedSize('.009'),
    lower: typedSize('.001'),
    upper: typedSize('.005'),
    depth: typedSize('.65'),
    width: typedSize('.59'),
  };
  expect(kinds({ choices: { bearing: 'ball' }, sizes })).toEqual(['length 1', 'length -1']);
  expect(kinds({ choices: { bearing: 'ball' }, sizes: { between: sizes.between } })).toEqual(['length -1']);
  expect(kinds({ choices: { bearing: 'taper', setBy: 'nut' }, sizes })).toEqual(['gap 1']);
  expect(kinds({ choices: { bearing: 'seat' }, sizes })).toEqual(['length 1', 'depth -1']);
});

describe('what a bearing worksheet asks for', () => {
  test.each([
    { choices: {}, next: 'bearing' },
    { choices: { bearing: 'ball' }, next: 'between' },
    { choices: { bearing: 'taper' }, next: 'setBy' },
    { choices: { bearing: 'taper', setBy: 'nut' }, next: 'endPlay' },
    { choices: { bearing: 'seat' }, next: 'depth' },
    { choices: { bearing: 'plain' }, next: undefined },
  ])('with $choices is $next', ({ choices, next }) => {
    expect(worksheets['bearing-seat'].nextNeed(givenOf(worksheetOf('bearing-seat', { choices })))).toBe(next);
  });

  const fieldsWith = (choices: Readonly<Record<string, string>>) =>
    Object.keys(worksheets['bearing-seat'].fieldsFor(givenOf(worksheetOf('bearing-seat', { choices }))));

  test.each(['ball', 'taper', 'seat', 'plain'])('with %s has a field for everything it needs', (bearing) => {
    const needs = worksheets['bearing-seat'].needs(
      givenOf(worksheetOf('bearing-seat', { choices: { bearing } })),
    );
    expect(needs.filter((name) => !fieldsWith({ bearing }).includes(name))).toEqual([]);
  });

  test('of taper rollers set by a nut shows its thread, set by a shim the shim', () => {
    const named = (setBy: string, name: string) => fieldsWith({ bearing: 'taper', setBy }).includes(name);
    expect([named('nut', 'thread'), named('nut', 'shim')]).toEqual([true, false]);
    expect([named('shim-behind', 'thread'), named('shim-behind', 'shim')]).toEqual([false, true]);
  });

  test('can’t be asked while nothing was chosen', () => {
    expect(ask({})).toBeUndefined();
  });
});
