import { cutName, tapOfCut } from '../../engine/thread/tap-name.ts';
import { isMore, zero } from '../../engine/length/length.ts';
import { figure, figureBetween, show, showBetween, type ShownUnit } from '../../engine/length/show.ts';
import { removeCut, setCutState, type SaidCutState } from '../../store/kept/cuts.ts';
import type { Cut } from '../../store/base/records.ts';
import { goInstead, hrefOf } from '../address.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { HoleCaution } from '../common/hole-caution.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { VerdictBand } from '../common/verdict-band.tsx';
import { Trouble, useTold } from '../common/told.tsx';
import { Lead, LeadNext } from '../worksheets/lead.tsx';
import { OlderBasis } from './cut-basis.tsx';
import { PhotoStrip } from '../photos/photo-strip.tsx';
import { useCutOlder } from '../older/job-ground.ts';
import { CutMark } from './cut-mark.tsx';
import { leftToTake, presentAt20 } from './cut-now.ts';
import { CutPasses } from './cut-passes.tsx';
import { CUT_SIZES, type CutSize } from './cut-size-screen.tsx';
import {
  hasItsOwnSize,
  MACHINE_WORDS,
  materialWords,
  measuredOn,
  placeWords,
  setUpWords,
  STATE_WORDS,
  TOOL_WORDS,
  assumedOf,
  isStillOpen,
  strengthOf,
} from './cut-words.ts';
import { machineAction } from './cuts-screen.tsx';
import './cut-form.css';

/** One cut, whole: how much is left, its figures, its passes, and what becomes of it. */
export function CutForm({ cut }: { cut: Cut }) {
  const unit = useShownUnit();
  const older = useCutOlder(cut);
  const setOver = setUpWords(cut, unit);
  return (
    <Page
      title={cutName(cut)}
      subtitle={[cut.part, ...(cut.material === undefined ? [] : [materialWords(cut.material, unit)])].join(
        ', ',
      )}
      back={{ href: hrefOf({ at: 'cuts', jobId: cut.jobId }), to: 'the cuts' }}
      {...(isStillOpen(cut) && { foot: <MainAction cut={cut} /> })}
    >
      <OlderBasis cut={cut} />
      <StateBand cut={cut} unit={unit} older={older === true} />
      <WhatIsLeft cut={cut} unit={unit} />
      {strengthOf(cut) !== '' && <p class="cut-form-strength">{strengthOf(cut)}</p>}
      {isStillOpen(cut) && hasItsOwnSize(cut) && <HoleCaution />}
      {setOver.length > 0 && <p class="cut-form-strength">{setOver.join(' ')}</p>}
      {cut.stands && <p class="cut-form-strength">{`It stands ${placeWords(cut, unit)}.`}</p>}
      <Figures cut={cut} unit={unit} />
      <CutPasses cut={cut} unit={unit} />
      <PhotoStrip owner={{ store: 'cuts', id: cut.id }} jobId={cut.jobId} />
      <Fate cut={cut} />
    </Page>
  );
}

function fieldAt(cut: Cut, field: string): string {
  return hrefOf({ at: 'cut', jobId: cut.jobId, cutId: cut.id, field });
}

function MainAction({ cut }: { cut: Cut }) {
  if (cut.state === 'over' && hasItsOwnSize(cut))
    return (
      <LinkButton kind="main" href={fieldAt(cut, 'again')}>
        Make it again
      </LinkButton>
    );
  if (hasItsOwnSize(cut) && !cut.stands)
    return (
      <LinkButton kind="main" href={fieldAt(cut, 'measured')}>
        Done: measure it
      </LinkButton>
    );
  return (
    <LinkButton kind="main" href={hrefOf({ at: 'lathe', jobId: cut.jobId, cutId: cut.id })}>
      {cut.state === 'over' ? 'See the ways out' : machineAction(cut)}
    </LinkButton>
  );
}

function StateBand({ cut, unit, older }: { cut: Cut; unit: ShownUnit; older: boolean }) {
  const present = presentAt20(cut);
  const size = present ? `: ${show(present, unit)}` : '';
  const wants = `wants ${showBetween(cut.lower.exact, cut.upper.exact, unit)} ${unit}`;
  // To the figures of before it may be; what it is to those of today nobody has said.
  if (cut.state === 'to-size' && !older)
    return (
      <VerdictBand kind="good" headline={`To size${size}.`}>
        <p>{wants}</p>
      </VerdictBand>
    );
  if (cut.state === 'over')
    return (
      <VerdictBand kind="no-good" headline={`Over${size}, past the limit.`}>
        <p>{wants}</p>
      </VerdictBand>
    );
  return (
    <p class="cut-form-state">
      <CutMark state={cut.state} spoken={false} />
      <span>{cut.state === 'to-size' ? 'to size by its older figures' : STATE_WORDS[cut.state]}</span>
    </p>
  );
}

function WhatIsLeft({ cut, unit }: { cut: Cut; unit: ShownUnit }) {
  const left = leftToTake(cut);
  const present = presentAt20(cut);
  const from = `good from ${showBetween(cut.lower.exact, cut.upper.exact, unit)} ${unit}`;
  const good = [from, assumedOf(cut)].filter(Boolean).join('; ');
  const target = figureBetween(cut.target.exact, cut.lower.exact, cut.upper.exact, unit);
  const own = cut.drill ?? tapOfCut(cut);
  if (own !== undefined && isStillOpen(cut) && cut.state !== 'over')
    return (
      <Lead label={cut.drill === undefined ? 'Tap with' : 'Drill'} figure={own}>
        <LeadNext>{`hole ${show(cut.target.exact, unit)}`}</LeadNext>
        <p>{good}</p>
      </Lead>
    );
  if (!isStillOpen(cut) || cut.state === 'over') return null;
  if (!left || !present || !isMore(left, zero))
    return (
      <Lead label="Cut to" figure={target} unit={unit}>
        <p>{`${good}, ${measuredOn(cut)}`}</p>
      </Lead>
    );
  return (
    <Lead label="Left to take" figure={figure(left, unit)} unit={unit}>
      <LeadNext>{`${figure(present, unit)} → ${target}`}</LeadNext>
      <p>{`${good}, ${measuredOn(cut)}`}</p>
    </Lead>
  );
}

/** All that it stands on, each line one press from being changed. */
function Figures({ cut, unit }: { cut: Cut; unit: ShownUnit }) {
  const sizes = CUT_SIZES.filter(
    ({ name }) => name !== 'measured' && (!hasItsOwnSize(cut) || !FOR_PASSES.has(name)),
  );
  return (
    <section class="cuts-group">
      <h2>Sizes and material</h2>
      <ul>
        {sizes.map((size) => (
          <li key={size.name}>
            <SizeRow cut={cut} size={size} unit={unit} />
          </li>
        ))}
        <li>
          <Row href={fieldAt(cut, 'material')} title="Material" detail={materialWords(cut.material, unit)} />
        </li>
        <li>
          <Row href={fieldAt(cut, 'tool')} title="Cutting tool" detail={TOOL_WORDS[cut.cuttingTool]} />
        </li>
        <li>
          <Row href={fieldAt(cut, 'machine')} title="Machine" detail={MACHINE_WORDS[cut.machine]} />
        </li>
        <li>
          <Row href={fieldAt(cut, 'name')} title="Name and part" detail={`${cutName(cut)} · ${cut.part}`} />
        </li>
        {cut.worksheetId !== undefined && (
          <li>
            <Row
              href={hrefOf({ at: 'worksheet', jobId: cut.jobId, worksheetId: cut.worksheetId })}
              title="Its worksheet"
              detail="where the figures were worked out"
            />
          </li>
        )}
      </ul>
    </section>
  );
}

const FOR_PASSES: ReadonlySet<CutSize['name']> = new Set(['largestTake', 'finishTake']);

const NOT_GIVEN: Partial<Readonly<Record<CutSize['name'], string>>> = {
  blank: 'not measured yet',
  largestTake: 'usual for the material and tool',
  finishTake: 'usual for the material and tool',
};

function SizeRow({ cut, size, unit }: { cut: Cut; size: CutSize; unit: ShownUnit }) {
  const entry = size.name === 'measured' ? undefined : cut[size.name];
  const detail =
    size.name === 'lower' || size.name === 'upper'
      ? [cut.limitsFrom, assumedOf(cut)].filter(Boolean).join('; ')
      : NOT_GIVEN[size.name];
  return (
    <Row
      href={fieldAt(cut, size.name)}
      title={size.label}
      {...(entry && { figure: figure(entry.exact, unit) })}
      {...((!entry || size.name === 'lower') && detail !== undefined && { detail })}
    />
  );
}

/** What becomes of it: a spare, another one, the scrap box. */
function Fate({ cut }: { cut: Cut }) {
  const store = useStore();
  const { trouble, told } = useTold();
  const become = (state: SaidCutState) => void told(setCutState(store, cut.id, state));
  const back = () => goInstead({ at: 'cuts', jobId: cut.jobId });
  return (
    <section class="cut-form-fate">
      <div class="cut-form-keys">
        {cut.state === 'to-size' && <LinkButton href={fieldAt(cut, 'spare')}>Made a spare</LinkButton>}
        <LinkButton href={fieldAt(cut, 'again')}>Make it again</LinkButton>
        {cut.state === 'scrapped' ? (
          <Button onPress={() => become('to-cut')}>Not scrapped after all</Button>
        ) : (
          cut.state !== 'made-again' && <Button onPress={() => become('scrapped')}>Scrapped</Button>
        )}
        <Button onPress={() => told(removeCut(store, cut.id), back)}>Take it off the list</Button>
      </div>
      <Trouble>{trouble}</Trouble>
    </section>
  );
}
