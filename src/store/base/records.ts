import type { StoreName } from './stores.ts';
import type { DecimalMark } from '../../engine/length/decimal-mark.ts';
import type { Entry } from '../../engine/length/entry.ts';
import type { Infeed, Operation } from '../../engine/cut/cut.ts';
import type { Unit } from '../../engine/length/length.ts';
import type { FeatureKind, MeasuringTool, ToolInForce } from '../../engine/reading/measuring-tool.ts';
import type { CutKind } from '../../engine/length/metal-on.ts';
import type { Direction, Place } from '../../engine/reading/reading.ts';
import type { System } from '../../engine/job/safety.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import type { Stamp } from './clock.ts';

export type { System } from '../../engine/job/safety.ts';

export type Id = string;

export type Stamps = { readonly '*': Stamp; readonly [path: string]: Stamp };

/** What every kept record carries beside its fields: when each was last written, and whether it was removed. */
export type Stamped = {
  /** By path: a field's name, `sizes.bore` for one entry of a map, `*` for every path without a stamp of its own. */
  readonly stamps: Stamps;
  /** The stamp of the removal. A removed record stays, so that a merge doesn't bring it back. */
  readonly deleted?: Stamp;
};

export type Job = {
  readonly id: Id;
  readonly name: string;
  readonly what: string;
  readonly systems: readonly System[];
  /** It was said that it touches none of them; an empty list alone is no answer. */
  readonly touchesNone?: boolean;
  readonly state: 'open' | 'closed';
  readonly customerNote: string;
  /** For whom, and on what: as they were typed, printed on the sheet. */
  readonly customer?: string;
  readonly machine?: string;
  readonly demo: boolean;
  /** Milliseconds since 1970, as every time here. */
  readonly createdAt: number;
  readonly touchedAt: number;
  readonly odometer?: Odometer;
  /** The shop's warmth and when it was read: it counts for readings of that day. */
  readonly warmth?: Warmth & { readonly at: number };
  /** Its last signed sheet: when, by whom and how the job stood then, without reading the sheet. */
  readonly signedOff?: {
    readonly at: number;
    readonly by: string;
    readonly sheetId: Id;
    /** Missing where an earlier Slipfit signed. */
    readonly stood?: Readonly<Record<string, string>>;
  };
  /** Why something that stops the signing may stand, by what it is about. */
  readonly reasons?: Readonly<Record<string, Reason>>;
  /** What of its list of things to get is there, by what it is (`getList` of the engine gives the names). */
  readonly got?: Readonly<Record<string, true>>;
  /** What the fitter put on that list himself. */
  readonly toGet?: Readonly<Record<Id, string>>;
  /** It was removed on one device before a reading was logged in it on another: shown again, and said so. */
  readonly broughtBack?: true;
};

/** A reason as the fitter wrote it. It holds only as long as what it is about stands as it stood then. */
export type Reason = {
  readonly why: string;
  /** How that stood, in short. */
  readonly as: string;
  readonly at: number;
  readonly by?: string;
};

/** The last reading of the odometer that was typed in; whole miles or kilometres. */
export type Odometer = { readonly reading: number; readonly unit: 'mi' | 'km'; readonly at: number };

export type PartOrigin = 'kit' | 'donor' | 'made' | 'bought' | 'mock-up';

export type Part = {
  readonly id: Id;
  readonly jobId: Id;
  readonly name: string;
  readonly origin: PartOrigin;
  /** A mock-up that is out again: what took its place, and when. */
  readonly swapped?: { readonly at: number; readonly by: string };
};

/** A reading as it was logged in another job. */
export type ReadingElsewhere = Entry &
  Pick<ReadingRecord, 'tool' | 'stops' | 'place' | 'direction' | 'zeroChecked' | 'warmth' | 'at'>;

/** What was read of another one of its kind, where and when: it stands in until this one is read, and proves nothing of it. */
export type ReadElsewhere = {
  readonly jobId: Id;
  readonly jobName: string;
  readonly featureId: Id;
  readonly readings: readonly ReadingElsewhere[];
};

export type Feature = {
  readonly id: Id;
  readonly jobId: Id;
  readonly partId?: Id;
  readonly kind: FeatureKind;
  readonly name: string;
  /** What it is made of, a material of the chart: how it grows when warm. */
  readonly material?: string;
  readonly createdAt: number;
  /** A known part's size: nothing here was read on this one. */
  readonly elsewhere?: ReadElsewhere;
  /** It holds the readings of a fit-up check: listed there, not among the job's own readings. */
  readonly checkId?: Id;
  /** It was removed on one device while a reading was logged under it on another: shown again, and said so. */
  readonly broughtBack?: true;
};

/** How warm part and tool lay together, as typed. */
export type Warmth = { readonly degrees: string; readonly unit: 'C' | 'F' };

/** The same with the metal of the part, a material of the chart: kept with what was read. */
export type ReadWarmth = Warmth & { readonly material: string };

export type StruckOut = { readonly why: string; readonly at: number };

export type ReadingRecord = Entry & {
  readonly id: Id;
  readonly featureId: Id;
  readonly jobId: Id;
  /** The tool with the error limits that were in force when it was read. */
  readonly tool: ToolInForce;
  /** Of a leaf or plug that goes: the next one tried, which doesn't; left out, the next one of the set. */
  readonly stops?: Entry;
  readonly place?: Place;
  readonly direction?: Direction;
  readonly zeroChecked: boolean;
  /** How warm it was read, and of what: as typed it stands in `exact`, it counts at 20 °C. */
  readonly warmth?: ReadWarmth;
  readonly at: number;
  readonly struckOut?: StruckOut;
  /** Of a fit-up check: what its worksheet stood on when it was read. */
  readonly basis?: Basis;
  /** Of what is read on parts put together: those parts, by worksheet, as text (`parts-as-read.ts`). */
  readonly readOf?: Readonly<Record<Id, string>>;
};

/** A size typed on a worksheet; without a tool it is taken as exact. */
export type TypedSize = Entry & {
  readonly from: 'typed';
  readonly tool?: ToolInForce;
  /** Nobody said which tool read it: the shop's usual one is assumed. */
  readonly toolAssumed?: true;
  /** How warm it was read, and of what: it counts at 20 °C. */
  readonly warmth?: ReadWarmth;
  /** When it was given: only of what is read on parts put together, which holds until one of them is changed. */
  readonly at?: number;
  /** The parts of the worksheet then, as text (`parts-as-read.ts`). */
  readonly readOf?: string;
};

export type SizeInput = { readonly from: 'feature'; readonly featureId: Id } | TypedSize;

export type StackPartInput = {
  readonly name: string;
  readonly order: number;
  readonly size?: SizeInput;
  readonly count: number;
  readonly adjustable: boolean;
  readonly leastLength?: SizeInput;
};

/** One question. Its results are never kept: they are worked out again from what is here. */
export type Worksheet = {
  readonly id: Id;
  readonly jobId: Id;
  /** By its name in the engine's registry; text, as a record may hold a kind of a newer Slipfit. */
  readonly kind: string;
  readonly title: string;
  readonly sizes: Readonly<Record<string, SizeInput>>;
  readonly choices: Readonly<Record<string, string>>;
  readonly parts: Readonly<Record<Id, StackPartInput>>;
  /** When its parts were last changed, and which: what was read of them together before that is set aside. */
  readonly partsChanged?: {
    readonly at: number;
    readonly why: string;
    /** Where the worksheet's own answer asked for that change: when they were last changed otherwise. */
    readonly otherwiseAt?: number;
  };
  readonly createdAt: number;
  readonly touchedAt: number;
};

/** What an answer was worked out from, as it stood when it was taken over: a cut's or a check's figures stay as they were. */
export type Basis = {
  /** The readings that counted. */
  readonly readings: readonly Id[];
  /** The worksheet's own sizes, choices and parts as canonical text. */
  readonly worksheet: string;
};

export type CutState = 'to-cut' | 'cutting' | 'to-size' | 'over' | 'scrapped' | 'made-again';
export type Machine = 'lathe' | 'mill' | 'drill-press' | 'bench';
export type CuttingTool = 'hss' | 'carbide';

/** One measurement at the machine, and what the dial was asked to take off since the one before. */
export type CutPass = {
  readonly at: number;
  readonly measured: Entry;
  readonly tool?: ToolInForce;
  /** Nobody said which tool read it: the shop's usual one is assumed. */
  readonly toolAssumed?: true;
  /** Off the size, so off the diameter of a round part; left out for the first measurement of the blank. */
  readonly asked?: Entry;
  /** How warm part and tool were said to be: as measured it stands in `measured`, it counts at 20 °C. */
  readonly warmth?: ReadWarmth;
  readonly struckOut?: StruckOut;
};

/** Across and up. */
export type CutPlace = { readonly x: Entry; readonly y: Entry };

/** How a thread is cut, and what it is measured over. */
export type CutThreading = {
  readonly wire: Entry;
  readonly pitch: Entry;
  readonly infeed: Infeed;
  readonly hand: 'right' | 'left';
};

/** Metal to be taken off one part, to one size. What is left, the next dial setting and the verdict are worked out. */
export type Cut = {
  readonly id: Id;
  readonly jobId: Id;
  readonly worksheetId?: Id;
  readonly partId?: Id;
  /** "Spacer, face to length". */
  readonly name: string;
  readonly part: string;
  readonly operation: Operation;
  /** Which side of the size metal stands on. */
  readonly of: CutKind;
  /** The size before the first cut; not known until it is measured. */
  readonly blank?: Entry;
  readonly target: Entry;
  readonly lower: Entry;
  readonly upper: Entry;
  readonly limitsFrom: string;
  /** What nobody said when it was worked out, and what stood in for it: "float, aluminium". */
  readonly assumed?: string;
  /** A material of the chart; text, as a newer Slipfit may know more. */
  readonly material?: string;
  readonly cuttingTool: CuttingTool;
  readonly machine: Machine;
  readonly drill?: string;
  readonly thread?: string;
  /** How far the middle of the work is set over in a four-jaw chuck for it, and how far that may be off. */
  readonly setOver?: Entry;
  readonly setOverWithin?: Entry;
  /** Where a hole stands that is set by coordinates, from the zero of both slides. */
  readonly stands?: CutPlace;
  /** What both slides read more than they should, as their zero was found to be off: it counts for this hole. */
  readonly zeroShift?: CutPlace;
  /** Its tool was run through at its place: ticked at the mill, measured or not. */
  readonly made?: { readonly at: number };
  /** The compound's angle from the work's axis, in degrees: `1.43766`. */
  readonly compoundDegrees?: string;
  /** Of a thread cut with a single point; its sizes are over the wires. */
  readonly threading?: CutThreading;
  /** Off the size in one pass at most, and left for the last two; usual figures where they are left out. */
  readonly largestTake?: Entry;
  readonly finishTake?: Entry;
  readonly state: CutState;
  readonly passes: Readonly<Record<Id, CutPass>>;
  readonly basis?: Basis;
  /** The cut it was made again from, in this job or another. */
  readonly copyOf?: Id;
  /** Of one that was made again from another job: where its figures were worked out. */
  readonly workedOutIn?: { readonly jobId: Id; readonly worksheetId: Id };
  readonly createdAt: number;
  readonly touchedAt: number;
  /** It was removed on one device before a pass was measured on another: shown again, and said so. */
  readonly broughtBack?: true;
};

/** One go at a check. A retake is a new one: the failed go stays readable. */
export type CheckTake = {
  readonly at: number;
  /** The feature that holds its readings; a check by eye has none. */
  readonly featureId?: Id;
  readonly seen?: 'holds' | 'fails';
  readonly seenNote?: string;
  /** What the check asked for when it was seen, in short. */
  readonly seenAs?: string;
  /** What the worksheet stood on when it was seen. */
  readonly basis?: Basis;
  /** The go it comes after, where it was put in as the check asks for something else than was seen in that one. */
  readonly after?: Id;
};

/** Something to be proved on the assembled thing, with the limits it has to keep. */
export type Check = {
  readonly id: Id;
  readonly jobId: Id;
  readonly worksheetId?: Id;
  /** The worksheet's size that a reading of this check stands in for: `direct`, say. */
  readonly sizeName?: string;
  readonly name: string;
  /** How it is measured; `by-eye` holds or fails. */
  readonly by: FeatureKind | 'by-eye';
  readonly lower?: Entry;
  readonly upper?: Entry;
  readonly limitsFrom: string;
  /** What to do: where to put the indicator, which way to push. */
  readonly how: string;
  readonly takes: Readonly<Record<Id, CheckTake>>;
  readonly basis?: Basis;
  readonly createdAt: number;
  /** It was removed on one device while a reading was logged under it on another: shown again, and said so. */
  readonly broughtBack?: true;
};

/** Torque as the service manual states it: the user's figure, in its unit, with where it stands. */
export type ManualTorque = {
  readonly typed: string;
  readonly unit: 'Nm' | 'lbf-ft' | 'lbf-in';
  readonly source: string;
};

export type StepDone = {
  readonly at: number;
  readonly by: string;
  /** What it was done as, in short (`done-again.ts`). */
  readonly as?: string;
  /** What its worksheet stood on when it was done. */
  readonly basis?: Basis;
  /** Another phone's change stands beside it, which whoever did it had not seen. */
  readonly apart?: true;
};

/** Where a step's words and figures come from, and what they stood on. */
export type WorkedOutStep = {
  readonly worksheetId: Id;
  /** Which of the worksheet's steps it is. */
  readonly offer: string;
  readonly basis: Basis;
};

/** One step of putting it together. */
export type AssemblyStep = {
  readonly id: Id;
  readonly jobId: Id;
  readonly order: number;
  readonly text: string;
  readonly orientation?: string;
  readonly grease?: string;
  readonly locker?: string;
  /** Hours until the locker has cured, as decimal text. */
  readonly cureHours?: string;
  readonly torque?: ManualTorque;
  readonly cotterPin?: boolean;
  /** The worksheet whose drawing shows the stack. */
  readonly worksheetId?: Id;
  /** A worksheet's answer that its words were worked out from. */
  readonly workedOut?: WorkedOutStep;
  readonly partIds: readonly Id[];
  readonly done?: StepDone;
  /** It was done once, and what it says was changed since: it is to be done again. */
  readonly wasDone?: StepDone;
  readonly createdAt: number;
};

/** A look at it again after so many days or miles. */
export type Recheck = {
  readonly id: Id;
  readonly jobId: Id;
  readonly what: string;
  readonly afterDays?: number;
  /** Whole miles or kilometres. */
  readonly afterDistance?: number;
  /** Counted from here: the sign-off, or when it was set. */
  readonly from: number;
  readonly fromOdometer?: number;
  /** What its distance and odometer readings count in: the job's odometer may change to another. */
  readonly unit?: Odometer['unit'];
  readonly done?: StepDone & { readonly odometer?: number };
  readonly wasDone?: StepDone & { readonly odometer?: number };
  readonly createdAt: number;
};

export type PhotoOwner = {
  readonly store: 'jobs' | 'parts' | 'features' | 'worksheets' | 'cuts' | 'checks' | 'steps' | 'drawer';
  readonly id: Id;
};

/** A photo without its bytes, which are kept apart so that a list of photos stays light. */
export type Photo = {
  readonly id: Id;
  readonly jobId?: Id;
  readonly owner: PhotoOwner;
  readonly note: string;
  readonly mime: string;
  readonly width: number;
  readonly height: number;
  /** A small picture, at most 240 px wide. */
  readonly preview: ArrayBuffer;
  readonly at: number;
};

export type PhotoBytes = { readonly id: Id; readonly bytes: ArrayBuffer };

/** A line of money: an amount, or hours at a rate; decimal text, exact. Hours may also be `1:20` or `1 1/2`. */
export type MoneyLine = {
  readonly id: Id;
  readonly jobId: Id;
  readonly what: string;
  readonly amount?: string;
  readonly hours?: string;
  readonly rate?: string;
  readonly createdAt: number;
};

/** An element of a frozen sheet; text stands as plain text. */
export type SheetNode =
  | string
  | {
      readonly tag: string;
      readonly attributes: Readonly<Record<string, string>>;
      readonly children: readonly SheetNode[];
    };

/** What was signed: the sheet whole, as it stood. It never changes. */
export type SignedSheet = {
  readonly id: Id;
  readonly jobId: Id;
  readonly signedAt: number;
  readonly signedBy: string;
  readonly engineVersion: string;
  readonly content: readonly SheetNode[];
  /** Readings and cuts as CSV, frozen with it. */
  readonly readingsCsv: string;
  readonly cutsCsv: string;
};

export type DrawerPieceKind =
  | 'shim'
  | 'washer'
  | 'spacer'
  | 'bar-end'
  | 'bushing'
  | 'insert'
  | 'tap'
  | 'reamer'
  | 'gauge-block';

export type DrawerPiece = {
  readonly id: Id;
  readonly kind: DrawerPieceKind;
  readonly name: string;
  readonly thickness?: SizeInput;
  readonly inside?: SizeInput;
  readonly outside?: SizeInput;
  readonly material: string;
  readonly createdAt: number;
};

/** One line of a piece's log. Two phones' counts add up, as the count is the sum of the log. */
export type DrawerCount = {
  readonly id: Id;
  readonly pieceId: Id;
  readonly change: number;
  readonly why: string;
  readonly at: number;
};

export type ToolRecord = { readonly id: Id; readonly tool: MeasuringTool; readonly lastChecked?: number };

/** How the lathe's dial reads, and one graduation of it as typed. */
export type KeptLathe = {
  /** The speeds it has, rpm, rising; none: any speed. */
  readonly speedsRpm: readonly number[];
  readonly mostRpm?: number;
};

/** The dial of one slide of the lathe. */
export type KeptSlide = {
  readonly graduation: Entry;
  /** Marks round its ring, so that a setting past one turn can be said. */
  readonly marksPerTurn?: number;
  /** How far it turns before the slide moves. */
  readonly backlash?: Entry;
};

/** The cross slide's dial, and those of the other slides as far as they are known. */
export type KeptDial = KeptSlide & {
  readonly reads: 'diameter' | 'radius';
  readonly compound?: KeptSlide;
  readonly leadScrew?: KeptSlide;
  /** Which of the two makes a length: asked at the lathe once. */
  readonly lengthsBy?: 'compound' | 'lead-screw';
};

/** How the mill is set: by the dials of its slides, or by what a digital readout shows; and what finds its edges. */
export type KeptMill = {
  readonly reads: 'dials' | 'readout';
  readonly x: KeptSlide;
  readonly y: KeptSlide;
  /** The diameter of its edge finder's tip. */
  readonly edgeFinder?: Entry;
};

export type LastUsed = {
  readonly toolId: Id;
  /** Where the tool was chosen: in another job the usual one stands there until it is chosen again. */
  readonly jobId?: Id;
  readonly unit: Unit;
  readonly place?: Place;
  readonly direction?: Direction;
};

export type SettingValues = {
  readonly shownUnit: ShownUnit;
  /** What is written before the decimals in a shop that counts in millimetres; in inches it is a point. */
  readonly decimalMark: DecimalMark;
  readonly padSize: 'standard' | 'glove';
  /** Where the phone is read: its colours go by that. */
  readonly light: 'shop' | 'sun';
  readonly dial: KeptDial;
  readonly lathe: KeptLathe;
  readonly mill: KeptMill;
  /** Who signs: asked once. */
  readonly fitter: string;
  /** The shop's name, as it stands on the sheet. */
  readonly shopName: string;
  /** Before an amount of money: "$". */
  readonly currency: string;
  readonly sayAloud: 'on' | 'off';
  readonly lastPlace: string;
  /** The chart last looked at: a newer Slipfit may know more of them. */
  readonly lastChart: string;
} & { readonly [Key in `lastUsed/${FeatureKind}`]: LastUsed };

export type SettingKey = keyof SettingValues;

/** A half-typed number. Not a `Length` yet, and perhaps never one. */
export type Draft = { readonly typed: string; readonly unit: Unit };

/** One record's fields before and after an act, by path, as kept; a path that is missing was not there. */
export type UndoChange = {
  readonly store: StoreName;
  readonly id: Id;
  /** The act made the record; undoing it removes the record again. */
  readonly made: boolean;
  readonly before: Readonly<Record<string, unknown>>;
  readonly after: Readonly<Record<string, unknown>>;
};

export type UndoRecord = {
  readonly id: Id;
  readonly at: number;
  readonly label: string;
  readonly jobId?: Id;
  /** It is what a file brought; what that was is kept apart, as it can be a hundred thousand records. */
  readonly brought?: true;
  readonly changes: readonly UndoChange[];
};
