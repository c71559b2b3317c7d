import type { LineUpAnswer, LineUpQuestion, Spacer } from '../../engine/worksheets/axle-line-up/line-up.ts';
import { absolute, isNegative, isZero, minus, sum, type Length } from '../../engine/length/length.ts';
import { sayCheck, sayDeed } from '../../engine/worksheets/axle-line-up/say-line-up.ts';
import {
  sizeName,
  spacerLetter,
  spacerName,
} from '../../engine/worksheets/axle-line-up/say-line-up-names.ts';
import { figure, show, type ShownUnit } from '../../engine/length/show.ts';
import { apart, axleScale, type AxleScale, type DrawnPart } from './axle-drawing-scale.ts';
import '../common/drawing.css';
import { capital } from '../../engine/length/say-words.ts';

type AxleDrawingProps = {
  readonly question: LineUpQuestion;
  readonly answer: LineUpAnswer;
  readonly unit: ShownUnit;
};

const LEFT = 30;
const RIGHT = 360;
const AXIS = 132;
const LEAST_MISS = 9;

/** The whole axle cut along its middle, from leg to leg, to scale; the spacers that are not right yet are brass. */
export function AxleDrawing({ question, answer, unit }: AxleDrawingProps) {
  const scale = axleScale(answer.parts, LEFT, RIGHT - LEFT);
  const part = (name: string) => scale.parts.find((one) => one.name === name);
  const plane = (name: string) => answer.planes.find((one) => one.name === name)?.at;
  const hub = part('hub');
  const isStub = question.layout.name === 'trailer-hub';
  const stubLeft = isStub && question.side === 'left';
  const miss = missOf(answer, scale);
  const sprocketAt = plane('sprocket');
  const wheelAt = plane('wheel centre') ?? plane('wheel face');
  return (
    <svg class="drawing" viewBox="0 0 390 286" role="img" aria-label={spoken(question, answer, unit)}>
      <path class="drawing-centre" d={`M0 ${AXIS}h390`} />
      <End x={6} isNut={stubLeft} />
      <End x={RIGHT} isNut={isStub && !stubLeft} />
      <WholeWidth question={question} answer={answer} unit={unit} />
      {wheelAt && <Wheel x={scale.at(wheelAt)} hub={hub} isFace={isStub} />}
      {sprocketAt && hub && <Sprocket x={scale.at(sprocketAt)} hub={hub} />}
      {hub && part('plate') && <Drum plate={part('plate')} hub={hub} />}
      {discsOf(answer).map(({ disc, bracket }) => {
        const drawn = part(bracket);
        return drawn && hub && <DiscAndBracket key={bracket} x={scale.at(disc)} bracket={drawn} hub={hub} />;
      })}
      {hub && <Hub hub={hub} text={`hub ${figure(lengthOfPart(answer, 'hub'), unit)}`} />}
      <Sleeves answer={answer} scale={scale} />
      <Spacers question={question} answer={answer} scale={scale} unit={unit} />
      {miss && <path class="drawing-changes" stroke-dasharray="7 5" d={`M${miss.wanted} 40V${AXIS + 86}`} />}
      {(scale.widened || miss?.widened === true) && (
        <text class="drawing-note" x="195" y="277" text-anchor="middle" style={{ fontWeight: 400 }}>
          what is narrow is drawn wider
        </text>
      )}
    </svg>
  );
}

/** A leg, hatched; on a stub axle the nut. */
function End({ x, isNut }: { x: number; isNut: boolean }) {
  if (isNut)
    return (
      <>
        <rect class="drawing-solid" x={x} y={AXIS - 26} width="24" height="52" />
        <path d={`M${x} ${AXIS - 9}h24 M${x} ${AXIS + 9}h24 M${x + 12} ${AXIS - 32}v12`} />
      </>
    );
  const lines = [60, 84, 108, 132, 156, 180, 204].map((y) => `M${x} ${y + 14}l24 -24`).join(' ');
  return (
    <>
      <rect x={x} y="44" width="24" height="176" />
      <path class="drawing-hatch" d={lines} />
    </>
  );
}

function WholeWidth({ question, answer, unit }: AxleDrawingProps) {
  const whole = sum(answer.parts.map(({ length }) => length));
  const name = sizeName(question.layout.name === 'trailer-hub' ? 'seat' : 'width');
  return (
    <>
      <path class="drawing-hatch" d={`M${LEFT} 30H${RIGHT} M${LEFT} 24v12 M${RIGHT} 24v12`} />
      <text x="195" y="24" text-anchor="middle">
        {`${name} ${figure(whole, unit)}`}
      </text>
    </>
  );
}

/** The rim over the hub, with its own middle; on a stub axle the face the wheel bolts to. */
function Wheel({ x, hub, isFace }: { x: number; hub: DrawnPart | undefined; isFace: boolean }) {
  if (isFace) return <path d={`M${x} 46v172 M${x - 5} 46v54 M${x - 5} 164v54`} />;
  const spokes = hub
    ? `M${hub.x + 14} ${AXIS - 30}L${x - 12} 66 M${hub.x + hub.width - 14} ${AXIS - 30}L${x + 12} 66 M${hub.x + 14} ${AXIS + 30}L${x - 12} 198 M${hub.x + hub.width - 14} ${AXIS + 30}L${x + 12} 198`
    : '';
  return (
    <>
      <path class="drawing-hatch" d={spokes} />
      <rect class="drawing-solid" x={x - 34} y="42" width="68" height="24" rx="9" />
      <rect class="drawing-solid" x={x - 34} y="198" width="68" height="24" rx="9" />
      <path class="drawing-centre" d={`M${x} 38v188`} />
    </>
  );
}

function Hub({ hub, text }: { hub: DrawnPart; text: string }) {
  const flange = Math.min(14, hub.width / 4);
  return (
    <>
      <path
        class="drawing-solid"
        d={`M${hub.x} ${AXIS - 20}h${flange / 2}v-14h${flange}v10H${hub.x + hub.width - flange * 1.5}v-10h${flange}v14h${flange / 2}v40h-${flange / 2}v14h-${flange}v-10H${hub.x + flange * 1.5}v10h-${flange}v-14h-${flange / 2}z`}
      />
      <text x={hub.x + hub.width / 2} y={AXIS + 6} text-anchor="middle">
        {text}
      </text>
    </>
  );
}

/** The disc stands on the hub's flange; the bracket hangs over its edge and sits on the sleeve. */
function DiscAndBracket({ x, bracket, hub }: { x: number; bracket: DrawnPart; hub: DrawnPart }) {
  const isRight = bracket.x > hub.x;
  const face = isRight ? hub.x + hub.width - 10 : hub.x + 10;
  const outer = isRight ? bracket.x + bracket.width : bracket.x;
  const arm = isRight ? outer - 6 : outer;
  const [from, to] = [Math.min(x - 14, arm), Math.max(x + 14, arm + 6)];
  return (
    <>
      <path d={`M${face} ${AXIS - 28}H${x} M${face} ${AXIS + 28}H${x}`} />
      <rect class="drawing-solid" x={x - 2.5} y="70" width="5" height="34" />
      <rect class="drawing-solid" x={x - 2.5} y="160" width="5" height="34" />
      <rect class="drawing-solid" x={from} y="54" width={to - from} height="9" />
      <rect class="drawing-solid" x={x - 14} y="63" width="8" height="22" />
      <rect class="drawing-solid" x={x + 6} y="63" width="8" height="22" />
      <rect class="drawing-solid" x={arm} y="63" width="6" height={AXIS - 26 - 63} />
      <rect class="drawing-solid" x={bracket.x} y={AXIS - 26} width={bracket.width} height="16" />
      <rect class="drawing-solid" x={bracket.x} y={AXIS + 10} width={bracket.width} height="16" />
    </>
  );
}

function Sprocket({ x, hub }: { x: number; hub: DrawnPart }) {
  const face = x < hub.x + hub.width / 2 ? hub.x + 10 : hub.x + hub.width - 10;
  return (
    <>
      <path d={`M${face} ${AXIS - 28}H${x} M${face} ${AXIS + 28}H${x}`} />
      {[72, 164].map((y) => (
        <rect key={y} class="drawing-solid" x={x - 3.5} y={y} width="7" height="28" stroke-dasharray="4 3" />
      ))}
    </>
  );
}

function Drum({ plate, hub }: { plate: DrawnPart | undefined; hub: DrawnPart }) {
  if (!plate) return null;
  const isRight = plate.x > hub.x;
  const inner = isRight ? hub.x + hub.width * 0.62 : hub.x;
  return (
    <>
      <rect x={inner} y={AXIS - 50} width={hub.width * 0.38} height="100" />
      <rect class="drawing-solid" x={plate.x} y={AXIS - 46} width={plate.width} height="92" />
    </>
  );
}

/** Spacers with their letters and lengths under them, brass while they are not right; sleeves run inside. */
function Spacers({ question, answer, scale, unit }: AxleDrawingProps & { scale: AxleScale }) {
  const inLine = answer.spacers.flatMap((spacer) => {
    const drawn = scale.parts.find(({ name }) => name === spacer.name);
    return drawn ? [{ spacer, drawn }] : [];
  });
  const labels = apart(
    inLine.map(({ drawn }) => drawn.x + drawn.width / 2),
    93,
    52,
    336,
  );
  return (
    <>
      {inLine.map(({ spacer, drawn }, index) => {
        const changes = isToChange(spacer);
        const middle = drawn.x + drawn.width / 2;
        return (
          <g key={spacer.name}>
            {[AXIS - 22, AXIS + 6].map((y) => (
              <rect
                key={y}
                class={`drawing-part ${changes ? 'drawing-changes' : 'drawing-solid'}`}
                x={drawn.x}
                y={y}
                width={drawn.width}
                height="16"
              />
            ))}
            <path
              class={changes ? 'drawing-changes' : 'drawing-hatch'}
              stroke-width="1.2"
              d={`M${middle} ${AXIS + 22}V226L${labels[index] ?? middle} 236`}
            />
            <text
              class={changes ? 'drawing-changes-text' : undefined}
              x={labels[index]}
              y="253"
              text-anchor="middle"
            >
              {`${spacerLetter(spacer.name, question.layout)} ${drawnLength(spacer, unit)}`}
            </text>
          </g>
        );
      })}
    </>
  );
}

/** From the hub's face to the leg, under the spacers and the bracket that sits on it. */
function Sleeves({ answer, scale }: Pick<AxleDrawingProps, 'answer'> & { scale: AxleScale }) {
  const hub = scale.parts.find(({ name }) => name === 'hub');
  if (!hub) return null;
  const [from, to] = [hub.x, hub.x + hub.width];
  const sleeves = answer.spacers.filter(({ name }) => /sleeve/i.test(name));
  return (
    <>
      {sleeves.map((sleeve) => {
        const isLeft =
          sleeve.name === 'leftSleeve' || (sleeve.name === 'sleeve' && bracketIsLeft(scale, hub));
        const [x, end] = isLeft ? [LEFT, from] : [to, RIGHT];
        return (
          <rect
            key={sleeve.name}
            class={`drawing-part ${isToChange(sleeve) ? 'drawing-changes' : 'drawing-solid'}`}
            x={x}
            y={AXIS - 6}
            width={Math.max(0, end - x)}
            height="12"
          />
        );
      })}
    </>
  );
}

function bracketIsLeft({ parts }: AxleScale, hub: DrawnPart): boolean {
  return parts.some(({ name, x }) => name === 'bracket' && x < hub.x);
}

/** What is cut last has no length before the others are measured: none is drawn that could be cut to. */
function drawnLength({ deed, fitted }: Spacer, unit: ShownUnit): string {
  return deed.kind === 'last' ? 'last' : figure(fitted, unit);
}

function isToChange({ deed }: Spacer): boolean {
  return deed.kind !== 'keep' && deed.kind !== 'none' && deed.kind !== 'leave-out';
}

/** Each disc's plane with the bracket it runs in. */
function discsOf({ planes }: LineUpAnswer): readonly { readonly disc: Length; readonly bracket: string }[] {
  const brackets: Readonly<Record<string, string>> = {
    disc: 'bracket',
    'left disc': 'leftBracket',
    'right disc': 'rightBracket',
  };
  return planes.flatMap(({ name, at }) => {
    const bracket = brackets[name];
    return bracket === undefined ? [] : [{ disc: at, bracket }];
  });
}

/** Where the plane that gave way was wanted; a miss too small to see is drawn larger. */
function missOf({ checks, planes }: LineUpAnswer, scale: AxleScale) {
  const line = checks.find(({ kind, verdict }) => kind === 'line' && verdict.kind !== 'good');
  const plane = planes.find(
    ({ name }) => line && name === (line.name === 'sprocket line' ? 'sprocket' : line.name),
  );
  if (!line || !plane || isZero(line.value)) return undefined;
  const is = scale.at(plane.at);
  const away = scale.at(minus(plane.at, line.value)) - is;
  const widened = Math.abs(away) < LEAST_MISS;
  const drawn = widened ? LEAST_MISS * (isNegative(line.value) ? 1 : -1) : away;
  return { wanted: is + drawn, widened };
}

function lengthOfPart({ parts }: LineUpAnswer, name: string): Length {
  const part = parts.find((one) => one.name === name);
  if (!part) throw new Error(`no ${name} on this axle`);
  return part.length;
}

function spoken(question: LineUpQuestion, answer: LineUpAnswer, unit: ShownUnit): string {
  const parts = answer.parts
    .map(({ name, length }) => {
      const spacer = answer.spacers.find((one) => one.name === name);
      if (!spacer) return `${partName(name)} ${show(length, unit)}`;
      const what = spacerName(name, question).toLowerCase();
      if (spacer.deed.kind === 'last') return `${what}, ${sayDeed(spacer, unit).act}`;
      if (isNegative(spacer.fitted)) return `${what} ${show(absolute(spacer.fitted), unit)} short`;
      return `${what} ${show(spacer.fitted, unit)}, ${sayDeed(spacer, unit).act}`;
    })
    .join('; ');
  const sleeves = answer.spacers
    .filter(({ name }) => !answer.parts.some((part) => part.name === name))
    .map(({ name, fitted }) => ` ${spacerName(name, question)} ${show(fitted, unit)}.`)
    .join('');
  const planes = answer.planes
    .filter(({ name }) => !name.includes('slot'))
    .map(({ name, at }) => ` ${capital(name)} ${show(at, unit)} from the left.`)
    .join('');
  const lines = answer.checks
    .filter(({ kind }) => kind === 'line')
    .map((check) => ` ${sayCheck(check, unit)}`)
    .join('');
  return `From left to right: ${parts}.${sleeves}${planes}${lines}`;
}

function partName(name: string): string {
  if (name.includes('float')) return 'half the float';
  return sizeName(name);
}
