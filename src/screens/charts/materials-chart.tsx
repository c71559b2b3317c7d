import { useState } from 'preact/hooks';
import { spindleRpm } from '../../engine/cutting-speed.ts';
import { lengthOf } from '../../engine/length.ts';
import { materials, type Figure, type Material } from '../../engine/tables/materials.ts';
import { Button } from '../common/button.tsx';
import { Row } from '../common/row.tsx';
import '../worksheets/input-rows.css';

type Line = { readonly figure: Figure | undefined; readonly unit: string };
type Property = {
  readonly name: string;
  readonly title: string;
  readonly linesOf: (material: Material) => readonly Line[];
};

const ONE_INCH = lengthOf('1 in');

/** What a surface speed comes to on the headstock, for a bar of one inch. */
function atOneInch(speed: Figure | undefined): Line {
  const rpm = (feet: number) => Math.round(spindleRpm({ surfaceFeetPerMinute: feet, diameter: ONE_INCH }));
  return { figure: speed && { ...speed, low: rpm(speed.low), high: rpm(speed.high) }, unit: 'rpm at 1 in' };
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
    linesOf: (one) => [{ figure: one.speedHssSfm, unit: 'ft/min' }, atOneInch(one.speedHssSfm)],
  },
  {
    name: 'Carbide',
    title: 'Turning with carbide',
    linesOf: (one) => [{ figure: one.speedCarbideSfm, unit: 'ft/min' }, atOneInch(one.speedCarbideSfm)],
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
  return (
    <section class="input-rows" aria-live="polite">
      <h2>{property.title}</h2>
      <ul>
        {materials.map((material) => {
          const lines = property.linesOf(material);
          return (
            <li key={material.id}>
              <Row
                title={material.name}
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
