import { Caution } from './caution.tsx';

/** Wherever a hole is to be drilled, reamed or tapped. */
export function HoleCaution() {
  return (
    <Caution heading="Before you drill, ream or tap:">
      clamp the part; no gloves, no loose sleeves; guard on, eyes protected, chuck key out.
    </Caution>
  );
}
