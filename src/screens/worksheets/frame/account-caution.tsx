import type { CautionName } from '../../../engine/worksheets/account.ts';
import { HOLE_WEAKER } from '../../../engine/cut/say-strength.ts';
import { Caution } from '../../common/caution.tsx';

type Words = { readonly heading: string; readonly text: string };

const WEAKER: Words = { heading: 'Weaker after it:', text: HOLE_WEAKER };

const WORDS: Readonly<Record<Exclude<CautionName, 'lathe'>, Words>> = {
  insert: {
    heading: 'What an insert gives back:',
    text: `a good thread, not the metal that was lost. A crack stays a crack. ${HOLE_WEAKER}`,
  },
  bushing: {
    heading: 'What a bushing gives back:',
    text: `the size of the hole, not the metal’s strength. Look for a crack before you ream. ${HOLE_WEAKER}`,
  },
  engagement: {
    heading: 'What this does and doesn’t say:',
    text: 'it holds for full, clean threads and one steady pull. The service manual’s bolt, length and torque rule.',
  },
  steering: {
    heading: 'Steering kills.',
    text: 'Keep to the trail in the service manual, ride nothing that shakes its head, and have a changed front end checked by a licensed person.',
  },
  alignment: {
    heading: 'Wheels and steering kill.',
    text: 'The manual’s figures rule. Tighten every fitting to its torque, try it slowly, and have it checked by a licensed person.',
  },
  bracket: {
    heading: 'What holds the bracket?',
    text: 'A bracket on a sleeve is free to turn. Name the torque arm or lug that holds it, and keep its bolt through metal on both sides.',
  },
  plate: {
    heading: 'A wheel or brake on an adapter can come off.',
    text: 'Holes in place prove no strength. Have plate, studs and thread engagement judged by a licensed person, ask whether it is allowed, and torque it again after the first miles.',
  },
  hole: WEAKER,
  strength: WEAKER,
};

/** What an account cautions of, in the words that phone and paper share; of the lathe its own places say it. */
export function AccountCaution({ of, inText }: { of: CautionName; inText?: true }) {
  if (of === 'lathe') return null;
  const { heading, text } = WORDS[of];
  return (
    <Caution {...(inText && { inText })} heading={heading}>
      {text}
    </Caution>
  );
}
