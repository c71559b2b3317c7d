import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import { go } from '../address.ts';
import { Button } from '../common/button.tsx';
import { useStore } from '../common/store-context.ts';

type FileKeyProps = {
  readonly kind?: 'main' | 'plain';
  readonly disabled?: boolean;
  readonly children: ComponentChildren;
};

/** The key that lets the fitter choose a backup or a job file; what is in it is shown on a screen of its own. */
export function FileKey({ kind = 'plain', disabled = false, children }: FileKeyProps) {
  const store = useStore();
  const input = useRef<HTMLInputElement>(null);
  const read = async (file: File) => {
    const { readFile } = await import('./restore-work.ts');
    void readFile(store, file);
    go({ at: 'restore' });
  };
  return (
    <>
      <Button kind={kind} disabled={disabled} onPress={() => input.current?.click()}>
        {children}
      </Button>
      <input
        ref={input}
        type="file"
        hidden
        accept=".jsonl,.txt,.json,text/plain,application/json"
        aria-label="Backup or job file"
        onChange={(event) => {
          const [chosen] = event.currentTarget.files ?? [];
          if (chosen) void read(chosen);
          // The same file may be chosen again.
          event.currentTarget.value = '';
        }}
      />
    </>
  );
}
