import type { AnyGiven } from '../../../engine/worksheets/given.ts';
import { stackQuestion } from '../../../engine/worksheets/spacer-stack/question.ts';

/** The same with sleeve and parts at the place that the verdict goes by, where one was read in several. */
export function atRulingPlaces(given: AnyGiven): AnyGiven {
  const question = stackQuestion(given);
  if (!question) return given;
  const { fixed, parts } = question;
  return {
    ...given,
    size: (name) => {
      const size = given.size(name);
      return size && name === 'fixed' ? { ...size, least: fixed.length } : size;
    },
    parts: given.parts.map((part, place) => {
      const most = parts[place]?.thickness;
      return part.size && most ? { ...part, size: { ...part.size, most } } : part;
    }),
  };
}
