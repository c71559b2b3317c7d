import { afterFlattening, pressStress } from '../../press/bushing-stress.ts';
import { stressWarnings } from '../../press/bushing-warnings.ts';
import type { HoleAndPinQuestion } from './hole-and-pin.ts';
import { pressLimits } from './hole-and-pin-limits.ts';
import type { RouteContext } from './hole-and-pin-routes.ts';
import { isMore, negate, plus, times, zero } from '../../length/length.ts';
import type { Inside } from './route-bushing.ts';
import { ask, caution, speaksFor, type Finding } from './route-findings.ts';
import { wallLeft } from './route-wall.ts';
import type { Material } from '../../material/tables/materials.ts';
import type { Reamer } from '../../fit/tables/reamer-sizes.ts';

/**
 * What pressing a bushing in does: its grip, how far its bore closes, the force, and what it strains too far.
 *
 * Units:   interference on the diameter, N and MPa as numbers. The part holds by its thinnest wall and is pressed into as if
 *          it were solid.
 * Range:   only the grip is known while the wall isn't; the force only where the hole's length is. No metal of what carries
 *          load is taken for granted: it is asked for. What gives way or cracks is asked about too, before anything is cut.
 * Source:  bushing-stress.ts: Lamé, with the finish of a reamed bore and a turned bushing.
 */
export function pressFindings(
  context: RouteContext,
  { reamer, inside }: { readonly reamer: Reamer; readonly inside: Inside },
): readonly Finding[] {
  const { question } = context;
  const pressed = pressLimits(question, reamer.size);
  const least = negate(pressed.upper);
  const greatest = negate(pressed.lower);
  const grip = speaksFor({ code: 'press-grip', least, greatest, source: pressed.source });
  const metals = metalsOf(question);
  if ('missing' in metals) return [ask({ code: 'ask-press-metals', missing: metals.missing }), grip];
  const wall = wallLeft(context, reamer.size);
  if (!wall || !isMore(wall, zero)) return [grip];
  const stress = pressStress({
    at: reamer.size,
    outside: plus(reamer.size, times(wall, 2)),
    inside: inside.upper,
    ...metals,
    interference: { least, greatest, leastAfterFlattening: afterFlattening(least, 'usual') },
    ...(question.thickness && { length: question.thickness }),
  });
  return [
    grip,
    speaksFor({ code: 'bushing-closes', ...stress.closes }),
    ...(stress.force ? [speaksFor({ code: 'press-force', ...stress.force })] : []),
    speaksFor({ code: 'press-metals', part: metals.part.name, bushing: metals.bushing.name }),
    ...stressWarnings(metals, stress).map((warning) => {
      const reason = { code: 'press-warning', warning } as const;
      return warning.weighs === 'stop' ? ask(reason) : caution(reason);
    }),
  ];
}

type Metals = { readonly part: Material; readonly bushing: Material };

function metalsOf({
  partMetal: part,
  bushingMetal: bushing,
}: HoleAndPinQuestion): Metals | { readonly missing: 'part' | 'bushing' | 'both' } {
  if (part && bushing) return { part, bushing };
  if (part) return { missing: 'bushing' };
  return { missing: bushing ? 'part' : 'both' };
}
