import { figure, show, type ShownUnit } from '../../engine/length/show.ts';
import { lastPassOf, passesOf } from '../../store/kept/cut-state.ts';
import { strikeOutPass } from '../../store/kept/cut-passes.ts';
import type { Cut } from '../../store/base/records.ts';
import { Button } from '../common/button.tsx';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { passToolWords } from './pass-tool-words.ts';

/** What was measured at the machine, in order; a struck-out figure stays readable. */
export function CutPasses({ cut, unit }: { cut: Cut; unit: ShownUnit }) {
  const store = useStore();
  const { trouble, told } = useTold();
  const passes = passesOf(cut);
  if (passes.length === 0) return null;
  const last = lastPassOf(cut);
  const strike = () => last && told(strikeOutPass(store, cut.id, last[0], 'measured wrong'));
  return (
    <section class="cuts-group">
      <h2>Measured</h2>
      <ol>
        {passes.map(([id, pass], index) => {
          const { measured, asked, struckOut } = pass;
          return (
            <li key={id}>
              <Row
                title={index === 0 && !asked ? 'First measured' : `After pass ${countAsked(cut, index)}`}
                detail={[
                  asked ? `${figure(asked.exact, unit)} asked` : '',
                  passToolWords(cut, pass),
                  struckOut ? `struck out: ${struckOut.why}` : '',
                ]
                  .filter((word) => word !== '')
                  .join(' · ')}
                figure={show(measured.exact, unit)}
                {...(struckOut && { state: 'struck' })}
              />
            </li>
          );
        })}
      </ol>
      {last && (
        <div class="cuts-own">
          <Button onPress={() => strike()}>{`Strike out ${figure(last[1].measured.exact, unit)}`}</Button>
        </div>
      )}
      <Trouble>{trouble}</Trouble>
    </section>
  );
}

/** Passes up to here that metal was asked for in. */
function countAsked(cut: Cut, index: number): number {
  return Math.max(
    1,
    passesOf(cut)
      .slice(0, index + 1)
      .filter(([, { asked }]) => asked).length,
  );
}
