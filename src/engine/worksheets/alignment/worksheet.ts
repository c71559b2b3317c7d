import { marked } from '../../length/decimal-text.ts';
import { figure } from '../../length/show.ts';
import { worksheet } from '../worksheet.ts';
import { alignmentAccount } from './account.ts';
import { alignment } from './alignment.ts';
import { checksOfAlignment } from './checks-of-alignment.ts';
import { alignmentFields } from './fields.ts';
import {
  alignmentFieldsFor,
  alignmentNeeds,
  alignmentQuestion,
  alignmentWanted,
  linedUp,
  type AlignmentGiven,
} from './question.ts';
import { sayAlignmentRefusal, sayTenths } from './say-alignment.ts';
import { stepsOfAlignment } from './steps-of-alignment.ts';
import {
  USUAL_LEAN_WITHIN_DEGREES,
  usualDiagonal,
  usualLead,
  usualLeanDegrees,
  usualToe,
  usualTrailerToe,
} from './tables/alignment-practice.ts';

/** An outfit's or a trailer's wheels in line: what is moved, and by how much. */
export const alignmentWorksheet = worksheet({
  name: 'Alignment',
  asks: 'Outfit or trailer: toe-in, lead, lean-out, axle square: what do I move?',
  fields: alignmentFields,
  fieldsFor: alignmentFieldsFor,
  needs: alignmentNeeds,
  starts: {},
  lacks: 'Choose outfit or trailer, then give its sizes.',
  canKill: true,
  question: alignmentQuestion,
  answer: alignment,
  sayRefusal: sayAlignmentRefusal,
  usual: usualWords,
  assumed: (given) => (linedUp(given) === 'outfit' ? [{ field: 'toeLeast', words: 'usual toe-in' }] : []),
  account: alignmentAccount,
  checks: ({ question, answer, unit }) => checksOfAlignment(question, answer, unit),
  steps: ({ question, answer, unit }) => stepsOfAlignment(question, answer, unit),
  wanted: (given, _kind, field) => alignmentWanted(given, field),
  demo: {
    title: 'Sidecar lined up',
    sizes: {
      toeFront: '41.000 in',
      toeRear: '41.125 in',
      apart: '60 in',
      fittings: '22 in',
      lead: '6.5 in',
      strutUp: '18 in',
      strutAcross: '20 in',
    },
    choices: { of: 'outfit', lean: '0', adjuster: 'turnbuckle', thread: '1/2-20 UNF' },
  },
});

const NOT_READ = 'not read; then it is not judged';
const NO_SOURCE = '(common practice, no source)';

function usualWords(given: AlignmentGiven): Readonly<Partial<Record<keyof typeof alignmentFields, string>>> {
  const { unit } = given;
  const usual = (size: Parameters<typeof figure>[0]) => `usual: ${figure(size, unit)} ${NO_SOURCE}`;
  const toe = (linedUp(given) === 'outfit' ? usualToe : usualTrailerToe)[unit];
  return {
    moves: 'usual: the front one',
    adjuster: 'usual: shims, or a slide in its clamp',
    thread: 'not given; then no turns',
    toeLeast: usual(toe.lower),
    toeMost: usual(toe.upper),
    lead: NOT_READ,
    leadLeast: usual(usualLead[unit].lower),
    leadMost: usual(usualLead[unit].upper),
    lean: NOT_READ,
    leanWithin: `usual: ${marked(USUAL_LEAN_WITHIN_DEGREES)}°, a digital level ${NO_SOURCE}`,
    leanLeast: `usual: ${sayTenths(usualLeanDegrees.lower)} ${NO_SOURCE}`,
    leanMost: `usual: ${sayTenths(usualLeanDegrees.upper)} ${NO_SOURCE}`,
    strutUp: 'not given; then the strut is not worked out',
    strutAcross: 'not given; then the strut is not worked out',
    wheelTrack: 'not read',
    trackWanted: 'none wanted',
    seats: 'not given; then at the axle’s ends',
    diagonalWithin: usual(usualDiagonal[unit]),
    sideLeft: 'not read; the axle is taken as in the middle',
    sideRight: 'not read; the axle is taken as in the middle',
    toeFront: NOT_READ,
    toeRear: NOT_READ,
    apart: NOT_READ,
    flange: 'not given; then no shim',
    axlesLeft: 'one axle',
    axlesRight: 'one axle',
  };
}
