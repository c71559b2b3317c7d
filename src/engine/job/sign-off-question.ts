import type { CheckFound } from '../reading/check.ts';
import type { Touched } from './safety.ts';

export type SignOffStep = {
  readonly id: string;
  readonly text: string;
  /** When it was done, milliseconds since 1970. */
  readonly doneAt?: number;
  /** What it was done by has changed since, so that it has to be done again. */
  readonly changed?: boolean;
  readonly locker?: string;
  /** Hours until the locker has cured, as decimal text. */
  readonly cureHours?: string;
  /** A step that is torqued: the manual's figure and where it stands; empty text is not given yet. */
  readonly torque?: { readonly typed: string; readonly source: string };
};

/** What stands in a record now, as short text: a reason holds for a blocker only as long as this stays the same. */
type AsItStands = { readonly as?: string };

/** What a worksheet's answer comes to, checks of it counted; `not-judged`: nothing that was measured is held against limits. */
export type WorksheetFound = 'good' | 'no-good' | 'too-close' | 'no-answer' | 'not-judged';

/** Why something that stops the signing may stand, as it was written, and what it was written about. */
export type WrittenReason = { readonly why: string; readonly as: string };

export type SignOffQuestion = Touched & {
  /** Milliseconds since 1970. */
  readonly now: number;
  /** In their order. */
  readonly steps: readonly (SignOffStep & AsItStands)[];
  readonly parts: readonly ({
    readonly id: string;
    readonly name: string;
    readonly isMockUp: boolean;
  } & AsItStands)[];
  readonly worksheets?: readonly ({
    readonly id: string;
    readonly title: string;
    readonly found: WorksheetFound;
    /** Its answer in one sentence, in the fitter's unit. */
    readonly said: string;
    /** A cut, a check or a step came from it. */
    readonly used: boolean;
    /** Every check that it offers was made, and is good. */
    readonly checked?: boolean;
    /** What nobody said and its verdict hangs on, and where the first of it is said. */
    readonly assumed?: { readonly words: string; readonly field: string };
    /** A size of it that was read on another part only, and that no check of the joint stands in for. */
    readonly ofAnother?: { readonly words: string; readonly field: string };
  } & AsItStands)[];
  readonly checks: readonly ({
    readonly id: string;
    readonly name: string;
    readonly found: CheckFound;
    /** Its limits were worked out from readings that no longer count, or that newer ones stand beside. */
    readonly older: boolean;
    /** It was read before a size behind it changed. */
    readonly readBefore?: boolean;
  } & AsItStands)[];
  /** Worksheets that offer checks of which none was made; used where a cut or a step came from their answer. */
  readonly unchecked: readonly ({
    readonly id?: string;
    readonly title: string;
    readonly used: boolean;
  } & AsItStands)[];
  readonly cuts: readonly ({
    readonly id: string;
    readonly name: string;
    readonly state: 'to-cut' | 'cutting' | 'to-size' | 'over' | 'scrapped' | 'made-again';
    readonly older: boolean;
    /** It was measured last with a tool that can't prove these limits wherever between them it reads. */
    readonly tooCoarse?: { readonly tool?: string; readonly isAssumed?: true };
  } & AsItStands)[];
  /** What the fitter wrote, by the key of the finding it is about. */
  readonly reasons?: Readonly<Record<string, WrittenReason>>;
  /** A re-check waits for a distance, and no odometer reading was typed to count it from. */
  readonly lacksOdometer: boolean;
  /** Records of the job that this version can't read: nobody knows what they say. */
  readonly unreadable?: number;
};
