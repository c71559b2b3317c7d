import { cutName, tapOfCut } from '../../engine/thread/tap-name.ts';
import type { Entry } from '../../engine/length/entry.ts';
import { passToolWords } from '../cuts/pass-tool-words.ts';
import { sayDegrees } from '../../engine/reading/say-warmth.ts';
import { sayStrengthOfCut } from '../../engine/cut/say-strength.ts';
import { asTyped, show, type ShownUnit } from '../../engine/length/show.ts';
import { passesOf } from '../../store/kept/cut-state.ts';
import type { Cut } from '../../store/base/records.ts';
import { isOlderThanSizes } from '../older/older-than-sizes.ts';
import {
  assumedOf,
  countsStill,
  hasItsOwnSize,
  MACHINE_WORDS,
  materialWords,
  placeWords,
  setUpWords,
  STATE_WORDS,
} from '../cuts/cut-words.ts';
import { HoleCaution } from '../common/hole-caution.tsx';
import { LatheCaution } from '../common/lathe-caution.tsx';
import type { SheetData } from './sheet-data.ts';
import { SheetFacts, SheetTable } from './sheet-table.tsx';
import { momentOf, OLDER_ON_PAPER } from './sheet-words.ts';

/** Every cut as it was made: from what to what, between which limits, and each measurement on the way. */
export function CutsSheet({ data }: { data: SheetData }) {
  if (data.cuts.length === 0) return null;
  return (
    <section class="sheet-section">
      <h3>Cuts</h3>
      {data.cuts.some(isStillToMake) && <LatheCaution />}
      {data.cuts.some(hasItsOwnSize) && <HoleCaution />}
      {data.cuts.map((cut) => (
        <CutSheet key={cut.id} cut={cut} data={data} />
      ))}
    </section>
  );
}

type CutSheetProps = { readonly cut: Cut; readonly data: SheetData };

function CutSheet({ cut, data }: CutSheetProps) {
  const { unit } = data;
  const setOver = setUpWords(cut, unit);
  return (
    <section class="sheet-part">
      <h4>
        {cutName(cut)} <small>{`(${[cut.part, MACHINE_WORDS[cut.machine]].join(', ')})`}</small>
      </h4>
      <CutFacts cut={cut} unit={unit} />
      {sayStrengthOfCut(cut) !== '' && <p>{sayStrengthOfCut(cut)}</p>}
      {setOver.length > 0 && <p>{setOver.join(' ')}</p>}
      {isOlder(cut, data) && (
        <p>
          <strong>{OLDER_ON_PAPER}</strong>
        </p>
      )}
      <Passes cut={cut} unit={unit} />
    </section>
  );
}

type OfCut = { readonly cut: Cut; readonly unit: ShownUnit };

/** As it was typed; in the sheet's unit too, where that is another. */
function sizeOf(entry: Entry, unit: ShownUnit): string {
  return `${asTyped(entry)}${entry.unit === unit ? '' : ` (${show(entry.exact, unit)})`}`;
}

function CutFacts({ cut, unit }: OfCut) {
  const last = passesOf(cut).findLast(([, { struckOut }]) => struckOut === undefined)?.[1];
  const from = [cut.limitsFrom, assumedOf(cut)].filter(Boolean).join('; ');
  return (
    <SheetFacts
      facts={[
        ['State', <strong key="state">{STATE_WORDS[cut.state]}</strong>],
        [
          cut.threading ? 'Where the tool touches' : 'Blank',
          cut.blank ? sizeOf(cut.blank, unit) : 'not measured',
        ],
        ['Target', sizeOf(cut.target, unit)],
        ['Good from', `${sizeOf(cut.lower, unit)} to ${sizeOf(cut.upper, unit)} (${from})`],
        [
          sizeWords(cut),
          last ? (
            <strong key="final">{sizeOf(last.measured, unit)}</strong>
          ) : (
            <span key="final" class="sheet-blank" />
          ),
        ],
        ...(cut.material === undefined ? [] : [['Material', materialWords(cut.material, unit)] as const]),
        ...(cut.stands ? [['Stands', placeWords(cut, unit)] as const] : []),
        ...(cut.drill === undefined ? [] : [['Drill', cut.drill] as const]),
        ...(cut.thread === undefined ? [] : [['Tap', tapOfCut(cut)] as const]),
      ]}
    />
  );
}

/** Each measurement on the way, struck-out ones too. */
function Passes({ cut, unit }: OfCut) {
  const passes = passesOf(cut);
  if (passes.length === 0) return null;
  return (
    <SheetTable
      figures
      heads={['Measured', 'To come off before', 'Tool', 'When']}
      rows={passes.map(([id, pass]) => ({
        key: id,
        cells: [
          sizeOf(pass.measured, unit),
          pass.asked ? sizeOf(pass.asked, unit) : '',
          [passToolWords(cut, pass), pass.warmth && `at ${sayDegrees(pass.warmth)}, counts at 20 °C`]
            .filter(Boolean)
            .join(', '),
          momentOf(pass.at),
        ],
        ...(pass.struckOut && { struckOut: pass.struckOut.why }),
      }))}
    />
  );
}

/** Of what is made already nobody has to be warned at the machine. */
function isStillToMake({ state }: Cut): boolean {
  return state === 'to-cut' || state === 'cutting';
}

/** A size still on its way, or gone past its limit, is not the final one. */
function sizeWords({ state }: Cut): string {
  return state === 'to-cut' || state === 'to-size' ? 'Final size' : 'Measured last';
}

function isOlder(cut: Cut, data: SheetData): boolean {
  return countsStill(cut) && isOlderThanSizes({ of: 'cut', cut }, data);
}
