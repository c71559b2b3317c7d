import { showSize } from '../../engine/reading/say-readings.ts';
import { figure, show, type ShownUnit } from '../../engine/length/show.ts';
import { announce } from '../common/announce.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { Caution } from '../common/caution.tsx';
import { useStore } from '../common/store-context.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { giveWorksheet, type CutSince, type GapReadBefore, type PartCut } from './cut-since.ts';
import { Lead } from './lead.tsx';
import { isOfACheck, whereToRead } from './read-again.tsx';
import { givenOf } from './given-of.ts';
import { knownSize, type WorksheetData } from './worksheet-data.ts';
import { capital } from '../../engine/length/say-words.ts';

type SinceCutProps = { readonly data: WorksheetData; readonly since: CutSince };

/** What was cut since, in place of an answer that would ask for the same metal again. */
export function SinceCut({ data, since: { notGiven, gapReadBefore } }: SinceCutProps) {
  const { unit } = data;
  const [first] = notGiven;
  if (first)
    return (
      <Lead
        label={`${capital(first.name)} cut since`}
        figure={figure(first.pass.measured.exact, unit)}
        unit={unit}
      >
        <p>{`Worked out here with ${sizeHere(data, first)} still.`}</p>
      </Lead>
    );
  return gapReadBefore ? (
    <Caution heading="Read it again.">{sayReadBefore(gapReadBefore, data)}</Caution>
  ) : null;
}

/** The main action while that stands: the new size comes in, or the gap is read again. */
export function SinceCutAction({ data, since: { notGiven, gapReadBefore } }: SinceCutProps) {
  const store = useStore();
  const { trouble, told } = useTold();
  const { unit } = data;
  const [first] = notGiven;
  if (first) {
    const size = show(first.pass.measured.exact, unit);
    const give = () => told(giveWorksheet(store, data, first), () => announce(sayWorkedOutWith(first, unit)));
    return (
      <>
        <Trouble bare>{trouble}</Trouble>
        <Button kind="main" onPress={() => give()}>{`Work it out with ${size}`}</Button>
      </>
    );
  }
  return gapReadBefore ? (
    <LinkButton kind="main" href={whereToRead(data, gapReadBefore)}>
      {isOfACheck(data, gapReadBefore) ? 'To the check: read it again' : 'Read it again'}
    </LinkButton>
  ) : null;
}

/** The same for paper, where nothing can be pressed. */
export function saySinceCut({ data, since: { notGiven, gapReadBefore } }: SinceCutProps): readonly string[] {
  const { unit } = data;
  return [
    ...notGiven.map(
      (one) =>
        `${capital(one.name)} was cut to ${show(one.pass.measured.exact, unit)} since; worked out here with ${sizeHere(data, one)}.`,
    ),
    ...(gapReadBefore ? [sayReadBefore(gapReadBefore, data)] : []),
  ];
}

export function sayWorkedOutWith({ pass }: PartCut, unit: ShownUnit): string {
  return `Worked out with ${show(pass.measured.exact, unit)} now.`;
}

function sayReadBefore({ cut, why }: GapReadBefore, { worksheet, unit }: WorksheetData): string {
  const what = worksheet.kind === 'spacer-stack' ? 'The gap' : 'It';
  const done = cut ? `cut: ${cut.name} to ${show(cut.pass.measured.exact, unit)}` : `: ${why}`;
  return `${what} was read before this${cut ? ' ' : ''}${done}. Read it again.`;
}

function sizeHere(data: WorksheetData, { place }: PartCut): string {
  if ('sizeName' in place) {
    const onHand = knownSize(data, data.worksheet.sizes[place.sizeName]);
    return onHand ? showSize(onHand.most, data.unit) : 'none on hand';
  }
  const size = givenOf(data).parts.find(({ id }) => id === place.partId)?.size;
  return size ? showSize(size.most, data.unit) : 'no size';
}
