import { figure, showBand, type ShownUnit } from '../../length/show.ts';
import { mean } from '../../reading/estimate.ts';
import type { WhyLine } from '../account.ts';
import type {
  AlignmentAnswer,
  AlignmentQuestion,
  OutfitAnswer,
  OutfitQuestion,
  TrailerAnswer,
  TrailerQuestion,
} from './alignment.ts';
import { sayTenths } from './say-alignment.ts';
import type { Toe, ToeAsked } from './toe.ts';

const FLOATING = 'geometry; floating point';

/** How the figures came about, and that the manual's rule. */
export function whyOfAlignment(
  q: AlignmentQuestion,
  answer: AlignmentAnswer,
  unit: ShownUnit,
): readonly WhyLine[] {
  if (q.of === 'outfit' && answer.of === 'outfit') return ofOutfit(q, answer, unit);
  return q.of === 'trailer' && answer.of === 'trailer' ? ofTrailer(q, answer, unit) : [];
}

function toeLine({ front, rear }: ToeAsked, { judged, degrees }: Toe, unit: ShownUnit): WhyLine {
  return {
    what: 'Toe-in',
    how: `behind − in front = ${figure(mean(rear), unit)} − ${figure(mean(front), unit)} = ${figure(judged.value, unit)}, known to ${showBand(judged.halfWidth, unit)}; ${sayTenths(degrees)} between the wheels. Wanted: ${figure(judged.limits.lower ?? judged.value, unit)} to ${figure(judged.limits.upper ?? judged.value, unit)}`,
    source: `JCGM 100:2008; wanted: ${judged.limits.source}`,
  };
}

function ofOutfit(q: OutfitQuestion, answer: OutfitAnswer, unit: ShownUnit): readonly WhyLine[] {
  const { toe, move, lead, lean } = answer;
  const size = (one: Parameters<typeof figure>[0]) => figure(one, unit);
  return [
    toeLine(q.toe, toe, unit),
    {
      what: 'Fitting',
      how: `lacking · fittings / places = ${size(toe.lacks)} · ${size(mean(q.fittings))} / ${size(mean(q.toe.apart))} = ${size(move.by)}, known to ${showBand(move.halfWidth, unit)}. The sidecar turns about the other fitting${turnsHow(q, answer)}`,
      source: 'similar triangles',
    },
    ...(lead
      ? [
          {
            what: 'Wheel lead',
            how: `as read, against ${size(q.lead?.want.lower ?? lead.value)} to ${size(q.lead?.want.upper ?? lead.value)}`,
            source: lead.limits.source,
          },
        ]
      : []),
    ...(lean
      ? [
          {
            what: 'Lean-out',
            how: `strut = √(h² + a² + 2·h·a·sin(lean)) now and at ${sayTenths(lean.aimDegrees)}; the machine leans about its lower fittings, the strut’s foot is as high as they are`,
            source: `law of cosines, floating point; wanted: ${lean.want.source}`,
          },
        ]
      : []),
    {
      what: 'Order',
      how: 'track and lead, then lean-out, then toe-in: each moves those after it',
      source: 'common practice, no source',
    },
  ];
}

function turnsHow({ adjuster, pitch }: OutfitQuestion, { move: { turns } }: OutfitAnswer): string {
  if (turns === undefined || !pitch) return '';
  return `; turns = move / ${adjuster === 'turnbuckle' ? '(2 · pitch)' : 'pitch'}`;
}

function ofTrailer(q: TrailerQuestion, answer: TrailerAnswer, unit: ShownUnit): readonly WhyLine[] {
  const { axle, toe, second } = answer;
  const size = (one: Parameters<typeof figure>[0]) => figure(one, unit);
  return [
    {
      what: 'Diagonals',
      how: `left − right = ${size(axle.judged.value)}, known to ${showBand(axle.judged.halfWidth, unit)}${q.axle.sides ? ', without what the axle’s place across makes of it' : '. The axle is taken as in the middle'}`,
      source: `JCGM 100:2008; wanted: ${axle.judged.limits.source}`,
    },
    {
      what: 'Slide',
      how: `reach = √(2·left² + 2·right² − track²) / 2 = ${size(axle.reach)}; sin = (left² − right²) / (2 · reach · track); ${size(mean(q.axle.seats ?? q.axle.track))} · sin = ${size(axle.slide.by)}`,
      source: FLOATING,
    },
    ...(q.toe && toe ? [toeLine(q.toe, toe, unit)] : []),
    ...(second
      ? [
          {
            what: 'Axle to axle',
            how: 'left − right; the rear axle slides difference · seats / track',
            source: `similar triangles; wanted: ${second.judged.limits.source}`,
          },
        ]
      : []),
  ];
}
