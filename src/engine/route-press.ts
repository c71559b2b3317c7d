import { afterFlattening, pressStress } from './bushing-stress.ts';
import { stressWarnings } from './bushing-warnings.ts';
import type { HoleAndPinQuestion } from './hole-and-pin.ts';
import { pressLimits } from './hole-and-pin-limits.ts';
import type { RouteContext, RouteReason } from './hole-and-pin-routes.ts';
import { isMore, negate, plus, times, zero } from './length.ts';
import type { Inside } from './route-bushing.ts';
import { caution, speaksFor, type Finding } from './route-findings.ts';
import { wallLeft } from './route-wall.ts';
import { materialNamed, type Material, type MaterialId } from './tables/materials.ts';
import type { Reamer } from './tables/reamer-sizes.ts';

/** What a part and its bushing are taken to be while nobody says: the usual pair. Common practice, no source. */
const USUAL = { part: 'low-carbon-steel', bushing: 'bearing-bronze' } as const;

/**
 * What pressing a bushing in does: its grip, how far its bore closes, the force, and what it strains too far.
 *
 * Units:   interference on the diameter, N and MPa as numbers. The part counts as a ring of its thinnest wall.
 * Range:   only the grip is known while the wall isn't; the force only where the hole's length is.
 * Source:  bushing-stress.ts: Lamé, with the finish of a reamed bore and a turned bushing.
 */
export function pressFindings(
  context: RouteContext,
  { reamer, inside }: { readonly reamer: Reamer; readonly inside: Inside },
): readonly Finding[] {
  const { question } = context;
  const pressed = pressLimits(question.fitSystem, reamer.size);
  const least = negate(pressed.upper);
  const greatest = negate(pressed.lower);
  const grip = speaksFor({ code: 'press-grip', least, greatest, source: pressed.source });
  const wall = wallLeft(context, reamer.size);
  if (!wall || !isMore(wall, zero)) return [grip];
  const metals = metalsOf(question);
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
    speaksFor(metalsReason(question, metals)),
    ...stressWarnings(metals, stress).map((warning) => caution({ code: 'press-warning', warning })),
  ];
}

type Metals = { readonly part: Material; readonly bushing: Material };

function metalsOf({ partMetal, bushingMetal }: HoleAndPinQuestion): Metals {
  return { part: partMetal ?? listed(USUAL.part), bushing: bushingMetal ?? listed(USUAL.bushing) };
}

function listed(id: MaterialId): Material {
  const material = materialNamed(id);
  if (!material) throw new Error(`no material ${id}`);
  return material;
}

function metalsReason({ partMetal, bushingMetal }: HoleAndPinQuestion, metals: Metals): RouteReason {
  const named = bushingMetal ? 'part' : 'both';
  const taken = partMetal ? (bushingMetal ? 'neither' : 'bushing') : named;
  return { code: 'press-metals', part: metals.part.name, bushing: metals.bushing.name, taken };
}
