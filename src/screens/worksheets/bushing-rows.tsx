import type { BushingAnswer } from '../../engine/press/bushing.ts';
import { sameLength } from '../../engine/length/length.ts';
import { sayForce, sayHeatWay, sayHold, sayInterference, sayStress } from '../../engine/press/say-bushing.ts';
import { sayLimits } from '../../engine/fit/say-fit.ts';
import { figure, show, signedFigure, type ShownUnit } from '../../engine/length/show.ts';
import { Row } from '../common/row.tsx';
import { VerdictMark } from '../common/verdict-band.tsx';
import './input-rows.css';

/** All the cuts in their order, with what they leave. */
export function CutRows({ answer, unit }: { answer: BushingAnswer; unit: ShownUnit }) {
  const { ream, reamTakes, turn, outside, inside, insideBefore, bushingWall, partWall } = answer;
  const isPlated = !sameLength(turn.upper, outside.upper);
  return (
    <section class="input-rows">
      <h2>Cuts</h2>
      <ul>
        <li>
          <Row
            title="Ream the bore"
            detail={`takes ${show(reamTakes, unit)}${partWall ? `, leaves ${show(partWall, unit)} of wall` : ''}`}
            figure={ream.name === '' ? figure(ream.size, unit) : ream.name}
          />
        </li>
        <li>
          <Row
            title="Turn the bushing’s outside"
            detail={`${sayLimits(turn, unit)}${isPlated ? `, plated to ${sayLimits(outside, unit)}` : ''}`}
          />
        </li>
        {insideBefore && (
          <li>
            <Row
              title="Its bore before pressing"
              detail={`${sayLimits(insideBefore, unit)}, it closes to size`}
            />
          </li>
        )}
        <li>
          <Row
            title="Bore it after pressing"
            detail={`${sayLimits(inside, unit)}, leaves ${show(bushingWall, unit)} of its wall`}
          />
        </li>
      </ul>
    </section>
  );
}

/** What pressing it in does to both, and the ways to drop it in instead. */
export function PressRows({ answer, unit }: { answer: BushingAnswer; unit: ShownUnit }) {
  const { interference, stress, heat, mostHeat, dropRoom, interferenceHot, interferenceCold, running } =
    answer;
  return (
    <section class="input-rows">
      <h2>Pressed in</h2>
      <ul>
        <li>
          <Row
            title="Interference"
            detail={sayInterference(interference.least, interference.greatest, unit)}
          />
        </li>
        {interferenceHot && (
          <li>
            <Row
              title="Left when hot"
              detail="at least, surfaces bedded in"
              figure={figure(interferenceHot, unit)}
            />
          </li>
        )}
        {interferenceCold && (
          <li>
            <Row
              title="Left when cold"
              detail="at least, surfaces bedded in"
              figure={figure(interferenceCold, unit)}
            />
          </li>
        )}
        {running?.hot && (
          <li>
            <Row
              title="On the pin when hot"
              detail="least clearance"
              figure={signedFigure(running.hot, unit)}
            />
          </li>
        )}
        {running?.cold && (
          <li>
            <Row
              title="On the pin when cold"
              detail="least clearance"
              figure={signedFigure(running.cold, unit)}
            />
          </li>
        )}
        {stress && (
          <>
            <li>
              <Row
                title="Its bore closes by"
                detail={`${figure(stress.closes.lower, unit)} to ${show(stress.closes.upper, unit)}`}
              />
            </li>
            <li>
              <Row
                title="Pressure"
                detail={`${sayStress(stress.pressureMpa.low, unit)} to ${sayStress(stress.pressureMpa.high, unit)}`}
              />
            </li>
            {stress.force && (
              <li>
                <Row
                  title={`Press with up to ${sayForce(stress.force.pressN, unit)}`}
                  detail={sayHold(stress.force.holdN, unit)}
                />
              </li>
            )}
            <li>
              <Row title="Part is pulled with" detail={sayStress(stress.part.hoopMpa, unit)} />
            </li>
            <li>
              <Row title="Bushing is squeezed with" detail={sayStress(stress.bushing.equivalentMpa, unit)} />
            </li>
          </>
        )}
      </ul>
      <h2>Or drop it in</h2>
      <ul>
        {heat.map((way) => {
          const { title, detail } = sayHeatWay(way, mostHeat, unit);
          return (
            <li key={way.way}>
              <Row
                title={title}
                detail={way.allowed ? `${detail}, with ${show(dropRoom, unit)} to spare` : detail}
                mark={<VerdictMark kind={way.allowed ? 'good' : 'no-good'} />}
              />
            </li>
          );
        })}
      </ul>
    </section>
  );
}
