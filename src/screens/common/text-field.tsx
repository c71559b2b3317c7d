import { useId } from 'preact/hooks';
import './text-field.css';

type TextFieldProps = {
  readonly label: string;
  readonly hint?: string;
  readonly text: string;
  /** More than a few words: all of it is seen, over as many lines as it takes. */
  readonly long?: boolean;
  readonly onText: (text: string) => void;
};

/** Words: names and notes. Sizes have the pad. */
export function TextField({ label, hint, text, long = false, onText }: TextFieldProps) {
  const id = useId();
  const field = {
    id,
    autocomplete: 'off',
    maxLength: long ? 1000 : 200,
    value: text,
    placeholder: hint,
  } as const;
  return (
    <div class="text-field">
      <label for={id}>{label}</label>
      {long ? (
        <textarea {...field} rows={2} onInput={(event) => onText(event.currentTarget.value)} />
      ) : (
        <input {...field} type="text" onInput={(event) => onText(event.currentTarget.value)} />
      )}
    </div>
  );
}
