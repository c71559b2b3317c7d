import { useState } from 'preact/hooks';
import { blocksOf } from '../../../engine/worksheets/account.ts';
import { worksheets } from '../../../engine/worksheets/all-worksheets.ts';
import { holeAndPinWorksheet } from '../../../engine/worksheets/hole-and-pin/worksheet.ts';
import { createWorksheet } from '../../../store/kept/worksheets.ts';
import { go, hrefOf } from '../../address.ts';
import { Button, LinkButton } from '../../common/button.tsx';
import { useStore } from '../../common/store-context.ts';
import { Trouble, useTold } from '../../common/told.tsx';
import { givenOf } from '../given-of.ts';
import { doubtsOf, type WorksheetData } from '../worksheet-data.ts';
import { RouteTable } from './route-table.tsx';
import './routes-beside.css';

/** What is done with the ways beside going one: they are compared, the insert is worked out, the cuts are looked at. */
export function RoutesBeside({ data }: { data: WorksheetData }) {
  const [comparing, setComparing] = useState(false);
  const given = givenOf(data);
  const worked = holeAndPinWorksheet.work(given);
  if (worked.is !== 'answered') return null;
  const { routes } = worked.answer;
  const takesInsert = routes.some(({ kind, state }) => kind === 'thread-insert' && state !== 'out');
  // The page's main key asks for something first; what can be cut is still one press away.
  const isAsked = blocksOf(holeAndPinWorksheet.account(given), 'ask').length > 0;
  const canBeCut = holeAndPinWorksheet.cuts(given).length > 0 && doubtsOf(data).length === 0;
  return (
    <section class="routes-beside">
      <div class="routes-beside-keys not-printed">
        <Button chosen={comparing} onPress={() => setComparing(!comparing)}>
          Compare
        </Button>
        {takesInsert && <UseInsert data={data} />}
        {isAsked && canBeCut && (
          <LinkButton
            href={hrefOf({
              at: 'worksheet',
              jobId: data.job.id,
              worksheetId: data.worksheet.id,
              field: 'cuts',
            })}
          >
            Cuts as they stand
          </LinkButton>
        )}
      </div>
      {comparing && <RouteTable routes={routes} unit={data.unit} />}
    </section>
  );
}

/** A worksheet of its own for the insert, with what is known here. */
function UseInsert({ data: { job, worksheet } }: { data: WorksheetData }) {
  const store = useStore();
  const { trouble, told } = useTold();
  const useIt = () => {
    const { bore, wall, thickness } = worksheet.sizes;
    const { thread } = worksheet.choices;
    const insert = worksheets['thread-insert'];
    const asked = {
      jobId: job.id,
      kind: 'thread-insert',
      title: `${insert.name}, ${worksheet.title}`,
      sizes: { ...(bore && { hole: bore }), ...(wall && { wall }), ...(thickness && { thickness }) },
      choices: { ...insert.starts, ...(thread !== undefined && { thread }) },
    } as const;
    return told(createWorksheet(store, asked), ({ id }) =>
      go({ at: 'worksheet', jobId: job.id, worksheetId: id }),
    );
  };
  return (
    <>
      <Button onPress={useIt}>Use the insert</Button>
      <Trouble>{trouble}</Trouble>
    </>
  );
}
