import type { ComponentChildren } from 'preact';

export type SheetRow = {
  readonly key: string;
  readonly cells: readonly ComponentChildren[];
  /** Struck out: the line stays readable, and says why. */
  readonly struckOut?: string;
};

type SheetTableProps = {
  readonly heads: readonly string[];
  readonly rows: readonly SheetRow[];
  /** The first two columns are figures, which no line breaks. */
  readonly figures?: boolean;
};

/** A table of the sheet: columns on paper, wrapped lines on a phone. No row is cut in two by a page. */
export function SheetTable({ heads, rows, figures = false }: SheetTableProps) {
  return (
    <table class={figures ? 'sheet-table sheet-figures' : 'sheet-table'}>
      <thead>
        <tr>
          {heads.map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ key, cells, struckOut }) => (
          <tr key={key} data-struck={struckOut !== undefined}>
            {cells.map((cell, index) => (
              <td key={heads[index]} data-head={heads[index]}>
                {struckOut === undefined ? cell : <s>{cell}</s>}
                {struckOut !== undefined && index === cells.length - 1 && (
                  <span class="sheet-struck">{` struck out: ${struckOut}`}</span>
                )}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Names with what stands for them. */
export function SheetFacts({
  facts,
}: {
  readonly facts: readonly (readonly [name: string, value: ComponentChildren])[];
}) {
  return (
    <dl class="sheet-facts">
      {facts.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

/** A line to write on; what is known already stands on it. */
export function WriteLine({ label, known }: { readonly label: string; readonly known?: string | undefined }) {
  return (
    <p class="sheet-line">
      <span>{label}</span>
      {known !== undefined && <strong>{` ${known}`}</strong>}
    </p>
  );
}
