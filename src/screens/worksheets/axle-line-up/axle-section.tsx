import type { Length } from '../../../engine/length/length.ts';
import type { LineUpAnswer, Spacer } from '../../../engine/worksheets/axle-line-up/line-up.ts';
import type { AxleScale, DrawnPart } from './axle-drawing-scale.ts';
import type { AxleSketch } from './axle-sketch.ts';

/** Where the axle lies: its middle, how far it reaches above that, and whether there is room for its lower half. */
export type AxlePlace = {
  readonly left: number;
  readonly right: number;
  readonly axis: number;
  readonly half: number;
  readonly isWhole: boolean;
};

export const LEG = 18;
// How high the parts stand above the axle's middle where there are 40 px for it.
const FULL = 40;

/** An axle cut along its middle, from leg to leg; where there is little room only the half above the middle. */
export function AxleSection({
  sketch,
  scale,
  place,
}: {
  sketch: AxleSketch;
  scale: AxleScale;
  place: AxlePlace;
}) {
  const { axis, half, isWhole, left, right } = place;
  return (
    <>
      <path class="drawing-centre" d={`M0 ${axis}H${right + LEG + 6}`} />
      <Half sketch={sketch} scale={scale} place={place} sign={-1} />
      {isWhole && <Half sketch={sketch} scale={scale} place={place} sign={1} />}
      <Sleeves sketch={sketch} scale={scale} place={{ left, right, axis, half, isWhole }} />
    </>
  );
}

type HalfProps = {
  readonly sketch: AxleSketch;
  readonly scale: AxleScale;
  readonly place: AxlePlace;
  /** −1 above the middle, 1 below. */
  readonly sign: 1 | -1;
};

/** One half: `box` lays a rectangle from a height above the middle to another. */
function Half({ sketch, scale, place, sign }: HalfProps) {
  const { question, answer } = sketch;
  const { axis, half, left, right } = place;
  const up = (height: number) => axis + (sign * height * half) / FULL;
  const box = (x: number, width: number, from: number, to: number) => ({
    x,
    width: Math.max(0, width),
    y: Math.min(up(from), up(to)),
    height: Math.abs(up(to) - up(from)),
  });
  const part = (name: string) => scale.parts.find((one) => one.name === name);
  const plane = (name: string) => answer.planes.find((one) => one.name === name)?.at;
  const hub = part('hub');
  const plate = part('plate');
  const isStub = question.layout.name === 'trailer-hub';
  const nutLeft = isStub && question.side === 'left';
  const wheelAt = plane('wheel centre');
  const faceAt = plane('wheel face');
  const sprocketAt = plane('sprocket');
  return (
    <>
      <End x={left - LEG} isNut={nutLeft} box={box} up={up} />
      <End x={right} isNut={isStub && !nutLeft} box={box} up={up} />
      {wheelAt && <Wheel x={scale.at(wheelAt)} hub={hub} box={box} up={up} />}
      {faceAt && <path d={`M${scale.at(faceAt)} ${up(8)}V${up(38)}`} />}
      {hub && plate && <Drum plate={plate} hub={hub} box={box} />}
      {hub && <Hub hub={hub} box={box} />}
      {sprocketAt && hub && (
        <>
          <path d={flangePath(scale.at(sprocketAt), hub, up)} />
          <rect class="drawing-solid" {...box(scale.at(sprocketAt) - 3, 6, 26, 36)} stroke-dasharray="4 3" />
        </>
      )}
      {discsOf(answer).map(({ disc, bracket }) => {
        const drawn = part(bracket);
        return (
          drawn &&
          hub && <Disc key={bracket} x={scale.at(disc)} bracket={drawn} hub={hub} box={box} up={up} />
        );
      })}
      {spacersInLine(sketch, scale).map(({ spacer, drawn }) => (
        <rect
          key={spacer.name}
          class={`drawing-part ${changes(sketch, spacer) ? 'drawing-changes' : 'drawing-solid'}`}
          {...box(drawn.x, drawn.width, 8, 25)}
        />
      ))}
    </>
  );
}

type Box = (
  x: number,
  width: number,
  from: number,
  to: number,
) => { readonly x: number; readonly width: number; readonly y: number; readonly height: number };
type Up = (height: number) => number;

/** A leg, hatched; on a stub axle the nut. */
function End({ x, isNut, box, up }: { x: number; isNut: boolean; box: Box; up: Up }) {
  if (isNut) return <rect class="drawing-solid axle-nut" {...box(x, LEG, 0, 18)} />;
  const lines = [10, 20, 30, 40].map((height) => `M${x} ${up(height)}L${x + LEG} ${up(height - 10)}`);
  return (
    <>
      <rect class="axle-leg" {...box(x, LEG, 0, FULL)} />
      <path class="drawing-hatch" d={lines.join(' ')} />
    </>
  );
}

/** The rim over the hub with its own middle; spokes lead to it. */
function Wheel({ x, hub, box, up }: { x: number; hub: DrawnPart | undefined; box: Box; up: Up }) {
  return (
    <>
      {hub && (
        <path
          class="drawing-hatch"
          d={`M${hub.x + 10} ${up(30)}L${x - 10} ${up(34)} M${hub.x + hub.width - 10} ${up(30)}L${x + 10} ${up(34)}`}
        />
      )}
      <rect class="drawing-solid" {...box(x - 24, 48, 33, FULL)} rx="4" />
      <path class="drawing-centre" d={`M${x} ${up(0)}V${up(FULL)}`} />
    </>
  );
}

function Hub({ hub: { x, width }, box }: { hub: DrawnPart; box: Box }) {
  const flange = Math.min(12, width / 5);
  return (
    <>
      <rect class="drawing-solid" {...box(x, width, 4, 21)} />
      <rect class="drawing-solid" {...box(x + 4, flange, 21, 30)} />
      <rect class="drawing-solid" {...box(x + width - 4 - flange, flange, 21, 30)} />
    </>
  );
}

/** From a flange of the hub to what is bolted to it. */
function flangePath(x: number, hub: DrawnPart, up: Up): string {
  const face = x < hub.x + hub.width / 2 ? hub.x + 8 : hub.x + hub.width - 8;
  return `M${face} ${up(28)}H${x}`;
}

type DiscProps = {
  readonly x: number;
  readonly bracket: DrawnPart;
  readonly hub: DrawnPart;
  readonly box: Box;
  readonly up: Up;
};

/** The disc stands on the hub's flange; the bracket hangs over its edge and sits on the sleeve. */
function Disc({ x, bracket, hub, box, up }: DiscProps) {
  const isRight = bracket.x > hub.x;
  const arm = isRight ? bracket.x + bracket.width - 6 : bracket.x;
  const [from, to] = [Math.min(x - 10, arm), Math.max(x + 10, arm + 6)];
  return (
    <>
      <path d={flangePath(x, hub, up)} />
      <rect class="drawing-solid" {...box(x - 2, 4, 27, 36)} />
      <rect class="drawing-solid" {...box(from, to - from, 37, FULL)} />
      <rect class="drawing-solid" {...box(x - 10, 6, 29, 37)} />
      <rect class="drawing-solid" {...box(x + 4, 6, 29, 37)} />
      <rect class="drawing-solid" {...box(arm, 6, 28, 37)} />
      <rect class="drawing-solid" {...box(bracket.x, bracket.width, 8, 28)} />
    </>
  );
}

function Drum({ plate, hub, box }: { plate: DrawnPart; hub: DrawnPart; box: Box }) {
  const inner = plate.x > hub.x ? hub.x + hub.width * 0.62 : hub.x;
  return (
    <>
      <rect {...box(inner, hub.width * 0.38, 21, 38)} />
      <rect class="drawing-solid" {...box(plate.x, plate.width, 4, 36)} />
    </>
  );
}

/** From the hub's face to the leg, under the spacers and the bracket that sits on it. */
function Sleeves({ sketch, scale, place }: Omit<HalfProps, 'sign'>) {
  const hub = scale.parts.find(({ name }) => name === 'hub');
  if (!hub) return null;
  const { axis, half, isWhole, left, right } = place;
  const thick = (8 * half) / FULL;
  const bracketIsLeft = scale.parts.some(({ name, x }) => name === 'bracket' && x < hub.x);
  return (
    <>
      {sketch.answer.spacers
        .filter(({ name }) => /sleeve/i.test(name))
        .map((sleeve) => {
          const isLeft = sleeve.name === 'leftSleeve' || (sleeve.name === 'sleeve' && bracketIsLeft);
          const [x, end] = isLeft ? [left, hub.x] : [hub.x + hub.width, right];
          return (
            <rect
              key={sleeve.name}
              class={`drawing-part ${changes(sketch, sleeve) ? 'drawing-changes' : 'drawing-solid'}`}
              x={x}
              y={axis - thick}
              width={Math.max(0, end - x)}
              height={isWhole ? 2 * thick : thick}
            />
          );
        })}
    </>
  );
}

export type SpacerDrawn = { readonly spacer: Spacer; readonly drawn: DrawnPart };

/** Spacers that have a place of their own in the row, from left to right; a sleeve runs through others. */
export function spacersInLine({ answer }: AxleSketch, { parts }: AxleScale): readonly SpacerDrawn[] {
  return answer.spacers.flatMap((spacer) => {
    const drawn = parts.find(({ name }) => name === spacer.name);
    return drawn ? [{ spacer, drawn }] : [];
  });
}

function changes({ isSketch }: AxleSketch, spacer: Spacer): boolean {
  return !isSketch && isToChange(spacer);
}

/** Brass: what is not right yet. */
export function isToChange({ deed }: Spacer): boolean {
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
