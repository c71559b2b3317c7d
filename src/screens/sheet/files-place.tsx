import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { countsStill } from '../cuts/cut-words.ts';
import { olderAmong } from '../older/job-ground.ts';
import { Row } from '../common/row.tsx';
import { drawingFile } from './drawing-file.ts';
import { fileName } from './file-names.ts';
import { writtenReasons, type WrittenReasonLine } from './reasons-sheet.tsx';
import { RoundPartPlace, RoundPartRows } from './round-part-place.tsx';
import type { SheetData } from './sheet-data.ts';
import { OnPaper } from './on-paper.tsx';
import { SheetDocument } from './sheet-document.tsx';
import { counted } from './sheet-words.ts';
import { spreadsheet } from './spreadsheet.ts';
import { useGive } from './use-give.ts';
import { useSigner } from './use-signed-since.ts';
import './files-place.css';
import { timeToKeep } from '../../store/base/clock.ts';

type FilesPlaceProps = { readonly data: SheetData; readonly field: string };

/** All that the sheet can be given away as. */
export function FilesPlace({ data, field }: FilesPlaceProps) {
  return field === '' ? <Files data={data} /> : <RoundPartPlace data={data} field={field} />;
}

type Drawn = { readonly title: string; readonly svg: SVGSVGElement };

function Files({ data }: { readonly data: SheetData }) {
  const { job } = data;
  const { said, give } = useGive();
  const [drawings, setDrawings] = useState<readonly Drawn[]>([]);
  const paper = useRef<HTMLDivElement>(null);
  const reasons = writtenReasons(data, timeToKeep());
  const signer = useSigner(job);
  // The drawings are those of the sheet that lies ready for printing.
  useLayoutEffect(() => setDrawings(drawingsOn(paper.current)), [data]);
  return (
    <Page
      title={`Files of ${job.name}`}
      back={{ href: hrefOf({ at: 'sheet', jobId: job.id }), to: 'the sheet' }}
      foot={
        <Button kind="main" onPress={() => print()}>
          Print or save as PDF
        </Button>
      }
    >
      <div class="files not-printed">
        {said !== '' && <p class="files-said">{said}</p>}
        <h2>For a spreadsheet (CSV)</h2>
        <Row
          title="Readings"
          detail={`${counted(data.readings.length, 'reading')}, struck-out ones too`}
          onPress={() => give(() => readingsFile(data))}
        />
        <Row
          title="Cuts"
          detail={`${counted(data.cuts.length, 'cut')} with every measurement`}
          onPress={() => give(() => cutsFile(data))}
        />
        {reasons.length > 0 && (
          <Row
            title="Reasons"
            detail={`${counted(reasons.length, 'thing')} that stands by a written reason`}
            onPress={() => give(() => reasonsFile(data, reasons))}
          />
        )}
        <h2>Drawings (SVG)</h2>
        {drawings.length === 0 && <p>Each worksheet that is worked out gives a drawing.</p>}
        {drawings.map(({ title, svg }) => (
          <Row
            key={title}
            title={title}
            detail="black on white"
            onPress={() => give(async () => svgFile(data, title, svg))}
          />
        ))}
        <RoundPartRows data={data} onGive={(file) => void give(file)} />
      </div>
      <div ref={paper} class="files-paper sheet-ink">
        <OnPaper name={job.name}>
          <SheetDocument data={data} today={timeToKeep()} signer={signer} />
        </OnPaper>
      </div>
    </Page>
  );
}

/** Every drawing with its worksheet's title, numbered where a worksheet has several or two share a title. */
function drawingsOn(paper: HTMLElement | null): readonly Drawn[] {
  const found = [...(paper?.querySelectorAll('.sheet-worksheet') ?? [])].flatMap((section) => {
    const title = section.querySelector('h4')?.textContent ?? '';
    return [...section.querySelectorAll<SVGSVGElement>('svg.drawing')].map((svg) => ({ title, svg }));
  });
  return found.map(({ title, svg }, index) => {
    const before = found.slice(0, index).filter((one) => one.title === title).length;
    return { title: before === 0 ? title : `${title} ${before + 1}`, svg };
  });
}

async function readingsFile({ job, features, parts, readings }: SheetData): Promise<File> {
  const { readingsCsv } = await import('./csv.ts');
  return spreadsheet(fileName([job.name, 'readings'], 'csv'), readingsCsv({ features, parts, readings }));
}

async function cutsFile(data: SheetData): Promise<File> {
  const { job, cuts } = data;
  const { cutsCsv } = await import('./csv.ts');
  return spreadsheet(
    fileName([job.name, 'cuts'], 'csv'),
    cutsCsv(cuts, olderAmong(cuts.filter(countsStill), data)),
  );
}

async function reasonsFile({ job }: SheetData, reasons: readonly WrittenReasonLine[]): Promise<File> {
  const { reasonsCsv } = await import('./csv.ts');
  return spreadsheet(fileName([job.name, 'reasons'], 'csv'), reasonsCsv(reasons));
}

function svgFile({ job }: SheetData, title: string, svg: SVGSVGElement): File {
  const text = drawingFile(svg, `${title}, ${job.name}`);
  return new File([text], fileName([job.name, title], 'svg'), { type: 'image/svg+xml' });
}
