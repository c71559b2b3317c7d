type DrawingLabelProps = {
  readonly y: number;
  readonly name: string;
  readonly size: string;
  /** Brass, for the one thing that changes. */
  readonly changes?: boolean;
};

/** A size beside a drawing of a hole: its name, and its figure under it. */
export function DrawingLabel({ y, name, size, changes = false }: DrawingLabelProps) {
  const colour = changes ? 'drawing-changes-text' : undefined;
  return (
    <>
      <text class={colour} x="222" y={y - 20} style={{ fontWeight: 400 }}>
        {name}
      </text>
      <text class={colour} x="222" y={y + 4} style={{ fontSize: '23px' }}>
        {size}
      </text>
    </>
  );
}
