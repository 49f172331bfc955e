import { addDays, type Day } from './day.ts';
import type { Crop, ObservationKind } from './observation.ts';
import { midSeason, type Season } from './season.ts';

/** One observation of a season, of a tree or of the garden it stands in. */
export interface SeasonObservation {
  readonly kind: ObservationKind;
  readonly on: Day;
  readonly crop: Crop | null;
  readonly count: number | null;
  /** Order of entry; decides between two of one day. */
  readonly order: number;
}

/** Main crop cannot be there before this many days after leafing out, or after the last frost. Ours. */
export const MAIN_CROP_AFTER_DAYS = 30;

/**
 * With neither known, a fig before this many days ahead of midsummer's parting day (15 May in the north)
 * may be a breba. Ours: first main-crop figlets were seen on 5–22 June (Miyagi Prefecture, 2017–2018).
 */
const MAIN_CROP_BEFORE_PARTING_DAYS = 70;

/** What is known this season of a tree's main crop. */
export interface MainCrop {
  /** Whether main-crop fruit is on the tree or was, and was not all lost. */
  readonly present: boolean;
  /** Day its fruitlets were first seen since it last lost all; null when only riper fruit was noted. */
  readonly seen: Day | null;
  /** Fruitlets counted last, where counted. */
  readonly count: number | null;
  readonly ripeningOn: Day | null;
  /** First pick. */
  readonly pickedOn: Day | null;
  /** Day on which none were seen although fruitlets had been logged before: worth asking about. */
  readonly contradictedOn: Day | null;
  /** Day of fruitlets of an unnamed crop that may be brebas, while no main crop is known. */
  readonly maybeBrebasOn: Day | null;
}

export interface MainCropInput {
  readonly observations: readonly SeasonObservation[];
  /** First day on which an unnamed fig can be taken for main crop. */
  readonly mainCropFrom: Day;
  /** Days from a visible fruitlet to a ripe fig, at the quickest. */
  readonly spanFrom: number;
  /** False for a cultivar known to bear no brebas: then nothing can be mistaken for one. */
  readonly bearsBrebas?: boolean;
}

/** What the observations say of the main crop, taken in the order of their days, then of their entry. */
export function mainCropOf({ observations, mainCropFrom, spanFrom, bearsBrebas }: MainCropInput): MainCrop {
  const isMain = (seen: SeasonObservation, from: Day) =>
    seen.crop === 'main' || (seen.crop === null && (bearsBrebas === false || seen.on >= from));
  // A ripe fig of an unnamed crop is main crop only when a main-crop fruitlet had the time to become one.
  const ripeFrom = addDays(mainCropFrom, spanFrom);
  let crop = NO_FRUIT;
  for (const seen of inOrder(observations)) {
    switch (seen.kind) {
      case 'fruitlets':
        if (isMain(seen, mainCropFrom)) crop = withFruitlets(crop, seen);
        else if (seen.crop === null && !crop.present) crop = { ...crop, maybeBrebasOn: seen.on };
        break;
      case 'no-fruitlets':
        if (seen.crop !== 'breba' && crop.present) crop = { ...crop, contradictedOn: seen.on };
        break;
      case 'dropped':
        if (seen.crop !== 'breba') crop = NO_FRUIT;
        break;
      case 'ripening':
        if (isMain(seen, ripeFrom) || (seen.crop === null && crop.present)) {
          crop = { ...crop, present: true, ripeningOn: crop.ripeningOn ?? seen.on, maybeBrebasOn: null };
        }
        break;
      case 'picked':
        if (isMain(seen, ripeFrom) || (seen.crop === null && crop.present)) {
          crop = { ...crop, present: true, pickedOn: crop.pickedOn ?? seen.on, maybeBrebasOn: null };
        }
        break;
      default:
    }
  }
  return crop;
}

/**
 * The first day on which a fig of an unnamed crop can be main crop: 30 days after leafing out, or after the
 * garden's last frost, or 15 May (15 November in the south) when neither is known.
 */
export function mainCropFromDay(
  observations: readonly SeasonObservation[],
  lastFrost: Day | null,
  season: Season,
): Day {
  const leafedOut = inOrder(observations).find(({ kind }) => kind === 'leafed-out');
  const start = leafedOut?.on ?? lastFrost;
  return start
    ? addDays(start, MAIN_CROP_AFTER_DAYS)
    : addDays(midSeason(season), -MAIN_CROP_BEFORE_PARTING_DAYS);
}

export function inOrder(observations: readonly SeasonObservation[]): readonly SeasonObservation[] {
  return [...observations].sort((a, b) => (a.on === b.on ? a.order - b.order : a.on < b.on ? -1 : 1));
}

const NO_FRUIT: MainCrop = {
  present: false,
  seen: null,
  count: null,
  ripeningOn: null,
  pickedOn: null,
  contradictedOn: null,
  maybeBrebasOn: null,
};

function withFruitlets(crop: MainCrop, seen: SeasonObservation): MainCrop {
  return {
    ...crop,
    present: true,
    seen: crop.seen ?? seen.on,
    count: seen.count ?? crop.count,
    contradictedOn: null,
    maybeBrebasOn: null,
  };
}
