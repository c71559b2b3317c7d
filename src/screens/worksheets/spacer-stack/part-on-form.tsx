import { useState } from 'preact/hooks';
import { Button, LinkButton } from '../../common/button.tsx';
import { SizePad } from '../../common/size-pad.tsx';
import { troubleLine } from '../../common/told.tsx';
import { SHORT_PHONE, useMedia } from '../../common/use-media.ts';
import { hrefOf } from '../../address.ts';
import type { OnForm } from '../frame/field-entry.tsx';
import { ToolKey } from '../frame/size-on-form.tsx';
import { ReadKeys } from '../read-already.tsx';
import { ToolsForSize } from '../size-entry.tsx';
import { slipAroundPart } from '../slip-around.ts';
import { useTypedSize } from '../use-typed-size.tsx';
import type { WorksheetData } from '../worksheet-data.ts';
import { nextCount } from './part-names.ts';
import type { PartPath } from './part-path.ts';
import { PartRows } from './part-rows.tsx';
import { usePart } from './use-part.ts';
import './part-tape.css';

type PartOnFormProps = { readonly data: WorksheetData; readonly path: PartPath; readonly form: OnForm };

/** One part that is in the stack: its size on the pad, or all else about it. */
export function PartOnForm({ data, path, form }: PartOnFormProps) {
  switch (path.asked) {
    case 'size':
      return <SizeOfPart data={data} path={path} form={form} />;
    case 'leastLength':
      return <LeastLength data={data} path={path} form={form} />;
    case 'about':
      return form({ body: <PartRows data={data} path={path} /> });
    default:
      return path.asked satisfies never;
  }
}

function SizeOfPart({ data, path, form }: PartOnFormProps) {
  const { id, part } = path;
  const { worksheet, job, unit } = data;
  const act = usePart(data, path);
  const typed = useTypedSize({
    data,
    label: `${part.name}, length`,
    draftKey: `worksheet/${worksheet.id}/part/${id}/size`,
    measures: 'length',
    now: part.size,
    around: slipAroundPart(data),
    onSize: act.giveSize,
  });
  const { isReady, tool, choosing, size } = typed;
  const typing = { id, name: part.name, count: part.count, length: size };
  if (!isReady) return form({ body: <div class="size-entry" aria-busy="true" /> });
  if (choosing.isOpen) return form({ body: <ToolsForSize data={data} kind="length" typed={typed} /> });
  const about = { at: 'worksheet', jobId: job.id, worksheetId: worksheet.id, field: `part/${id}` } as const;
  const { message = troubleLine(act.trouble) } = typed.pad;
  return form({
    typing,
    ...(tool && { aside: <ToolKey tool={tool} unit={unit} onPress={choosing.open} /> }),
    body: (
      <div class="size-entry">
        <SizePad {...typed.pad} {...(message !== undefined && { message })}>
          <KeysOfPart part={part} act={act} about={hrefOf(about)} />
          <div class="size-entry-extras">
            <ReadKeys data={data} features={typed.fitting} onTake={typed.takeRead} onMeasure={act.measure} />
          </div>
        </SizePad>
      </div>
    ),
  });
}

type KeysOfPartProps = {
  readonly part: PartPath['part'];
  readonly act: ReturnType<typeof usePart>;
  readonly about: string;
};

/** What else is said of the part: over the digits, on a short phone in their place behind one key. */
function KeysOfPart({ part, act, about }: KeysOfPartProps) {
  const isShort = useMedia(SHORT_PHONE);
  const [isMore, setMore] = useState(false);
  const keys = (
    <>
      <Button label={`${part.count} of them`} onPress={() => act.change({ count: nextCount(part.count) })}>
        × {part.count}
      </Button>
      <Button chosen={part.adjustable} onPress={() => act.change({ adjustable: !part.adjustable })}>
        may be cut
      </Button>
      <Button label={`Take out ${part.name}`} onPress={act.takeOut}>
        take out
      </Button>
      <LinkButton href={about} label={`More about ${part.name}`}>
        more
      </LinkButton>
    </>
  );
  if (!isShort)
    return (
      <div class="part-chips" role="group" aria-label={part.name}>
        {keys}
      </div>
    );
  return (
    <>
      <div class="part-chips" data-more={isMore}>
        <Button
          label={isMore ? 'Back to the digits' : `What ${part.name} is`}
          onPress={() => setMore(!isMore)}
        >
          {isMore ? 'digits' : part.count > 1 ? `× ${part.count}` : 'more'}
        </Button>
      </div>
      {isMore && (
        <div class="part-names" role="group" aria-label={part.name}>
          {keys}
        </div>
      )}
    </>
  );
}

function LeastLength({ data, path: { id, part }, path, form }: PartOnFormProps) {
  const act = usePart(data, path);
  const typed = useTypedSize({
    data,
    label: `${part.name}, least length`,
    draftKey: `worksheet/${data.worksheet.id}/part/${id}/leastLength`,
    now: part.leastLength,
    around: slipAroundPart(data),
    onSize: act.giveLeast,
  });
  const { message = troubleLine(act.trouble) } = typed.pad;
  return form({
    body: (
      <div class="size-entry">
        <SizePad {...typed.pad} {...(message !== undefined && { message })} />
      </div>
    ),
  });
}
