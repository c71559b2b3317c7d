import { slidesFor, type LatheDial, type Slide } from '../../engine/cut/dial.ts';
import type { CutKind } from '../../engine/length/metal-on.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import type { Cut, KeptDial, KeptSlide, Machine } from '../../store/base/records.ts';

export const SLIDES: readonly Slide[] = ['cross', 'compound', 'lead-screw'];

export const SLIDE_NAMES: Readonly<Record<Slide, string>> = {
  cross: 'Cross slide',
  compound: 'Compound',
  'lead-screw': 'Lead-screw handwheel',
};

/** What is known of one slide's dial; nothing where nobody gave it. */
export function keptSlide(dial: KeptDial, slide: Slide): KeptSlide | undefined {
  if (slide === 'compound') return dial.compound;
  return slide === 'lead-screw' ? dial.leadScrew : dial;
}

/** One slide's dial, changed; what is known of the others stays. */
export function withSlide(dial: KeptDial, slide: Slide, kept: KeptSlide): KeptDial {
  if (slide === 'compound') return { ...dial, compound: kept };
  if (slide === 'lead-screw') return { ...dial, leadScrew: kept };
  const { marksPerTurn: _marks, backlash: _backlash, ...rest } = dial;
  return { ...rest, ...kept };
}

/** The slide that makes a cut at the lathe: the only one that can, else the one chosen for lengths, else still to choose. */
export function slideFor(of: CutKind, dial: KeptDial): Slide | 'to-choose' | undefined {
  const [first, ...others] = slidesFor(of);
  if (others.length === 0) return first;
  return dial.lengthsBy ?? 'to-choose';
}

/**
 * The dial that a cut is set on. Elsewhere than at the lathe no slide of the lathe makes it: its marks round say nothing
 * there, and a slide whose dial nobody gave is counted in the marks of the cross slide without its turns.
 */
export function dialFor(of: CutKind, dial: KeptDial, machine: Machine = 'lathe'): LatheDial {
  const { reads } = dial;
  const slide = machine === 'lathe' ? slideFor(of, dial) : undefined;
  const own = slide === undefined || slide === 'to-choose' ? undefined : keptSlide(dial, slide);
  return {
    reads,
    graduation: (own ?? dial).graduation.exact,
    ...(own?.marksPerTurn !== undefined && { marksPerTurn: own.marksPerTurn }),
    ...(own?.backlash && { backlash: own.backlash.exact }),
    ...(slide !== undefined && { slide }),
  };
}

/** The dial of a cut: of a thread fed in along its flank the compound's, standing at 29.5°. */
export function dialOfCut({ of, machine, threading }: CutOnDial, dial: KeptDial): LatheDial {
  if (machine !== 'lathe' || threading?.infeed !== 'flank') return dialFor(of, dial, machine);
  const { compound } = dial;
  return {
    reads: 'diameter',
    graduation: (compound ?? dial).graduation.exact,
    alongFlank: true,
    ...(compound?.marksPerTurn !== undefined && { marksPerTurn: compound.marksPerTurn }),
    ...(compound?.backlash && { backlash: compound.backlash.exact }),
    slide: 'compound',
  };
}

/** The unit that its marks count in. */
export function dialUnitOfCut({ of, machine, threading }: CutOnDial, dial: KeptDial): ShownUnit {
  if (machine !== 'lathe' || threading?.infeed !== 'flank') return dialUnitFor(of, dial, machine);
  return (dial.compound ?? dial).graduation.unit === 'mm' ? 'mm' : 'in';
}

type CutOnDial = Pick<Cut, 'of' | 'machine'> & {
  readonly threading?: Pick<NonNullable<Cut['threading']>, 'infeed'>;
};

/** The unit that its marks count in. */
export function dialUnitFor(of: CutKind, dial: KeptDial, machine: Machine = 'lathe'): ShownUnit {
  const slide = machine === 'lathe' ? slideFor(of, dial) : undefined;
  const own = slide === undefined || slide === 'to-choose' ? undefined : keptSlide(dial, slide);
  return (own ?? dial).graduation.unit === 'mm' ? 'mm' : 'in';
}
