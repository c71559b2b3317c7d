import { marked } from '../../length/decimal-text.ts';
import type { WhyLine } from '../account.ts';
import { coldShrinkOf } from '../../material/cold-shrink.ts';
import { flattened } from '../../press/bushing-stress.ts';
import type { BushingAnswer, BushingQuestion } from '../../press/bushing.ts';
import { mean } from '../../reading/estimate.ts';
import { isZero } from '../../length/length.ts';
import { leastCleanUp } from '../../fit/tables/least-walls.ts';
import { modulusGpa } from '../../material/material.ts';
import { sayLimits } from '../../fit/say-fit.ts';
import { sayForce, sayInterference, sayStress } from '../../press/say-bushing.ts';
import { figure, show, showBand, type ShownUnit } from '../../length/show.ts';
import { contractions } from '../../material/tables/contraction.ts';
import { rowOf } from '../../material/tables/materials.ts';
import type { Material } from '../../material/tables/materials.ts';
import { pressFriction } from '../../press/tables/press-practice.ts';

/** How a bushing's figures came about: formula, numbers put in, source. */
export function bushingWhy(q: BushingQuestion, answer: BushingAnswer, unit: ShownUnit): readonly WhyLine[] {
  return [...sizeLines(q, answer, unit), ...stressLines(q, answer, unit), ...heatLines(q, answer, unit)];
}

function sizeLines(q: BushingQuestion, answer: BushingAnswer, unit: ShownUnit): readonly WhyLine[] {
  const size = (length: Parameters<typeof figure>[0]) => figure(length, unit);
  const { cleanUp, ream, pressFit, insideFit, inside, interference, measured } = answer;
  return [
    {
      what: 'Clean-up',
      how: `loosest place ${size(mean(q.bore.loosest))}, ${q.keepsAxis === true ? 'as much again as it is worn past its nominal, ' : ''}its band and ${show(leastCleanUp[unit], unit)} of metal all round: ${size(cleanUp)}; reamed to ${size(ream.size)}`,
      source: 'common practice, no source',
    },
    {
      what: 'Outside',
      how: q.reamed
        ? `measured bore + the middle of ${pressFit.fitClass}, with the bushing’s own tolerance: ${sayLimits(answer.outside, unit)}`
        : `${pressFit.fitClass} at ${size(ream.size)}: ${sayLimits(answer.outside, unit)}`,
      source: pressFit.source,
    },
    {
      what: 'Bore when pressed in',
      how: `${insideFit.fitClass} for the pin of ${size(mean(q.pin.tightest))}: ${sayLimits(inside, unit)}`,
      source: insideFit.source,
    },
    {
      what: 'Interference',
      how: measured
        ? `bushing${isPlated(q) ? ' as plated' : ''} − bore, each at the far end of its band ${showBand(measured.halfWidth, unit)}: ${sayInterference(interference.least, interference.greatest, unit)}`
        : sayInterference(interference.least, interference.greatest, unit),
      source: measured ? 'your readings; JCGM 100:2008' : pressFit.source,
    },
    {
      what: 'Bedding in',
      how: `${marked('0.8')} · both roughnesses = ${show(flattened(q.finish), unit)} off the least: ${size(interference.leastAfterFlattening)} left`,
      source: 'DIN 7190-1, from memory; roughness common practice, no source',
    },
  ];
}

function stressLines(q: BushingQuestion, { stress }: BushingAnswer, unit: ShownUnit): readonly WhyLine[] {
  if (!stress) return [];
  return [
    {
      what: 'Pressure',
      how: `p = δ / (d · [(1/Eo)((Do²+d²)/(Do²−d²) + νo) + (1/Ei)((d²+Di²)/(d²−Di²) − νi)]): least at what is left of the least interference, greatest at the greatest. The least with the part as a ring of its thinnest wall, the greatest with its thickest${q.thickWall ? '' : ', taken as solid'}. ${stiffness('Part', q.part)}; ${stiffness('bushing', q.bushing)}`,
      source: `Lamé; Shigley 9th ed. Eq. 3-56; ${q.part.modulusGpa?.source ?? q.part.modulusMsi?.source ?? ''}`,
    },
    {
      what: 'Stress',
      how: `part: hoop p(Do²+d²)/(Do²−d²) = ${sayStress(stress.part.hoopMpa, unit)}, equivalent ${sayStress(stress.part.equivalentMpa, unit)}; bushing: 2p·d²/(d²−Di²) = ${sayStress(stress.bushing.equivalentMpa, unit)}`,
      source: 'Lamé; von Mises; strengths from memory unless you gave them',
    },
    {
      what: 'Closing in',
      how: `2p·d²·Di / (E·(d²−Di²)) = ${figure(stress.closes.lower, unit)} to ${show(stress.closes.upper, unit)}`,
      source: 'Lamé',
    },
    ...(stress.force
      ? [
          {
            what: 'Force',
            how: `μ·p·π·d·L: press with μ ${marked(pressFriction.high)} at the greatest pressure = ${sayForce(stress.force.pressN, unit)}, hold with μ ${marked(pressFriction.low)} at the least = ${sayForce(stress.force.holdN, unit)}`,
            source: pressFriction.source,
          },
        ]
      : []),
  ];
}

function heatLines(
  q: BushingQuestion,
  { interference, dropRoom }: BushingAnswer,
  unit: ShownUnit,
): readonly WhyLine[] {
  const of = ({ name, expansionPerMillionCelsius: { low } }: Material) => `${name} ${marked(low)}`;
  return [
    {
      what: 'Heat or cold',
      how: `(interference + room) / (α · D) = (${figure(interference.greatest, unit)} + ${figure(dropRoom, unit)}) / (α · D), α in millionths a °C: ${of(q.part)}, ${of(q.bushing)}; shop at ${marked(q.shopCelsius)} °C`,
      source: `${q.part.expansionPerMillionCelsius.source}; heat limits common practice, no source`,
    },
    {
      what: 'In the cold',
      how: `the bushing loses ${marked((coldShrinkOf(q.bushing).at80K * 100).toFixed(3))} % down to −193 °C, less than α at room temperature says`,
      source:
        contractions[rowOf(q.bushing.id)]?.basis === 'published'
          ? 'published contraction tables'
          : 'from memory',
    },
  ];
}

function isPlated({ plating }: BushingQuestion): boolean {
  return plating !== undefined && !isZero(plating);
}

function stiffness(what: string, material: Material): string {
  const { low, high } = modulusGpa(material);
  const range = low === high ? String(Math.round(low)) : `${Math.round(low)} to ${Math.round(high)}`;
  return `${what} E ${range} GPa`;
}
