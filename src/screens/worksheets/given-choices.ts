import type { AnyGiven } from '../../engine/worksheets/given.ts';
import type { Worksheet } from '../../store/base/records.ts';
import { dialFor } from '../common/slides.ts';
import { usualDial } from '../common/use-dial.ts';

/** What only choices say, where nothing else is known yet. */
export function givenChoices(choices: Worksheet['choices']): AnyGiven {
  return {
    size: () => undefined,
    exact: () => undefined,
    enteredIn: () => undefined,
    choice: (name) => choices[name],
    number: () => undefined,
    has: (name) => choices[name] !== undefined,
    parts: [],
    drawer: [],
    tools: [],
    dial: { reads: usualDial.reads, graduation: usualDial.graduation.exact },
    dialFor: (of) => dialFor(of, usualDial),
    readBefore: () => undefined,
    unit: 'in',
  };
}
