import { describe, expect, test } from 'vitest';
import { chosenWay } from '../../../src/engine/cut/chosen-way.ts';
import type { CutOffer } from '../../../src/engine/cut/cut.ts';
import type { CutWay } from '../../../src/engine/cut/cuts-of-way.ts';
import { lengthOf } from '../../../src/engine/length/length.ts';

const size = lengthOf('1/2 in');

const offer = (name: string, part: string, of: CutOffer['of']): CutOffer => ({
  name,
  part,
  operation: of === 'bore' ? 'ream' : 'turn',
  of,
  target: size,
  lower: size,
  upper: size,
  limitsFrom: 'a try',
});

const reamed = offer('Bore, reamed 1/2', 'bore', 'bore');
const bushing: CutWay = {
  id: 'bushing',
  name: 'Bushing',
  offers: [reamed, offer('Bushing, outside turned', 'bushing', 'outside')],
};
const offset: CutWay = {
  id: 'offset-bushing',
  name: 'Offset bushing',
  offers: [reamed, offer('Bushing blank, outside turned', 'bushing', 'outside')],
};

describe('which way is gone', () => {
  test('is told by the cuts on the list, the shared ones too', () => {
    expect(chosenWay([bushing, offset], offset.offers)?.id).toBe('offset-bushing');
    expect(chosenWay([bushing, offset], bushing.offers)?.id).toBe('bushing');
  });

  test('nobody knows while only a cut that both take is on it, or none', () => {
    expect(chosenWay([bushing, offset], [reamed])).toBeUndefined();
    expect(chosenWay([bushing, offset], [])).toBeUndefined();
    expect(chosenWay([bushing, offset], [offer('Shaft, turned', 'shaft', 'outside')])).toBeUndefined();
  });

  test('stays known when the fitter gives its cut another name', () => {
    const named = offer('The bronze piece', 'bushing', 'outside');
    expect(chosenWay([bushing], [named])?.id).toBe('bushing');
  });
});
