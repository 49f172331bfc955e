import { UserError } from '../errors.ts';
import type { Member } from '../records/schema.ts';
import { findPlace, type Place, zoneAt } from '../weather/places.ts';
import type { Context } from './context.ts';
import type { Input } from './feature.ts';
import { listWords } from './words.ts';

export interface PlacedGarden {
  readonly set: Partial<Member>;
  readonly remarks: readonly string[];
}

/** What `place`, or `lat` and `lon`, say of where the garden is; null when none of them was given. */
export async function placeFromInput(context: Context, input: Input): Promise<PlacedGarden | null> {
  const { place, lat, lon } = input;
  if (typeof lat === 'number' || typeof lon === 'number') {
    if (typeof lat !== 'number' || typeof lon !== 'number') {
      throw new UserError(
        'half-a-position',
        'A position needs both lat and lon, in degrees; type lat:40.71 lon:-74.01. Nothing was changed.',
      );
    }
    const name = typeof place === 'string' ? place : null;
    return { set: positionOf(context.member, { lat, lon }, name), remarks: [] };
  }
  if (typeof place !== 'string') return null;
  const found = await findPlace(place);
  switch (found.kind) {
    case 'one':
      return {
        set: positionOf(context.member, found.place, found.place.label),
        remarks:
          found.others.length === 0
            ? []
            : [`Taken as ${found.place.label}; if you meant a smaller one, add its region.`],
      };
    case 'several':
      throw new UserError(
        'which-place',
        `There are several places like "${place}": ${found.places
          .slice(0, 6)
          .map(({ label }) => label)
          .join('; ')}. Type the one you mean as it stands here. Nothing was changed.`,
      );
    case 'none':
      throw new UserError(
        'no-such-place',
        `"${place}" is not among the towns I know${nearWords(found.near)}; type the nearest larger town, or lat: and lon: in degrees. Nothing was changed.`,
      );
  }
}

function nearWords(near: readonly Place[]): string {
  const labels = near.slice(0, 3).map(({ label }) => label);
  return labels.length === 0 ? '' : ` (did you mean ${listWords(labels, 'or')}?)`;
}

/** A garden's position is kept to 0.01° and no closer: it is somebody's home. */
function positionOf(
  member: Member,
  at: { lat: number; lon: number; zone?: string },
  place: string | null,
): Partial<Member> {
  const lat = Math.round(at.lat * 100) / 100;
  const lon = Math.round(at.lon * 100) / 100;
  const moved = member.lat !== lat || member.lon !== lon;
  return {
    lat,
    lon,
    place,
    zone: at.zone ?? zoneAt(lat, lon),
    hemisphere: lat < 0 ? 'S' : 'N',
    // Another place has another station; the member's own readings stay theirs.
    ...(moved ? { seriesId: null } : {}),
  };
}
