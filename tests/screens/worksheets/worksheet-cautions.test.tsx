import { cleanup, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { axleLineUpPlan } from '../../../src/screens/worksheets/axle-line-up-plan.ts';
import { AxleLineUpView } from '../../../src/screens/worksheets/axle-line-up-view.tsx';
import { bearingSeatPlan } from '../../../src/screens/worksheets/bearing-seat-plan.ts';
import { BearingSeatView } from '../../../src/screens/worksheets/bearing-seat-view.tsx';
import { WorksheetForm } from '../../../src/screens/worksheets/frame/worksheet-form.tsx';
import { openForTest } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';
import { typedSize, worksheetOf } from './worksheet-for-test.ts';

const answered = { sizes: { recess: typedSize('1.500'), stem: typedSize('.750') } };

afterEach(async () => {
  cleanup();
  await clearAway();
});

describe('on a job with nothing ticked', () => {
  const kills = () => screen.queryByLabelText('A mistake here can kill.');

  test('an axle line-up can kill all the same', async () => {
    onScreen(
      await openForTest(),
      <AxleLineUpView data={worksheetOf('axle-line-up')} plan={axleLineUpPlan} />,
    );
    expect(kills()).not.toBeNull();
  });

  test('a bearing seat can kill all the same', async () => {
    onScreen(
      await openForTest(),
      <BearingSeatView data={worksheetOf('bearing-seat')} plan={bearingSeatPlan} />,
    );
    expect(kills()).not.toBeNull();
  });

  test('a ring does not', async () => {
    onScreen(await openForTest(), <WorksheetForm data={worksheetOf('ring', answered)} kind="ring" />);
    expect(kills()).toBeNull();
  });
});
