import type { DailySeries } from '../engine/climate.ts';
import type { Day } from '../engine/day.ts';

export type TemperatureUnit = 'F' | 'C';
export type DateOrder = 'MDY' | 'DMY';

/** What the member or the caller knows of a file; every part is used only where the file is silent. */
export interface WeatherFileOptions {
  readonly unit?: TemperatureUnit;
  /** Order of dates such as 3/4/2015. Dates with a day above 12 settle it whatever is said here. */
  readonly order?: DateOrder;
  /** Which of several places in one file, by its name or station id. */
  readonly place?: string;
  /** The caller's today; a reading of a later day is refused. */
  readonly today?: Day;
  /** Told now and then how far a long file has been read. */
  readonly progress?: (text: string) => void;
}

/** Where a file says its readings were taken. */
export interface FileStation {
  readonly id: string | null;
  readonly name: string | null;
  /** Degrees. */
  readonly lat: number | null;
  readonly lon: number | null;
  readonly elevationM: number | null;
}

/** A file that was read to its end and understood. */
export interface WeatherFile {
  readonly kind: 'file';
  readonly series: DailySeries;
  readonly from: Day;
  readonly to: Day;
  /** Days with a high, a low or both. */
  readonly days: number;
  readonly withHigh: number;
  readonly withLow: number;
  readonly unit: TemperatureUnit;
  /** Who said so: the file itself, or the caller. */
  readonly unitFrom: 'file' | 'caller';
  readonly station: FileStation | null;
  /** What a reader should know of how the file was understood, a sentence each. */
  readonly remarks: readonly string[];
}

export interface FilePlace {
  readonly name: string;
  readonly days: number;
}

export type WeatherFileProblemKind =
  | 'empty'
  | 'too-large'
  | 'too-long'
  | 'not-text'
  | 'not-a-table'
  | 'no-columns'
  | 'unclear-columns'
  | 'bad-line'
  | 'unit-unknown'
  | 'unit-implausible'
  | 'date-order-unknown'
  | 'several-places'
  | 'no-readings';

/** Why a file was not taken; nothing of it is kept. */
export interface WeatherFileProblem {
  readonly kind: 'problem';
  readonly problem: WeatherFileProblemKind;
  /** A sentence for the member: what is wrong, where, and what to do. */
  readonly message: string;
  /** 1-based, where one line is to blame. */
  readonly line: number | null;
  /** The places to choose from, the longest record first; for `several-places` only. */
  readonly places?: readonly FilePlace[];
}

export function problem(
  kind: WeatherFileProblemKind,
  message: string,
  line: number | null = null,
): WeatherFileProblem {
  return { kind: 'problem', problem: kind, message, line };
}

/** A problem of one line: "line 214: the low 31.2 is above the high 12.0." */
export function lineProblem(line: number, message: string): WeatherFileProblem {
  return problem('bad-line', `line ${line}: ${message}`, line);
}
