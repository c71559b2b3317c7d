import { isDiameter } from '../../engine/length/metal-on.ts';
import { sayLargestWork, saySpeed, speedFigure } from '../../engine/cut/say-cuts-speed.ts';
import { hrefOf } from '../address.ts';
import { Setting } from './next-pass.tsx';
import { useShownUnit } from '../common/use-settings.ts';
import { isInsideWork, type LatheCut } from './use-lathe-cut.ts';

/** The spindle's speed, one the lathe has; or what is missing to say one, with the way to give it. */
export function SpeedSetting({ at }: { at: LatheCut }) {
  const { cut, job, material, speed } = at;
  const unit = useShownUnit();
  const here = { jobId: job.id, cutId: cut.id } as const;
  const diameter = hrefOf({ at: 'lathe', ...here, field: 'work-diameter' });
  if (!material)
    return (
      <Setting label="spindle" more="which metal?" href={hrefOf({ at: 'cut', ...here, field: 'material' })} />
    );
  if (!speed?.ok) return <Setting label="spindle" more="what Ø?" href={diameter} />;
  const { value } = speed;
  const inside = isInsideWork(cut);
  const why = [saySpeed(value), inside && !at.workDiameter ? sayLargestWork(value, unit) : '']
    .filter((words) => words !== '')
    .join('; ');
  return (
    <Setting
      label="rpm"
      figure={speedFigure(value)}
      {...(value.slowestTooFastRpm === undefined ? { caption: why } : { more: why })}
      {...((inside || !isDiameter(cut.of)) && { href: diameter })}
    />
  );
}
