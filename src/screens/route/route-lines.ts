import type { RoutePlace, RouteQuestion } from '../../engine/job/route.ts';
import { uncapital } from '../../engine/length/say-words.ts';
import { worksheetOf } from '../../engine/worksheets/all-worksheets.ts';
import type { Cut, ReadingRecord } from '../../store/base/records.ts';
import { countsStill, MACHINE_WORDS, MACHINES } from '../cuts/cut-words.ts';
import { dayWords } from '../common/day-words.ts';
import type { SheetData } from '../sheet/sheet-data.ts';

/** What is in each place of a job, in one line. */
export function routeLine(place: RoutePlace, data: SheetData, question: RouteQuestion): string {
  switch (place) {
    case 'measure':
      return measuredLine(data, question);
    case 'decide':
      return few(data.worksheets.map(({ kind }) => uncapital(worksheetOf(kind)?.name ?? 'newer worksheet')));
    case 'cut':
      return machinesLine(data.cuts.filter(countsStill));
    case 'get':
      return few(question.gets.filter(({ isThere }) => !isThere).map(({ what }) => what));
    case 'prove':
      return few(
        [
          ...question.checks.filter(({ found, older }) => found !== 'good' || older).map(({ name }) => name),
          ...question.unchecked.map(({ name }) => name),
        ].map(uncapital),
      );
    case 'put-together':
      return stepsLine(data);
    case 'sheet':
      return data.job.signedOff
        ? `signed off ${dayWords(data.job.signedOff.at)}`
        : 'signs off when all is proved';
    default:
      return place satisfies never;
  }
}

const SHOWN = 3;

/** The first few by name, and how many more there are; what is the same is named once. */
function few(names: readonly string[]): string {
  const once = [...new Set(names)];
  const more = once.length - SHOWN;
  return [...once.slice(0, SHOWN), ...(more > 0 ? [`${more} more`] : [])].join(' · ');
}

function measuredLine({ readings }: SheetData, { sizes }: RouteQuestion): string {
  if (sizes.length === 0) return '';
  const byCaliper = sizes.filter(({ id }) => isByCaliperOnly(readings.filter((one) => one.featureId === id)));
  const ofAnother = sizes.filter((one) => one.ofAnother).length;
  return [
    sizes.length === 1 ? '1 size' : `${sizes.length} sizes`,
    ...(ofAnother === 0 ? [] : [`${ofAnother} of another one`]),
    ...(byCaliper.length === 0 ? [] : [`${byCaliper.length} by caliper only`]),
  ].join(', ');
}

function isByCaliperOnly(readings: readonly ReadingRecord[]): boolean {
  const standing = readings.filter(({ struckOut }) => !struckOut);
  return standing.length > 0 && standing.every(({ tool }) => tool.kind.includes('caliper'));
}

function machinesLine(cuts: readonly Cut[]): string {
  return MACHINES.flatMap((machine) => {
    const count = cuts.filter((cut) => cut.machine === machine).length;
    return count === 0 ? [] : [`${count} at the ${MACHINE_WORDS[machine]}`];
  }).join(', ');
}

function stepsLine({ steps }: SheetData): string {
  const lockers = steps.filter(({ locker }) => locker !== undefined).length;
  const torques = steps.filter(({ torque }) => torque !== undefined).length;
  return [
    ...(lockers === 0 ? [] : [`${lockers} thread locker`]),
    ...(torques === 0 ? [] : [`${torques} torque`]),
  ].join(', ');
}
