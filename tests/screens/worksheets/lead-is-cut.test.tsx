import { describe, expect, test } from 'vitest';
import type { CutOffer } from '../../../src/engine/cut/cut.ts';
import { isLess, isMore, lengthOf } from '../../../src/engine/length/length.ts';
import { figure } from '../../../src/engine/length/show.ts';
import type { WorksheetData } from '../../../src/screens/worksheets/worksheet-data.ts';
import { blocksOf } from '../../../src/engine/worksheets/account.ts';
import { isWorksheetKind, worksheets } from '../../../src/engine/worksheets/all-worksheets.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import { partOf, tool, typedSize, worksheetOf } from './worksheet-for-test.ts';

/** What its account leads with, and what it offers to be cut. */
function leadsAndCuts(data: WorksheetData) {
  const { kind } = data.worksheet;
  if (!isWorksheetKind(kind)) throw new Error(kind);
  const given = givenOf(data);
  const leads = blocksOf(worksheets[kind].account(given), 'lead').map((lead) => ({
    label: lead.label,
    figure: `${lead.figure} ${lead.unit}`,
    text: [lead.label, lead.figure, lead.unit, lead.change, lead.limits].join(' '),
  }));
  return { leads, offers: worksheets[kind].cuts(given).flatMap((way) => way.offers) };
}

const metric = { exact: lengthOf('0.02 mm'), typed: '0.02', unit: 'mm' } as const;
const dials: readonly WorksheetData['dial'][] = [
  { reads: 'diameter', graduation: { exact: lengthOf('.001 in'), typed: '.001', unit: 'in' } },
  { reads: 'radius', graduation: { exact: lengthOf('.001 in'), typed: '.001', unit: 'in' } },
  { reads: 'diameter', graduation: metric },
  { reads: 'radius', graduation: metric },
];

const insideItsLimits = ({ target, lower, upper }: CutOffer) =>
  !isLess(target, lower) && !isMore(target, upper);

const metals = { partMetal: 'alloy-steel', bushingMetal: 'bearing-bronze' };
const gauge = tool('dial-bore-gauge');

const JOINTS = ['turns', 'turns-under-load', 'slides', 'located', 'pressed'] as const;

const sheets: readonly (readonly [string, WorksheetData])[] = [
  ...JOINTS.flatMap((joint) =>
    ['.4487', '20.02 mm', '.5003', '11.4 mm'].flatMap((size) => [
      [
        `fit of a pin, ${joint}, bore ${size}`,
        worksheetOf('fit', {
          sizes: { nominal: typedSize(size), bore: typedSize(size) },
          choices: { joint },
          unit: size.endsWith('mm') ? 'mm' : 'in',
        }),
      ] as const,
      [
        `fit of a bore, ${joint}, pin ${size}`,
        worksheetOf('fit', {
          sizes: { nominal: typedSize(size), pin: typedSize(size, gauge) },
          choices: { joint },
          unit: size.endsWith('mm') ? 'mm' : 'in',
        }),
      ] as const,
    ]),
  ),
  ...[{ reamed: '26.012 mm' }, { reamed: '26.001 mm' }, { reamed: '26.012 mm', outside: '26.040 mm' }].map(
    ({ reamed, outside }) =>
      [
        `bushing in ${reamed}${outside === undefined ? '' : `, turned to ${outside}`}`,
        worksheetOf('bushing', {
          sizes: {
            bore: typedSize('22.3 mm'),
            pin: typedSize('20 mm'),
            wall: typedSize('20 mm'),
            reamed: typedSize(reamed),
            ...(outside !== undefined && { outside: typedSize(outside) }),
          },
          choices: { joint: 'turns', ...metals },
          unit: 'mm',
        }),
      ] as const,
  ),
  [
    'bushing not reamed yet',
    worksheetOf('bushing', {
      sizes: { bore: typedSize('.5050'), pin: typedSize('.5000'), wall: typedSize('.400') },
      choices: { joint: 'turns-under-load', ...metals },
    }),
  ],
  [
    'ring without a washer',
    worksheetOf('ring', {
      sizes: { recess: typedSize('1.5003'), stem: typedSize('.7507'), depth: typedSize('.1253') },
    }),
  ],
  [
    'ring from a washer',
    worksheetOf('ring', {
      sizes: {
        recess: typedSize('1.5003'),
        stem: typedSize('.7507'),
        depth: typedSize('.1253'),
        blankOutside: typedSize('2'),
        blankInside: typedSize('.656'),
        blankThickness: typedSize('.187'),
      },
    }),
  ],
  [
    'sleeve between ball bearings, to be made',
    worksheetOf('bearing-seat', { choices: { bearing: 'ball' }, sizes: { between: typedSize('2.7503') } }),
  ],
  [
    'sleeve between ball bearings, too long',
    worksheetOf('bearing-seat', {
      choices: { bearing: 'ball' },
      sizes: { between: typedSize('2.7503'), sleeve: typedSize('2.7702') },
    }),
  ],
  [
    'stack that is too tight',
    worksheetOf('spacer-stack', {
      sizes: { fixed: typedSize('.9703') },
      choices: { want: 'float' },
      parts: { a: partOf(1, typedSize('.4907')), b: partOf(2, typedSize('.4902')) },
    }),
  ],
  [
    'insert to be drilled for',
    worksheetOf('thread-insert', {
      sizes: { hole: typedSize('.4100'), wall: typedSize('.310'), thickness: typedSize('.750') },
      choices: { thread: '7/16-20 UNF', metal: 'steel', wallKind: 'present', bottom: 'through', tap: 'plug' },
    }),
  ],
];

describe.each(sheets)('%s', (_name, sheet) => {
  test.each(dials)(
    '$reads, $graduation.typed $graduation.unit: a lead that names a cut shows its target',
    (dial) => {
      const data = { ...sheet, dial };
      const { leads, offers } = leadsAndCuts(data);
      const targets = offers.map(({ target, drill }) => drill ?? figure(target, data.unit));
      expect(offers.filter((offer) => !insideItsLimits(offer))).toEqual([]);
      if (offers.length === 0) return;
      for (const lead of leads) expect(targets.some((target) => lead.text.includes(target))).toBe(true);
    },
  );
});

describe('by hand', () => {
  const leadOf = (data: WorksheetData) => leadsAndCuts(data).leads[0]?.figure;

  test('a fit’s pin is led by the mark of the dial that leaves metal on', () => {
    // RC5 at .40 to .71: clearance .0012 to .0029: .4458 to .4475, half way .44665, up to .447
    const sizes = { nominal: typedSize('.4487'), bore: typedSize('.4487') };
    expect(leadOf(worksheetOf('fit', { sizes, choices: { joint: 'turns' } }))).toBe('.447 in');
  });

  test('a bushing’s outside lies inside its own limits where no mark of the dial does', () => {
    // H7/r6 at 26 (24 to 30): r6 +41/+28, hole 0/+21: interference .007 to .041, middle .024 ± .0065:
    // in a bore of 26.005 from 26.0225 to 26.0355. Marks every .04 on the diameter: none inside. A half is 26.02 and 26.04,
    // a fifth .008: 26.0290 aimed, up to 26.032.
    const data = {
      ...worksheetOf('bushing', {
        sizes: {
          bore: typedSize('22.3 mm'),
          pin: typedSize('20 mm'),
          wall: typedSize('20 mm'),
          reamed: typedSize('26.005 mm'),
        },
        choices: { joint: 'turns', ...metals },
        unit: 'mm',
      }),
      dial: { reads: 'radius', graduation: metric } as const,
    };
    expect(leadOf(data)).toBe('26.032 mm');
  });
});
