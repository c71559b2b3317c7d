import type { OnWork } from '../../engine/cut/cut.ts';
import { comesBack, millSetting, sayTurns } from '../../engine/cut/mill-dial.ts';
import { isZero } from '../../engine/length/length.ts';
import { figure, type ShownUnit } from '../../engine/length/show.ts';
import type { KeptMill } from '../../store/base/records.ts';
import { hrefOf } from '../address.ts';
import { MILL_AXES, type MillAxis } from '../common/mill-slides.ts';
import { Setting } from '../lathe/next-pass.tsx';

type DialProps = {
  readonly mill: KeptMill;
  readonly place: OnWork;
  /** Where the slides stand: the hole that was drilled last. */
  readonly before: OnWork | undefined;
  readonly unit: ShownUnit;
};

/** What each dial reads there and how many turns that is; a digital readout shows the coordinates themselves. */
export function DialSettings({ mill, ...at }: DialProps) {
  if (mill.reads === 'readout') return null;
  return (
    <>
      {MILL_AXES.map((axis) => (
        <DialSetting key={axis} mill={mill} axis={axis} {...at} />
      ))}
    </>
  );
}

function DialSetting({ mill, axis, place, before, unit }: DialProps & { readonly axis: MillAxis }) {
  const slide = mill[axis];
  const dialUnit = slide.graduation.unit === 'mm' ? 'mm' : 'in';
  const setting = millSetting(
    { graduation: slide.graduation.exact, marksPerTurn: slide.marksPerTurn },
    place[axis],
  );
  // Without its turns a dial says nothing that the coordinate over it doesn't.
  if (setting.turns === undefined)
    return (
      <Setting
        label={`${axis} dial`}
        more="marks round it?"
        href={hrefOf({ at: 'shop', field: `mill-marks-${axis}` })}
      />
    );
  const captions = [
    comesBack(before?.[axis], place[axis]) ? 'a turn past it, then up' : '',
    isZero(setting.past) ? '' : `${figure(setting.past, dialUnit)} past mark ${setting.marks}`,
  ];
  return (
    <Setting
      label={`${axis} dial`}
      figure={figure(setting.figure, dialUnit)}
      {...(dialUnit !== unit && { unit: dialUnit })}
      more={sayTurns(setting)}
      caption={captions.filter((words) => words !== '').join('; ')}
    />
  );
}
