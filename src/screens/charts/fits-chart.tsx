import { useState } from 'preact/hooks';
import { ansiClasses } from '../../engine/fit/fits-ansi.ts';
import { fitLimits, type FitLimits } from '../../engine/fit/fits.ts';
import { lengthOf } from '../../engine/length/length.ts';
import { sayClearance, sayFitClass, sayLimits } from '../../engine/fit/say-fit.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import { usualIsoFits } from '../../engine/fit/tables/joint-classes.ts';
import { listed } from '../../engine/length/say-words.ts';
import { Button } from '../common/button.tsx';
import { Row } from '../common/row.tsx';
import { useAnswerInView } from './use-answer-in-view.ts';
import '../worksheets/input-rows.css';
import '../worksheets/thread-picker.css';

type System = {
  readonly unit: ShownUnit;
  readonly heading: string;
  readonly sizes: readonly string[];
  readonly classes: readonly string[];
};

/** Sizes at one press: those of common pins, bearings and shafts. Any other size has its own worksheet, Fit. */
const SYSTEMS: readonly System[] = [
  {
    unit: 'in',
    heading: 'Inch, ANSI B4.1',
    sizes: '1/4 5/16 3/8 7/16 1/2 9/16 5/8 3/4 7/8 1 1-1/4 1-1/2 2 2-1/2 3'.split(' '),
    classes: ansiClasses,
  },
  {
    unit: 'mm',
    heading: 'Metric, ISO 286',
    sizes: '5 6 8 10 12 15 17 20 25 30 35 40 50 60 80'.split(' '),
    classes: usualIsoFits,
  },
];

/** Every class of fit at one size: what it is for, hole and pin, and the clearance it leaves. */
export function FitsChart() {
  const [chosen, setChosen] = useState<Chosen>();
  const system = SYSTEMS.find(({ unit }) => unit === chosen?.unit);
  // The sizes stand under each other too: pressed far down, one opens its list at the top.
  const chart = useAnswerInView(chosen && `${chosen.size} ${chosen.unit}`);
  return (
    <main aria-label="Fits" ref={chart}>
      <h1 class="charts-heading">{chosen ? `Fits, ${chosen.size} ${chosen.unit}` : 'Fits'}</h1>
      {chosen && system ? (
        <>
          <div class="charts-choice">
            <Button onPress={() => setChosen(undefined)}>Another size</Button>
          </div>
          <FitRows system={system} size={chosen.size} />
        </>
      ) : (
        <SizeChoice onSize={setChosen} />
      )}
      <p class="charts-note">
        A size that isn’t here, or two measured parts against a class: the Fit worksheet of a job.
      </p>
    </main>
  );
}

type Chosen = { readonly unit: ShownUnit; readonly size: string };

function SizeChoice({ onSize }: { onSize: (chosen: Chosen) => void }) {
  return (
    <>
      <p class="charts-note">Press the size that hole and pin share.</p>
      <div class="thread-picker">
        {SYSTEMS.map(({ unit, heading, sizes }) => (
          <section key={unit}>
            <h2>{heading}</h2>
            <div class="thread-picker-sizes" role="group" aria-label={`${heading}, sizes`}>
              {sizes.map((size) => (
                <Button key={size} onPress={() => onSize({ unit, size })}>
                  {size}
                </Button>
              ))}
            </div>
          </section>
        ))}
      </div>
    </>
  );
}

function FitRows({ system: { unit, classes }, size }: { system: System; size: string }) {
  const nominal = lengthOf(`${size} ${unit}`);
  const fits = classes.flatMap((fitClass) => {
    const result = fitLimits({ fitClass, nominal });
    return result.ok ? [result.value] : [];
  });
  return (
    <section class="input-rows" aria-live="polite">
      <h2>{`At ${size} ${unit}`}</h2>
      <ul>
        {fits.map((fit) => (
          <li key={fit.fitClass}>
            <Row
              title={`${fit.fitClass}: ${sayClearance(fit, unit)}`}
              detail={`${sayFitClass(fit)}. Hole ${sayLimits(fit.hole, unit)}, pin ${sayLimits(fit.pin, unit)}.`}
            />
          </li>
        ))}
      </ul>
      <p class="charts-note">{sourcesOf(fits)}</p>
    </section>
  );
}

/** The standard once, and which of its rows are from memory. */
function sourcesOf(fits: readonly FitLimits[]): string {
  const standards = [...new Set(fits.map(({ standard }) => standard))];
  const fromMemory = fits.filter(({ isFromMemory }) => isFromMemory).map(({ fitClass }) => fitClass);
  return [...standards, ...(fromMemory.length === 0 ? [] : [`from memory: ${listed(fromMemory)}`])].join(
    '; ',
  );
}
