import { cleanup, render, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { typedEstimate } from '../../../src/engine/reading/estimate.ts';
import { lengthOf } from '../../../src/engine/length/length.ts';
import { threadInsert } from '../../../src/engine/worksheets/thread-insert/thread-insert.ts';
import { threadNamed } from '../../../src/engine/thread/threads.ts';
import { InsertDrawing } from '../../../src/screens/worksheets/insert-drawing.tsx';

afterEach(cleanup);

/** The insert of a 7/16-20 bolt in aluminium, in a hole of this size or in solid metal. */
function draw(hole?: string) {
  const thread = threadNamed('7/16-20 UNF');
  if (!thread) throw new Error('no such thread');
  const estimate = hole === undefined ? undefined : typedEstimate(lengthOf(hole));
  const answer = threadInsert({
    thread,
    metal: 'aluminium',
    ...(estimate && { hole: { tightest: estimate, loosest: estimate } }),
  });
  if (!answer.ok) throw new Error(answer.refusal.code);
  const { container } = render(<InsertDrawing answer={answer.value} thread="7/16-20 UNF" unit="in" />);
  const brass = [...container.querySelectorAll('circle.drawing-changes')];
  return {
    spoken: screen.getByRole('img').getAttribute('aria-label'),
    text: container.textContent,
    brassRadii: brass.map((circle) => Number(circle.getAttribute('r'))),
    circles: container.querySelectorAll('circle').length,
  };
}

// Least major of the insert's thread: 7/16 + 1.299038 / 20 = .4375 + .06495 = .5025 (ASME B18.29.1, note 3). Least
// minor: .4375 + .216506 / 20 = .4483. The usual drill is 29/64 = .4531.
describe('the hole of a wire insert, end-on', () => {
  test('is spoken with the hole as it is, the drill and the thread', () => {
    expect(draw('.4437 in').spoken).toBe(
      '7/16-20 UNF: hole now .4437, drill 29/64, tapped to .5025 at least.',
    );
  });

  test('in solid metal says that there is no hole yet', () => {
    const { spoken, text } = draw();
    expect(spoken).toBe('7/16-20 UNF: drill 29/64, tapped to .5025 at least.');
    expect(text).toContain('hole nownone');
  });

  test('has the drill in brass, to the scale of the thread around it', () => {
    const { brassRadii, text } = draw('.4437 in');
    expect(text).toContain('drill 29/64.4531');
    // 82 · .453125 / .502452 = 73.95
    expect(brassRadii).toHaveLength(1);
    expect(brassRadii[0]).toBeCloseTo(73.95, 2);
  });

  test('large enough already has itself in brass, and no drill', () => {
    // .4500 exactly known lies above the least minor .4483.
    const { brassRadii, text } = draw('.4500 in');
    expect(text).toContain('ready for the tap.450');
    // 82 · .45 / .502452 = 73.44
    expect(brassRadii[0]).toBeCloseTo(73.44, 2);
  });
});
