import { cutName, tapOfCut } from '../../engine/thread/tap-name.ts';
import type { Entry } from '../../engine/length/entry.ts';
import { toolBeside } from '../../engine/reading/say-readings.ts';
import { sayDegrees } from '../../engine/reading/say-warmth.ts';
import { sayStrengthOfCut } from '../../engine/cut/say-strength.ts';
import { asTyped, show } from '../../engine/length/show.ts';
import { passesOf } from '../../store/cut-state.ts';
import type { Cut } from '../../store/records.ts';
import { isOlderThanSizes } from '../older/older-than-sizes.ts';
import {
  assumedOf,
  countsStill,
  hasItsOwnSize,
  MACHINE_WORDS,
  materialWords,
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
      <LatheCaution />
      {data.cuts.some(hasItsOwnSize) && <HoleCaution />}
      {data.cuts.map((cut) => (
        <CutSheet key={cut.id} cut={cut} data={data} />
      ))}
    </section>
  );
}

function CutSheet({ cut, data }: { cut: Cut; data: SheetData }) {
  const { unit } = data;
  const size = (entry: Entry) =>
    `${asTyped(entry)}${entry.unit === unit ? '' : ` (${show(entry.exact, unit)})`}`;
  const passes = passesOf(cut);
  const last = passes.findLast(([, { struckOut }]) => struckOut === undefined)?.[1];
  return (
    <section class="sheet-part">
      <h4>
        {cutName(cut)} <small>{`(${[cut.part, MACHINE_WORDS[cut.machine]].join(', ')})`}</small>
      </h4>
      <SheetFacts
        facts={[
          ['State', <strong key="state">{STATE_WORDS[cut.state]}</strong>],
          ['Blank', cut.blank ? size(cut.blank) : 'not measured'],
          ['Target', size(cut.target)],
          [
            'Good from',
            `${size(cut.lower)} to ${size(cut.upper)} (${[cut.limitsFrom, assumedOf(cut)].filter(Boolean).join('; ')})`,
          ],
          [
            sizeWords(cut),
            last ? (
              <strong key="final">{size(last.measured)}</strong>
            ) : (
              <span key="final" class="sheet-blank" />
            ),
          ],
          ...(cut.material === undefined ? [] : [['Material', materialWords(cut.material)] as const]),
          ...(cut.drill === undefined ? [] : [['Drill', cut.drill] as const]),
          ...(cut.thread === undefined ? [] : [['Tap', tapOfCut(cut)] as const]),
        ]}
      />
      {sayStrengthOfCut(cut) !== '' && <p>{sayStrengthOfCut(cut)}</p>}
      {isOlder(cut, data) && (
        <p>
          <strong>{OLDER_ON_PAPER}</strong>
        </p>
      )}
      {passes.length > 0 && (
        <SheetTable
          figures
          heads={['Measured', 'To come off before', 'Tool', 'When']}
          rows={passes.map(([id, pass]) => ({
            key: id,
            cells: [
              size(pass.measured),
              pass.asked ? size(pass.asked) : '',
              [
                pass.tool && toolBeside({ tool: pass.tool, exact: pass.measured.exact }),
                pass.warmth && `at ${sayDegrees(pass.warmth)}, counts at 20 °C`,
              ]
                .filter(Boolean)
                .join(', '),
              momentOf(pass.at),
            ],
            ...(pass.struckOut && { struckOut: pass.struckOut.why }),
          }))}
        />
      )}
    </section>
  );
}

/** A size still on its way, or gone past its limit, is not the final one. */
function sizeWords({ state }: Cut): string {
  return state === 'to-cut' || state === 'to-size' ? 'Final size' : 'Measured last';
}

function isOlder(cut: Cut, data: SheetData): boolean {
  return countsStill(cut) && isOlderThanSizes({ of: 'cut', cut }, data);
}
