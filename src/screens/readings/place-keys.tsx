import type { ComponentChildren } from 'preact';
import type { Direction, Place } from '../../engine/reading/reading.ts';
import { Button } from '../common/button.tsx';
import './place-keys.css';

type PlaceKeysProps = {
  readonly place?: Place;
  readonly direction?: Direction;
  readonly onPlace: (place: Place | 'none') => void;
  /** Left out where the kind is read in no direction. */
  readonly onDirection?: (direction: Direction | 'none') => void;
  /** A key before them in the row. */
  readonly children?: ComponentChildren;
};

const PLACES: readonly { readonly place: Place; readonly short: string }[] = [
  { place: 'top', short: 'top' },
  { place: 'middle', short: 'mid' },
  { place: 'bottom', short: 'low' },
];

/** Where the next reading is taken, and in which direction across a bore or pin. A second press takes it back. */
export function PlaceKeys({ place, direction, onPlace, onDirection, children }: PlaceKeysProps) {
  return (
    <div class="place-keys" role="group" aria-label="Where the reading is taken">
      {children}
      {PLACES.map(({ place: one, short }) => (
        <Button
          key={one}
          chosen={place === one}
          {...(short !== one && { label: `${short}: ${one}` })}
          onPress={() => onPlace(place === one ? 'none' : one)}
        >
          {short}
        </Button>
      ))}
      {(onDirection ? (['0', '90'] satisfies Direction[]) : []).map((one) => (
        <Button
          key={one}
          chosen={direction === one}
          // What is seen stands in what is spoken, so that it can be pressed by saying it.
          label={`${one}° across`}
          onPress={() => onDirection?.(direction === one ? 'none' : one)}
        >
          {one}°
        </Button>
      ))}
    </div>
  );
}
