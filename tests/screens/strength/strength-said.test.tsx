import { parse } from 'csv-parse/sync';
import { cleanup, fireEvent, screen, within } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import {
  isWorksheetKind,
  worksheets,
  type WorksheetKind,
} from '../../../src/engine/worksheets/all-worksheets.ts';
import { stepsFromWorksheet } from '../../../src/screens/assembly/steps-from-worksheet.ts';
import { hrefOf, type Address } from '../../../src/screens/address.ts';
import { App } from '../../../src/screens/app.tsx';
import { LatheScreen } from '../../../src/screens/lathe/lathe-screen.tsx';
import { cutsCsv } from '../../../src/screens/sheet/csv.ts';
import { AccountOnPaper } from '../../../src/screens/sheet/account-on-paper.tsx';
import { WorksheetForm } from '../../../src/screens/worksheets/frame/worksheet-form.tsx';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import type { WorksheetData } from '../../../src/screens/worksheets/worksheet-data.ts';
import { createCuts, type NewCut } from '../../../src/store/kept/cuts.ts';
import { logPass } from '../../../src/store/kept/cut-passes.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import { createWorksheet } from '../../../src/store/kept/worksheets.ts';
import type { Cut, Job } from '../../../src/store/base/records.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { facing, inches } from '../../store/cut-for-test.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';
import { demoOf, examples, furtherExamples } from '../worksheets/registry-examples.ts';
import { partOf, typedSize, worksheetOf } from '../worksheets/worksheet-for-test.ts';

/** No screen, sheet or file offers to take metal off a part that carries load without saying what that does. */

const PATIENCE = { timeout: 30_000 };
const BRACKET = 'Metal off the brake bracket makes it weaker: have its strength judged before you cut.';
const LEG = 'Metal off the left leg makes it weaker: have its strength judged before you cut.';
const HOLE = 'A larger hole leaves less metal: have the part’s strength judged before you cut.';
const DEEPER = 'A deeper hole leaves less metal: have the part’s strength judged before you cut.';
const RECESS = 'A deeper recess leaves less metal: have the part’s strength judged before you cut.';
const ANY = /strength judged before you cut/;

let store: Store;
beforeEach(async () => {
  location.hash = '';
  store = await openForTest();
});
afterEach(clearAway);

// 2.412 − (.500 + 1.155 + .793) = −.036: too tight, and nobody said which of the three may be cut.
const legs = worksheetOf('spacer-stack', {
  sizes: { fixed: typedSize('2.412') },
  parts: {
    a: { ...partOf(1, typedSize('.500')), name: 'left leg', adjustable: false },
    b: { ...partOf(2, typedSize('1.155')), name: 'sleeve', adjustable: false },
    c: { ...partOf(3, typedSize('.793')), name: 'washer', adjustable: false },
  },
});
// What stays is 7 − 4.412 − .750 … : no room between hub and bracket, a disc that comes in is one of the ways.
const disc = worksheetOf('axle-line-up', {
  choices: { layout: 'front-one-disc', side: 'right' },
  sizes: {
    width: typedSize('6.750'),
    hub: typedSize('4.412'),
    centre: typedSize('2.206'),
    disc: typedSize('1.400'),
    slot: typedSize('.187'),
    bracket: typedSize('.500'),
    float: typedSize('.010'),
  },
});
// Full thread 3/8 deep is less than a 1/2-13 stud has to have in cast aluminium (more than its own diameter).
const shallow = worksheetOf('thread-engagement', {
  choices: { thread: '1/2-13 UNC', grade: 'sae-5', parent: 'cast-aluminium', held: 'stud', hole: 'blind' },
  sizes: { leg1: typedSize('3/8'), holeDepth: typedSize('3/8') },
});
const opened = worksheetOf('fit', {
  sizes: { pin: typedSize('.5000'), bore: typedSize('.4990') },
  choices: { joint: 'slides' },
});
const proud = worksheetOf('bearing-seat', {
  choices: { bearing: 'seat' },
  sizes: {
    depth: typedSize('.5000'),
    width: typedSize('.5118'),
    lower: typedSize('.001'),
    upper: typedSize('.004'),
  },
});

const offering = [
  ['a stack in which a leg is one of those that may be cut', legs, LEG],
  ['an axle whose disc may come in', disc, /^Where metal comes off a part for it, have its strength judged/],
  ['a bolt whose hole is not deep enough', shallow, DEEPER],
  ['a fit whose bore is opened', opened, HOLE],
  ['a bearing that stands too proud', proud, RECESS],
] as const;

describe('a worksheet’s page', () => {
  test.each(offering)('says it of %s', (_what, data, said) => {
    onScreen(store, <WorksheetForm data={data} kind={kindOf(data)} />);
    const [sentence] = screen.getAllByText(said);
    // Not folded away behind a key.
    expect(sentence?.closest('#account-unfolded')).toBeNull();
  });

  test('names it beside the part among those that may be cut', () => {
    onScreen(store, <WorksheetForm data={legs} kind="spacer-stack" pressed="mayCut" />);
    expect(screen.getByRole('button', { name: /left leg/ }).textContent).toContain(
      'have its strength judged',
    );
    expect(screen.getByRole('button', { name: /washer/ }).textContent).not.toContain('strength');
  });
});

describe('what is printed of a worksheet', () => {
  test.each(offering)('says it of %s', (_what, data, said) => {
    onScreen(store, <AccountOnPaper data={data} kind={kindOf(data)} />);
    expect(screen.getAllByText(said).length).toBeGreaterThan(0);
  });
});

describe('every kind of worksheet', () => {
  const all = Object.entries(worksheets).flatMap(([kind, worksheet]) =>
    [demoOf(kind, worksheet), ...named(examples, kind), ...named(furtherExamples, kind)].map(
      (data, index) => [`${kind} ${index}`, data] as const,
    ),
  );
  // What stands in a part that hangs together with the wheel or its brake.
  const CARRIES = /^(?:hole|bore|recess|pin|.*\b(?:bracket|leg|arm|plate|hub))$/i;

  test('has some that take metal off such a part', () => {
    expect(all.filter(([, data]) => takesMetal(data)).length).toBeGreaterThan(8);
  });

  test.each(all.filter(([, data]) => takesMetal(data)))(
    '%s says it on its page and on paper',
    (_name, data) => {
      onScreen(store, <WorksheetForm data={data} kind={kindOf(data)} />);
      expect(screen.getAllByText(ANY).length).toBeGreaterThan(0);
      cleanup();
      onScreen(store, <AccountOnPaper data={data} kind={kindOf(data)} />);
      expect(screen.getAllByText(ANY).length).toBeGreaterThan(0);
    },
  );

  test.each(all)('%s asks for no metal in an assembly step', (_name, data) => {
    for (const { text } of stepsFromWorksheet(data))
      expect(text).not.toMatch(
        /\b(?:drill|ream|bore out|open up|turn down|thin|mill|file|grind)\b(?! it flush)/i,
      );
  });

  function takesMetal(data: WorksheetData): boolean {
    const offers = worksheets[kindOf(data)].cuts(givenOf(data)).flatMap((way) => way.offers);
    // Until nothing is lacking its page asks for that, and offers nothing.
    const isAnswered = worksheets[kindOf(data)].nextNeed(givenOf(data)) === undefined;
    return isAnswered && offers.some(({ part, name }) => CARRIES.test(part) && !name.includes('made new'));
  }
});

function kindOf({ worksheet: { kind } }: WorksheetData): WorksheetKind {
  if (!isWorksheetKind(kind)) throw new Error(`no kind ${kind}`);
  return kind;
}

function named<T>(of: Readonly<Record<string, readonly T[] | undefined>>, kind: string): readonly T[] {
  return of[kind] ?? [];
}

describe('a cut', () => {
  let job: Job;
  beforeEach(async () => {
    job = worked(await createJob(store, { name: 'Outfit', systems: ['brake'] }));
  });
  const bracket = { name: 'Brake bracket, faced', part: 'brake bracket' };
  const make = async (more: Partial<NewCut> = bracket): Promise<Cut> => {
    const [cut] = worked(await createCuts(store, [facing(job.id, more)]));
    if (!cut) throw new Error('no cut was made');
    return cut;
  };
  const goTo = (address: Address) => {
    location.hash = hrefOf(address);
    onScreen(store, <App store={store} />);
  };

  test('before it goes on the list, on its card', async () => {
    const { worksheet } = legs;
    const parts = { ...worksheet.parts, a: { ...partOf(1, typedSize('.500')), name: 'left leg' } };
    const made = worked(await createWorksheet(store, { ...worksheet, jobId: job.id, title: 'Axle', parts }));
    goTo({ at: 'worksheet', jobId: job.id, worksheetId: made.id, field: 'cuts' });
    const card = (
      await screen.findByRole('heading', { name: 'Left leg, faced to length' }, PATIENCE)
    ).closest('.cut-it-offer');
    expect(card?.textContent).toContain(LEG);
  });

  test('on the cut list of its job, until it is made', async () => {
    const cut = await make();
    goTo({ at: 'cuts', jobId: job.id });
    const row = await screen.findByRole(
      'link',
      { name: new RegExp(`Brake bracket, faced.*${BRACKET}`) },
      PATIENCE,
    );
    expect(row).toBeTruthy();
    worked(await logPass(store, cut.id, { measured: inches('1.480') }, 'to-size'));
    await screen.findByText('to size · 1', {}, PATIENCE);
    expect(screen.queryByText(BRACKET)).toBeNull();
  });

  test('on the list of all there is to cut', async () => {
    await make();
    goTo({ at: 'all-cuts' });
    expect(await screen.findByText(BRACKET, {}, PATIENCE)).toBeTruthy();
  });

  test('on its own page', async () => {
    const cut = await make();
    goTo({ at: 'cut', jobId: job.id, cutId: cut.id });
    expect(await screen.findByText(BRACKET, {}, PATIENCE)).toBeTruthy();
  });

  test('at the lathe', async () => {
    const cut = await make();
    onScreen(store, <LatheScreen jobId={job.id} cutId={cut.id} />);
    expect(within(await screen.findByLabelText('Cautions')).getByText(BRACKET)).toBeTruthy();
  });

  test('where it is made again in another job', async () => {
    const cut = await make();
    goTo({ at: 'cut', jobId: job.id, cutId: cut.id, field: 'again' });
    expect(await screen.findByText(BRACKET, {}, PATIENCE)).toBeTruthy();
  });

  test('where the job’s route names it as the next act', async () => {
    await make();
    goTo({ at: 'route', jobId: job.id });
    const next = within(await screen.findByRole('region', { name: 'Next' }, PATIENCE));
    expect(await next.findByText(BRACKET, {}, PATIENCE)).toBeTruthy();
  });

  test('in the file for a spreadsheet', async () => {
    const cut = await make();
    const [row]: readonly Record<string, string>[] = parse(cutsCsv([cut], new Set()), {
      columns: true,
      bom: true,
    });
    expect(row?.['strength']).toBe(BRACKET);
  });

  test('of one’s own, as soon as its part is named; and before it is, as nobody knows what it is', async () => {
    goTo({ at: 'cut', jobId: job.id, cutId: 'new', field: 'drill' });
    const part = await screen.findByLabelText<HTMLInputElement>('Part', {}, PATIENCE);
    expect(screen.getByText(HOLE)).toBeTruthy();
    fireEvent.input(part, { target: { value: 'spacer' } });
    await expect.poll(() => screen.queryByText(HOLE)).toBeNull();
    fireEvent.input(part, { target: { value: 'caliper boss' } });
    expect(await screen.findByText(HOLE)).toBeTruthy();
  });
});

describe('a way out of a cut gone past its limit', () => {
  test('that opens a hole or turns a shaft down says it', async () => {
    const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
    const sheet = worked(
      await createWorksheet(store, {
        jobId: job.id,
        kind: 'fit',
        title: 'Pivot',
        sizes: { pin: typedSize('.5000'), bore: typedSize('.4990') },
        choices: { joint: 'turns' },
      }),
    );
    const [cut] = worked(
      await createCuts(store, [
        facing(job.id, {
          worksheetId: sheet.id,
          name: 'Bore, opened',
          part: 'bore',
          operation: 'bore',
          of: 'bore',
          target: inches('.5010'),
          lower: inches('.5005'),
          upper: inches('.5015'),
        }),
      ]),
    );
    if (!cut) throw new Error('no cut was made');
    worked(await logPass(store, cut.id, { measured: inches('.5300') }, 'over'));
    onScreen(store, <LatheScreen jobId={job.id} cutId={cut.id} />);
    const bush = await screen.findByRole('button', { name: /^Bush it/ }, PATIENCE);
    expect(bush.textContent).toContain(HOLE);
  });
});
