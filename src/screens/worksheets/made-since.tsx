import { placesReplaced } from '../../engine/worksheets/spacer-stack/cuts-of-stack.ts';
import { capital } from '../../engine/length/say-words.ts';
import { figure, show } from '../../engine/length/show.ts';
import { passesOf } from '../../store/kept/cut-state.ts';
import { cutsOf } from '../../store/kept/cuts.ts';
import { typedSizeOf } from '../../store/kept/pass-tool.ts';
import { putInMade } from '../../store/kept/put-in-made.ts';
import type { Cut, CutPass, Id, Worksheet } from '../../store/base/records.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { Lead } from './lead.tsx';
import { givenOf } from './given-of.ts';
import type { WorksheetData } from './worksheet-data.ts';

/** A part that was made for a stack and isn't in it yet, with the parts it stands in for. */
export type MadeSince = {
  readonly name: string;
  readonly cut: Cut;
  readonly pass: CutPass;
  readonly gone: readonly Id[];
};

/** The last part that was made to size for this stack: one more spacer, or one in place of several. */
export function madeSince(
  worksheet: Worksheet,
  parts: readonly { readonly id: Id; readonly name: string; readonly count: number }[],
  cuts: readonly Cut[],
): MadeSince | undefined {
  return cuts
    .flatMap((cut): MadeSince[] => {
      const isIn = parts.some(({ name }) => name === cut.part);
      if (cut.worksheetId !== worksheet.id || cut.state !== 'to-size' || isIn) return [];
      const pass = passesOf(cut).findLast(([, { struckOut }]) => !struckOut)?.[1];
      const places = placesReplaced(cut.part, parts);
      return pass && places
        ? [{ name: cut.part, cut, pass, gone: places.flatMap((place) => parts[place]?.id ?? []) }]
        : [];
    })
    .toSorted((a, b) => b.pass.at - a.pass.at)[0];
}

/** What was made since: until it is in, the answer asks for it again. */
export function MadeSinceLead({ data }: { data: WorksheetData }) {
  const store = useStore();
  const { trouble, told } = useTold();
  const { job, worksheet, unit } = data;
  const cuts = useLive(`cuts/${job.id}`, ['cuts'], (from) => cutsOf(from, job.id));
  const made = cuts && madeSince(worksheet, givenOf(data).parts, cuts);
  if (!made) return null;
  const { name, cut, pass, gone } = made;
  const putIn = () => {
    const part = { name, count: 1, adjustable: true, size: typedSizeOf(cut, pass) };
    return told(putInMade(store, { worksheetId: worksheet.id, part, gone }), () =>
      announce(`${capital(name)} put in: ${show(pass.measured.exact, unit)}.`),
    );
  };
  return (
    <Lead label={`${capital(name)} made since`} figure={figure(pass.measured.exact, unit)} unit={unit}>
      <p>Worked out here without it still.</p>
      <Trouble bare>{trouble}</Trouble>
      <div class="worksheet-act not-printed">
        <Button onPress={() => putIn()}>
          {gone.length > 0 ? 'Put it in, in place of them' : 'Put it into the stack'}
        </Button>
      </div>
    </Lead>
  );
}
