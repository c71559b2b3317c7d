import type { ComponentChildren } from 'preact';
import { Button } from '../common/button.tsx';
import { SizePad } from '../common/size-pad.tsx';
import { ReadAlready } from './read-already.tsx';
import { ToolOfSizeChoice, toolOfSizeWords } from './tool-of-size.tsx';
import { useTypedSize, type TypedSize, type TypedSizeAsked } from './use-typed-size.tsx';
import type { WorksheetData } from './worksheet-data.ts';
import './size-entry.css';

type SizeEntryProps = TypedSizeAsked & {
  /** Measure it now: makes a feature for it and opens the pad. */
  readonly onMeasure?: () => unknown;
  readonly children?: ComponentChildren;
};

/** A size for a worksheet: the job's readings of that kind to choose from, or the pad. Nothing of it stays for the next size. */
export function SizeEntry(props: SizeEntryProps) {
  return <OneSize key={props.draftKey} {...props} />;
}

function OneSize({ onMeasure, children, ...asked }: SizeEntryProps) {
  const { data } = asked;
  const typed = useTypedSize(asked);
  const { isReady, tool, fitting, choosing, sign } = typed;
  if (!isReady) return <div class="size-entry" aria-busy="true" />;
  if (choosing.isOpen) return <ToolsForSize data={data} kind={asked.measures} typed={typed} />;
  return (
    <div class="size-entry">
      {!typed.isAsking && (fitting.length > 0 || onMeasure) && (
        <ReadAlready data={data} features={fitting} onTake={typed.takeRead} onMeasure={onMeasure} />
      )}
      <SizePad {...typed.pad}>
        {(tool !== undefined || sign !== undefined || children !== undefined) && (
          <div class="size-entry-extras">
            <BelowZero sign={sign} />
            {tool && (
              <Button label={`Read with: ${toolOfSizeWords(tool, data.unit)}`} onPress={choosing.open}>
                {toolOfSizeWords(tool, data.unit)}
              </Button>
            )}
            {children}
          </div>
        )}
      </SizePad>
    </div>
  );
}

export function BelowZero({ sign }: { sign: TypedSize['sign'] | undefined }) {
  return (
    sign && (
      <Button chosen={sign.isBelow} onPress={sign.turn}>
        Below zero
      </Button>
    )
  );
}

type ToolsProps = {
  readonly data: WorksheetData;
  readonly kind: TypedSizeAsked['measures'];
  readonly typed: TypedSize;
};

/** In place of the pad: which tool read this size. */
export function ToolsForSize({ data, kind, typed: { tool, size, choosing } }: ToolsProps) {
  return (
    <div class="size-entry">
      {kind && tool && (
        <ToolOfSizeChoice
          data={data}
          kind={kind}
          size={size}
          tool={tool}
          onBack={choosing.close}
          onChoose={choosing.choose}
        />
      )}
    </div>
  );
}
