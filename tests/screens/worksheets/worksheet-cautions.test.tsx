import { cleanup, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { WorksheetForm } from '../../../src/screens/worksheets/frame/worksheet-form.tsx';
import { openForTest } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';
import { typedSize, worksheetOf } from './worksheet-for-test.ts';

const answered = { sizes: { recess: typedSize('1.500'), stem: typedSize('.750') } };
const sleeve = { choices: { bearing: 'ball' }, sizes: { between: typedSize('2.750') } };

const axle = {
  choices: { layout: 'drum', side: 'right' },
  sizes: {
    width: typedSize('7.000'),
    hub: typedSize('4.000'),
    centre: typedSize('1.900'),
    plate: typedSize('.625'),
  },
};

afterEach(async () => {
  cleanup();
  await clearAway();
});

describe('on a job with nothing ticked', () => {
  const kills = () => screen.queryByLabelText('A mistake here can kill.');

  test('an axle line-up can kill all the same', async () => {
    onScreen(
      await openForTest(),
      <WorksheetForm data={worksheetOf('axle-line-up', axle)} kind="axle-line-up" />,
    );
    expect(kills()).not.toBeNull();
  });

  test('a bearing seat can kill all the same', async () => {
    onScreen(
      await openForTest(),
      <WorksheetForm data={worksheetOf('bearing-seat', sleeve)} kind="bearing-seat" />,
    );
    expect(kills()).not.toBeNull();
  });

  test('a ring does not', async () => {
    onScreen(await openForTest(), <WorksheetForm data={worksheetOf('ring', answered)} kind="ring" />);
    expect(kills()).toBeNull();
  });
});
