import { show } from '../../../engine/length/show.ts';
import type { PartsField } from '../../../engine/worksheets/fields.ts';
import { addPart } from '../../../store/kept/add-part.ts';
import type { SizeInput } from '../../../store/base/records.ts';
import { setChoice, worksheetsOf } from '../../../store/kept/worksheets.ts';
import { go, goInstead } from '../../address.ts';
import { announce } from '../../common/announce.ts';
import { SizePad } from '../../common/size-pad.tsx';
import { useLive, useStore } from '../../common/store-context.ts';
import { troubleLine, useTold } from '../../common/told.tsx';
import { useTextDraft } from '../../common/use-draft.ts';
import type { OnForm } from '../frame/field-entry.tsx';
import { ToolKey } from '../frame/size-on-form.tsx';
import { NEXT_PART } from '../frame/typed-part.ts';
import { featureFor } from '../measure-for.ts';
import { ReadKeys } from '../read-already.tsx';
import { ToolsForSize } from '../size-entry.tsx';
import { slipAroundPart } from '../slip-around.ts';
import { useTypedSize } from '../use-typed-size.tsx';
import type { WorksheetData } from '../worksheet-data.ts';
import { PartChips } from './part-chips.tsx';
import { namesToChoose, nextName, readWhat, whatText } from './part-names.ts';

type PartTapeProps = {
  readonly data: WorksheetData;
  readonly field: PartsField;
  readonly form: OnForm;
};

/** The parts of a stack, put in like a tape: digits, Next part, digits, Next part, That’s all. */
export function PartTape({ data, field, form }: PartTapeProps) {
  const { worksheet, job, unit } = data;
  const draftKey = `worksheet/${worksheet.id}/parts`;
  const what = useTextDraft(`${draftKey}/what`);
  const chosen = readWhat(what.text);
  const parts = Object.values(worksheet.parts);
  const tape = useTape(data, field, { draftKey, onKept: what.clear });
  const stacks = useLive(`worksheets/${job.id}`, ['worksheets'], (from) => worksheetsOf(from, job.id));
  // The keys stay where they are while this stack is filled.
  const others = (stacks ?? []).filter(({ id }) => id !== worksheet.id);
  const name = nextName(chosen.name, parts);
  const typed = useTypedSize({
    data,
    label: `${field.ask}: ${name}`,
    draftKey,
    measures: field.measures,
    around: slipAroundPart(data),
    onSize: async (size) => tape.put({ ...chosen, name }, size, false),
    onOfList: async (size, isLast) => tape.put({ ...chosen, name }, size, isLast),
    ...(parts.length > 0 && { onNext: tape.finish }),
  });
  const { isReady, tool, choosing, size } = typed;
  const typing = { id: NEXT_PART, name, count: chosen.count, length: size };
  if (!isReady) return form({ typing, body: <div class="size-entry" aria-busy="true" /> });
  if (choosing.isOpen)
    return form({ typing, body: <ToolsForSize data={data} kind={field.measures} typed={typed} /> });
  const canFinish = parts.length > 0 || typed.isTyped;
  const { message = troubleLine(tape.trouble) } = typed.pad;
  return form({
    typing,
    ...(tool && { aside: <ToolKey tool={tool} unit={unit} onPress={choosing.open} /> }),
    body: (
      <div class="size-entry">
        <SizePad
          {...typed.pad}
          commit={{ ...typed.pad.commit, text: 'Next part' }}
          {...(canFinish && {
            beside: { text: 'That’s all', onPress: typed.isTyped ? typed.takeLast : tape.finish },
          })}
          {...(message !== undefined && { message })}
        >
          <PartChips
            jobId={job.id}
            names={namesToChoose(others, field.names)}
            what={chosen}
            onWhat={(next) => what.change(whatText(next))}
          />
          <div class="size-entry-extras">
            <ReadKeys
              data={data}
              features={typed.fitting.filter(({ id }) => !isIn(data, id))}
              onTake={typed.takeRead}
              onMeasure={async () => tape.measure({ ...chosen, name })}
            />
          </div>
        </SizePad>
      </div>
    ),
  });
}

type Kept = { readonly draftKey: string; readonly onKept: () => void };
type Called = { readonly name: string; readonly count: number };

/** What the keys of the tape do. */
function useTape(data: WorksheetData, field: PartsField, { draftKey, onKept }: Kept) {
  const store = useStore();
  const { trouble, told } = useTold();
  const { worksheet, job } = data;
  const here = { at: 'worksheet', jobId: job.id, worksheetId: worksheet.id } as const;
  // The form itself asks for the next part: its address has no field in it.
  const leave = () => {
    if (location.hash.split('/').length > 5) goInstead(here);
  };
  const put = ({ name, count }: Called, size: SizeInput, isLast: boolean) => {
    const called = size.from === 'feature' ? nameOfRead(data, name, size.featureId) : name;
    const part = { name: called, count, adjustable: false, size };
    const draftKeys = [draftKey, `${draftKey}/what`];
    return told(addPart(store, { worksheetId: worksheet.id, part, isLast, draftKeys }), () => {
      onKept();
      announce(
        size.from === 'typed' ? `${called} ${show(size.exact, data.unit)} put in.` : `${called} put in.`,
      );
      if (isLast) leave();
    });
  };
  const finish = () => {
    const isOpen = worksheet.choices['parts'] === 'open';
    return isOpen ? told(setChoice(store, worksheet.id, 'parts', 'all'), leave) : leave();
  };
  const measure = (called: Called) =>
    told(featureFor(store, data, { kind: field.measures, name: called.name }), async ({ id: featureId }) => {
      const isPut = await put(called, { from: 'feature', featureId }, false);
      if (isPut) go({ at: 'feature', jobId: job.id, featureId, choosing: `for/${worksheet.id}` });
    });
  return { put, finish, measure, trouble };
}

/** What was read under a name of its own keeps it, where none was chosen. */
function nameOfRead({ features, worksheet }: WorksheetData, name: string, featureId: string): string {
  const feature = features.find(({ id }) => id === featureId);
  return feature && /^part \d+$/.test(name) ? nextName(feature.name, Object.values(worksheet.parts)) : name;
}

/** A reading that the stack stands on already is no other part of it. */
function isIn({ worksheet: { sizes, parts } }: WorksheetData, featureId: string): boolean {
  return [...Object.values(sizes), ...Object.values(parts).map(({ size }) => size)].some(
    (input) => input?.from === 'feature' && input.featureId === featureId,
  );
}
