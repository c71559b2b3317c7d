import type { ComponentChildren } from 'preact';
import { figure, type ShownUnit } from '../../../engine/length/show.ts';
import { Button } from '../../common/button.tsx';
import { SizePad } from '../../common/size-pad.tsx';
import { SHORT_PHONE, useMedia } from '../../common/use-media.ts';
import { ReadKeys } from '../read-already.tsx';
import { BelowZero, ToolsForSize } from '../size-entry.tsx';
import { toolKeyWords, toolOfSizeWords, type ToolOfSize } from '../tool-of-size.tsx';
import { useTypedSize, type TypedSizeAsked } from '../use-typed-size.tsx';
import type { OnForm } from './field-entry.tsx';

type SizeOnFormProps = TypedSizeAsked & {
  readonly onMeasure?: (() => unknown) | undefined;
  /** Another field that gives it too: what is half typed is taken before it is gone to. */
  readonly givenBy?: { readonly key: string; readonly go: () => void } | undefined;
  /** Further keys beside the pad. */
  readonly children?: ComponentChildren;
  readonly form: OnForm;
};

/** A size typed into the drawing: the tool it counts with stands in the heading, what was read already beside the pad. */
export function SizeOnForm({ onMeasure, givenBy, children, form, ...asked }: SizeOnFormProps) {
  const { data } = asked;
  const typed = useTypedSize(asked);
  const { isReady, tool, choosing, fitting, sign } = typed;
  const isShort = useMedia(SHORT_PHONE);
  if (!isReady) return form({ body: <div class="size-entry" aria-busy="true" /> });
  if (choosing.isOpen)
    return form({ body: <ToolsForSize data={data} kind={asked.measures} typed={typed} /> });
  // Beside what was read and the way to measure; three don't stand next to the commit key of a short phone.
  const isFolded = isShort && [sign, givenBy, children].some((key) => key !== undefined && key !== false);
  const hasKeys = onMeasure ?? givenBy ?? sign ?? children;
  return form({
    ...(tool && { aside: <ToolKey tool={tool} unit={data.unit} onPress={choosing.open} /> }),
    body: (
      <div class="size-entry">
        <SizePad {...typed.pad}>
          {(hasKeys !== undefined || fitting.length > 0) && (
            <div class="size-entry-extras">
              <ReadKeys
                data={data}
                features={fitting}
                onTake={typed.takeRead}
                onMeasure={onMeasure}
                isFolded={isFolded}
              />
              <BelowZero sign={sign} />
              {givenBy && <GivenByKey typed={typed} givenBy={givenBy} />}
              {children}
            </div>
          )}
        </SizePad>
      </div>
    ),
  });
}

type GivenByProps = {
  readonly typed: ReturnType<typeof useTypedSize>;
  readonly givenBy: NonNullable<SizeOnFormProps['givenBy']>;
};

function GivenByKey({ typed: { pad }, givenBy: { key, go } }: GivenByProps) {
  const takeAndGo = async () => {
    const isTaken = pad.half.typed === '' || (await pad.commit.onPress('finger')) === true;
    if (isTaken) go();
  };
  return <Button onPress={takeAndGo}>{key}</Button>;
}

type ToolKeyProps = { readonly tool: ToolOfSize; readonly unit: ShownUnit; readonly onPress: () => void };

/** The tool that counts for this size, in the heading: one press opens the choice. */
export function ToolKey({ tool, unit, onPress }: ToolKeyProps) {
  const proves = tool.by === 'tool' ? ` ±${figure(tool.tool.mpe, unit)}` : '';
  return (
    <Button
      label={`Read with: ${toolKeyWords(tool)}${proves}, ${toolOfSizeWords(tool, unit)}`}
      onPress={onPress}
    >
      <span class="form-tool">
        {toolKeyWords(tool)} {proves !== '' && <strong>{proves.trim()}</strong>}
      </span>
    </Button>
  );
}
