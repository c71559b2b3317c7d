import { cleanup, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { withAssumed } from '../../../src/engine/reading/say-assumed.ts';
import { lengthOf } from '../../../src/engine/length/length.ts';
import { AccountOnPaper } from '../../../src/screens/sheet/account-on-paper.tsx';
import { assumedIn } from '../../../src/screens/worksheets/assumed.ts';
import { bushingWorksheet } from '../../../src/engine/worksheets/bushing/worksheet.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import { figuresOf } from '../../../src/screens/worksheets/new-cuts.ts';
import { WithAssumed } from '../../../src/screens/worksheets/said-assumed.tsx';
import {
  worksheetKinds,
  worksheets,
  type WorksheetKind,
} from '../../../src/engine/worksheets/all-worksheets.ts';
import { worksheetVerdict } from '../../../src/screens/worksheets/worksheet-verdict.ts';
import { WorksheetForm } from '../../../src/screens/worksheets/frame/worksheet-form.tsx';
import { openForTest } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';
import { partOf, tool, typedSize, worksheetOf } from './worksheet-for-test.ts';

afterEach(async () => {
  cleanup();
  await clearAway();
});

type Given = Parameters<typeof worksheetOf>[1];
const words = (kind: WorksheetKind, given: Given) =>
  assumedIn(worksheetOf(kind, given)).map((one) => one.words);

// .970 − .960 = .010; the usual float wants .008 to .012
const stack = (choices: Readonly<Record<string, string>> = {}) =>
  worksheetOf('spacer-stack', {
    sizes: { fixed: typedSize('.970') },
    parts: { a: partOf(1, typedSize('.960')) },
    choices,
  });

describe('what was assumed', () => {
  test('stands in the verdict’s own sentence, before what is said further', () => {
    expect(withAssumed('Good: float .0100, want .008 to .012.', ['float'])).toBe(
      'Good: float .0100, want .008 to .012; assumed: float.',
    );
    expect(withAssumed('Too small. Drill it first.', ['aluminium', 'through hole'])).toBe(
      'Too small; assumed: aluminium, through hole. Drill it first.',
    );
    expect(withAssumed('Good: float .0100.', [])).toBe('Good: float .0100.');
  });

  test('is chosen for nobody: no worksheet begins with a choice made', () => {
    expect(worksheetKinds.map((kind) => [kind, worksheets[kind].starts])).toEqual(
      worksheetKinds.map((kind) => [kind, {}]),
    );
  });

  test('how a bushing runs is asked before anything is worked out', () => {
    expect(bushingWorksheet.needs(givenOf(worksheetOf('bushing')))).toContain('joint');
  });

  test('is a float in a stack until somebody says what it should do', () => {
    expect(worksheetVerdict(stack()).said).toMatch(/^Good: float .*; assumed: float\.$/);
    expect(worksheetVerdict(stack({ want: 'float' })).said).not.toContain('assumed');
    expect(worksheetVerdict(stack({ want: 'end-play' })).said).not.toContain('assumed');
  });

  test('is a spacer that may be cut, only where the stack is too tight for what is wanted', () => {
    const named = (size: string) =>
      words('spacer-stack', {
        sizes: { fixed: typedSize('.970') },
        choices: { want: 'float' },
        parts: {
          a: { ...partOf(1, typedSize('.100')), name: 'bracket', adjustable: false },
          b: { ...partOf(2, typedSize(size)), name: 'outer spacer', adjustable: false },
        },
      });
    // .970 − .100 − .868 = .002 of float, .008 wanted; with .860 it is .010
    expect(named('.868')).toEqual(['outer spacer may be cut']);
    expect(named('.860')).toEqual([]);
  });

  test.each<{ kind: WorksheetKind; given: Given; said: readonly string[] }>([
    {
      kind: 'thread-insert',
      given: { choices: { thread: 'M8x1.25' } },
      said: ['aluminum', 'through hole'],
    },
    {
      kind: 'thread-insert',
      given: { choices: { thread: 'M8x1.25', bottom: 'blind' } },
      said: ['aluminum', 'bottoming tap'],
    },
    { kind: 'thread-insert', given: { choices: { metal: 'steel', bottom: 'through' } }, said: [] },
    { kind: 'thread-engagement', given: {}, said: ['no insert'] },
    {
      kind: 'thread-engagement',
      given: { sizes: { leg1: typedSize('.5') } },
      said: ['no insert', 'bolt into the part'],
    },
    {
      kind: 'thread-engagement',
      given: { sizes: { leg1: typedSize('.5') }, choices: { insert: 'no', held: 'nut' } },
      said: ['usual nut'],
    },
    { kind: 'ring', given: {}, said: ['the recess locates it'] },
    { kind: 'bushing', given: { choices: { joint: 'turns' } }, said: ['not hardened or plated'] },
    { kind: 'bearing-seat', given: { choices: { bearing: 'ball' } }, said: ['the real bearing'] },
    { kind: 'bearing-seat', given: { choices: { bearing: 'ball', mockUp: 'no' } }, said: [] },
    { kind: 'steering-geometry', given: {}, said: ['rake to ±0.2°'] },
    { kind: 'hole-and-pin', given: { choices: { joint: 'turns' } }, said: [] },
    {
      kind: 'axle-line-up',
      given: {
        choices: { layout: 'front-one-disc' },
        sizes: { slotWidth: typedSize('.3'), discThickness: typedSize('.16') },
      },
      said: ['caliper follows its pads', 'disc runout'],
    },
    // Where the bracket follows them its float has to be more than they wear: nobody is told so by a default.
    {
      kind: 'axle-line-up',
      given: { choices: { layout: 'front-one-disc' } },
      said: ['caliper follows its pads'],
    },
    { kind: 'axle-line-up', given: { choices: { layout: 'front-one-disc', slides: 'bracket' } }, said: [] },
    { kind: 'axle-line-up', given: { choices: { layout: 'front-one-disc', slides: 'caliper' } }, said: [] },
    { kind: 'axle-line-up', given: { choices: { layout: 'drum' } }, said: [] },
  ])('of a $kind: $said', ({ kind, given, said }) => {
    expect(words(kind, given)).toEqual(said);
  });
});

describe('a tool that nobody named', () => {
  const caliper = { ...typedSize('.500', tool('digital-caliper')), toolAssumed: true as const };
  const named = typedSize('.500', tool('digital-caliper'));
  // No kind of tool reads a pin less closely than a caliper: then twice its .001.
  const pin = (bore: string, size: typeof named) =>
    worksheetOf('hole-and-pin', {
      sizes: { bore: typedSize(bore), pin: size, lower: typedSize('.0005'), upper: typedSize('.0040') },
      choices: { joint: 'turns' },
    });

  test('is said where the verdict would be another by a coarser one', () => {
    // Clearance .0022, .0017 and .0018 inside: good by ±.001 (U a bit over .0013), not by ±.002 (U .0025).
    expect(worksheetVerdict(pin('.5022', caliper))).toMatchObject({ found: 'good' });
    expect(worksheetVerdict(pin('.5022', caliper)).said).toMatch(/; assumed: digital caliper\.$/);
  });

  test('is not said where it changes nothing, or somebody named it', () => {
    expect(worksheetVerdict(pin('.5022', named)).said).not.toContain('assumed');
    expect(worksheetVerdict(pin('.520', caliper)).said).not.toContain('assumed');
  });

  test('of a length is held against a rule', () => {
    // .030 of float against .020 to .040: caliper ±.001 proves it, a rule ±.005 does not.
    const floats = worksheetOf('spacer-stack', {
      sizes: { fixed: typedSize('.990'), lower: typedSize('.024'), upper: typedSize('.036') },
      parts: {
        a: partOf(1, { ...typedSize('.960', tool('digital-caliper')), toolAssumed: true as const }),
      },
      choices: { want: 'float' },
    });
    expect(worksheetVerdict(floats).said).toMatch(/^Good: .*; assumed: digital caliper\.$/);
    expect(assumedIn(floats)).toEqual([
      { field: 'part/a/size', words: 'digital caliper', asked: 'Which tool?' },
    ]);
  });
});

test('is said on the page in the verdict’s line, and one press leads to it', async () => {
  const data = stack();
  const { container } = onScreen(await openForTest(), <WorksheetForm data={data} kind="spacer-stack" />);
  const key = await screen.findByRole('link', { name: 'Not float? Assumed: float. Change it' });
  expect(container.querySelector('.verdict-band-headline')?.textContent).toMatch(/; assumed: float\.$/);
  expect(key.getAttribute('href')).toMatch(/\/want$/);
});

test('is said on the printed sheet in the verdict’s line, without a key', async () => {
  const data = stack();
  const { container } = onScreen(
    await openForTest(),
    <WithAssumed data={data} onPaper>
      <AccountOnPaper data={data} kind="spacer-stack" />
    </WithAssumed>,
  );
  expect(container.querySelector('.verdict-band-headline')?.textContent).toMatch(/; assumed: float\.$/);
  expect(container.querySelector('a')).toBeNull();
});

test('goes with a cut to the list, and off it once it was said', () => {
  const offer = {
    name: 'part 1, face',
    part: 'part 1',
    operation: 'face',
    of: 'length',
    target: lengthOf('.958 in'),
    lower: lengthOf('.957 in'),
    upper: lengthOf('.959 in'),
    limitsFrom: 'float',
  } as const;
  expect(figuresOf(offer, stack())).toMatchObject({ assumed: 'float' });
  expect(figuresOf(offer, stack({ want: 'float' }))).not.toHaveProperty('assumed');
});
