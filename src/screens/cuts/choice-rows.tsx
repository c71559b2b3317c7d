import { Row } from '../common/row.tsx';
import '../readings/tool-choice.css';

type ChoiceRowsProps<Id extends string> = {
  readonly options: readonly { readonly id: Id; readonly words: string; readonly more?: string }[];
  readonly chosen?: string | undefined;
  readonly onChoose: (id: Id) => void;
};

/** A few plain choices, one press each; the one in force says so. */
export function ChoiceRows<Id extends string>({ options, chosen, onChoose }: ChoiceRowsProps<Id>) {
  return (
    <ul>
      {options.map(({ id, words, more }) => (
        <li key={id}>
          <Row
            title={words}
            {...(more !== undefined && { detail: more })}
            mark={id === chosen ? <span class="row-now">chosen</span> : undefined}
            onPress={() => onChoose(id)}
          />
        </li>
      ))}
    </ul>
  );
}
