import { inShopWords } from '../../engine/length/american-words.ts';
import { useState } from 'preact/hooks';
import { mostOf } from '../../engine/cut/cut-speed.ts';
import { metresPerMinute, spindleRpm } from '../../engine/cut/cutting-speed.ts';
import { lengthOf } from '../../engine/length/length.ts';
import { materialsFor, type Figure, type Material } from '../../engine/material/tables/materials.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import { Button } from '../common/button.tsx';
import { Row } from '../common/row.tsx';
import { useLathe, useShownUnit } from '../common/use-settings.ts';
import '../worksheets/input-rows.css';

type Line = { readonly figure: Figure | undefined; readonly unit: string };
type Property = {
  readonly name: string;
  readonly title: string;
  readonly linesOf: (material: Material, shown: ShownUnit, mostRpm: number) => readonly Line[];
};

const BARS: Readonly<Record<ShownUnit, string>> = { in: '1 in', mm: '25 mm' };

/** A surface speed, and what it comes to on the headstock for a bar of a common size: never more than a chuck is turned. */
function speedLines(speed: Figure | undefined, shown: ShownUnit, mostRpm: number): readonly Line[] {
  const bar = BARS[shown];
  const rpm = (feet: number) => spindleRpm({ surfaceFeetPerMinute: feet, diameter: lengthOf(bar) });
  const perMinute: Line =
    shown === 'in'
      ? { figure: speed, unit: 'ft/min' }
      : { figure: speed && turnedInto(metresPerMinute, asPrinted(speed)), unit: 'm/min' };
  const turned = speed && turnedInto((feet) => Math.min(rpm(feet), mostRpm), speed);
  const isHeld = speed !== undefined && rpm(speed.high) > mostRpm;
  return [perMinute, { figure: turned, unit: `rpm at ${bar}${isHeld ? ', the chuck’s most' : ''}` }];
}

function turnedInto(into: (feet: number) => number, speed: Figure): Figure {
  return { ...speed, low: Math.round(into(speed.low)), high: Math.round(into(speed.high)) };
}

// The books print feet a minute, and their notes go by them.
function asPrinted(speed: Figure): Figure {
  return { ...speed, source: `${speed.source}: ${spread(speed)} ft/min` };
}

const PROPERTIES: readonly Property[] = [
  {
    name: 'Expansion',
    title: 'Expansion, millionths a degree',
    linesOf: (one) => [
      { figure: one.expansionPerMillionCelsius, unit: 'per °C' },
      { figure: one.expansionPerMillionFahrenheit, unit: 'per °F' },
    ],
  },
  {
    name: 'Stiffness',
    title: 'Modulus of elasticity',
    linesOf: (one) => [
      { figure: one.modulusGpa, unit: 'GPa' },
      { figure: one.modulusMsi, unit: 'Msi' },
    ],
  },
  {
    name: 'High-speed steel',
    title: 'Turning with high-speed steel',
    linesOf: (one, shown, most) => speedLines(one.speedHssSfm, shown, most),
  },
  {
    name: 'Carbide',
    title: 'Turning with carbide',
    linesOf: (one, shown, most) => speedLines(one.speedCarbideSfm, shown, most),
  },
  {
    name: 'Strength',
    title: 'Tensile strength, then yield',
    linesOf: (one) => [
      { figure: one.tensileMpa, unit: 'MPa' },
      { figure: one.yieldMpa, unit: 'MPa yield' },
    ],
  },
];

/** One property of every material at a glance, so that two can be compared. */
export function MaterialsChart() {
  const [name, setName] = useState(PROPERTIES[0]?.name ?? '');
  const property = PROPERTIES.find((one) => one.name === name);
  return (
    <main aria-label="Materials">
      <h1 class="charts-heading">Materials</h1>
      <div class="charts-choice" role="group" aria-label="Which figure">
        {PROPERTIES.map((one) => (
          <Button key={one.name} chosen={one.name === name} onPress={() => setName(one.name)}>
            {one.name}
          </Button>
        ))}
      </div>
      {property && <PropertyRows property={property} />}
    </main>
  );
}

function PropertyRows({ property }: { property: Property }) {
  const shown = useShownUnit();
  const most = mostOf(useLathe() ?? {}).rpm;
  return (
    <section class="input-rows" aria-live="polite">
      <h2>{property.title}</h2>
      <ul>
        {materialsFor(shown).map((material) => {
          const lines = property.linesOf(material, shown, most);
          return (
            <li key={material.id}>
              <Row
                title={inShopWords(material.name, shown)}
                detail={sourceOf(lines)}
                figure={lines.map(({ figure, unit }) =>
                  figure ? <div key={unit}>{`${spread(figure)} ${unit}`}</div> : null,
                )}
              />
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function spread({ low, high }: Figure): string {
  return low === high ? String(low) : `${low}–${high}`;
}

function sourceOf(lines: readonly Line[]): string {
  const [first] = lines.flatMap(({ figure }) => figure ?? []);
  if (!first) return 'not found';
  const note = first.note === undefined ? '' : `; ${first.note}`;
  return `${first.source}${first.basis === 'memory' && !/memory/.test(first.source) ? ', from memory, not looked up' : ''}${note}`;
}
