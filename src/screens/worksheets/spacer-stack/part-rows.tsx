import { usualLeastLength } from '../../../engine/fit/tables/least-part.ts';
import { sayStrength } from '../../../engine/cut/say-strength.ts';
import { show } from '../../../engine/length/show.ts';
import { bandOf } from '../../../engine/reading/estimate.ts';
import { sizeFigure } from '../../../engine/reading/say-readings.ts';
import { spacerStackFields } from '../../../engine/worksheets/spacer-stack/fields.ts';
import { hrefOf } from '../../address.ts';
import { bandWords } from '../../common/band-words.ts';
import { Button } from '../../common/button.tsx';
import { Choice } from '../../common/choice.tsx';
import { KeptField } from '../../common/kept-field.tsx';
import { Row } from '../../common/row.tsx';
import { Trouble } from '../../common/told.tsx';
import { exactSize, knownSize, missingWords, type WorksheetData } from '../worksheet-data.ts';
import { nextName } from './part-names.ts';
import { partField, type PartPath } from './part-path.ts';
import { usePart } from './use-part.ts';
import './part-rows.css';

const MOST_PIECES = 99;

type PartRowsProps = { readonly data: WorksheetData; readonly path: PartPath };

/** All about a part beside its size: its name, how many, whether it may be cut and how short, where it stands. */
export function PartRows({ data, path }: PartRowsProps) {
  const { part } = path;
  const { trouble, change, takeOut } = usePart(data, path);
  const others = Object.entries(data.worksheet.parts)
    .filter(([id]) => id !== path.id)
    .map(([, one]) => one);
  const rename = async (name: string) => name !== '' && change({ name });
  return (
    <div class="part-rows">
      <KeptField label="Name" kept={part.name} onWords={rename} />
      <div class="part-rows-keys" role="group" aria-label="What it is">
        {spacerStackFields.parts.names.map((name) => (
          <Button key={name} onPress={() => rename(nextName(name, others))}>
            {name}
          </Button>
        ))}
      </div>
      <PartSizes data={data} path={path} />
      <div class="part-rows-keys" role="group" aria-label="How many">
        <Button
          label="One fewer"
          disabled={part.count <= 1}
          onPress={() => change({ count: part.count - 1 })}
        >
          −
        </Button>
        <output>{part.count === 1 ? '1 piece' : `${part.count} pieces`}</output>
        <Button
          label="One more"
          disabled={part.count >= MOST_PIECES}
          onPress={() => change({ count: part.count + 1 })}
        >
          +
        </Button>
      </div>
      <Choice title="When the stack does not fit, this part">
        <Button chosen={!part.adjustable} onPress={() => change({ adjustable: false })}>
          stays as it is
        </Button>
        <Button chosen={part.adjustable} onPress={() => change({ adjustable: true })}>
          may be cut
        </Button>
      </Choice>
      {sayStrength(part.name) !== '' && <p class="account-said">{sayStrength(part.name)}</p>}
      <div class="part-rows-keys">
        <Button onPress={() => change({ order: part.order - 1.5 })}>Further left</Button>
        <Button onPress={() => change({ order: part.order + 1.5 })}>Further right</Button>
      </div>
      <Trouble>{trouble}</Trouble>
      <div class="part-rows-keys">
        <Button onPress={takeOut}>Take {part.name} out</Button>
      </div>
    </div>
  );
}

function PartSizes({ data, path: { id, part } }: PartRowsProps) {
  const { worksheet, job, unit } = data;
  const at = (field: string) => hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id, field });
  const known = knownSize(data, part.size);
  const least = exactSize(data, part.leastLength);
  return (
    <ul>
      <li>
        <Row
          href={at(partField({ id }))}
          title="Length"
          detail={known?.words ?? missingWords(data, part.size) ?? 'not given'}
          {...(known && {
            figure: (
              <>
                {sizeFigure(known.tightest, unit)}
                <small class="row-detail">{bandWords(bandOf(known.tightest).halfWidth, unit)}</small>
              </>
            ),
          })}
        />
      </li>
      <li>
        <Row
          href={at(`part/${id}/leastLength`)}
          title="Least length"
          detail={
            least
              ? 'it is never faced below this'
              : `it is never faced below ${show(usualLeastLength[unit], unit)}, common practice`
          }
          {...(least && { figure: show(least, unit) })}
        />
      </li>
    </ul>
  );
}
