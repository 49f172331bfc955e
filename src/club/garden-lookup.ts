import { UserError } from '../errors.ts';
import type { Member } from '../records/schema.ts';
import type { FoundRecord } from '../weather/lookup.ts';
import { findPlace } from '../weather/places.ts';
import type { Context } from './context.ts';
import { dateOrderOf, todayOf } from './date-option.ts';
import type { ButtonVerb } from './feature.ts';
import { changedSeason } from './garden-change.ts';
import { saveGarden } from './garden-save.ts';
import { gardenTrees } from './garden-trees.ts';
import { gardenData, gardenFields, gardenStory } from './garden-words.ts';
import { type Reply, reply } from './reply.ts';

/** `look-up`: the same as /garden weather without a file. */
export const lookUpVerb: ButtonVerb = { verb: 'look-up', press: (context) => lookUpWeather(context) };

/** Looks up the daily record for the garden's place; the garden stays as it was when that fails. */
export async function lookUpWeather(context: Context): Promise<Reply> {
  const { lat, lon } = context.member;
  if (lat === null || lon === null) {
    throw new UserError(
      'no-place',
      'To look up your temperatures I need to know where you garden: type /garden set place: and your town first, or send a file with /garden weather file:.',
    );
  }
  const found = await context.services.weather.lookUp(
    { lat, lon, elevationM: await heightOf(context.member) },
    { onProgress: context.progress },
  );
  if (found.kind === 'problem') {
    throw new UserError(`weather-${found.problem}`, `${found.message} Your garden is as it was.`);
  }
  const member = await context.db.transaction((tx) =>
    saveGarden(tx, context, { set: { seriesId: found.seriesId }, summarise: true }),
  );
  const order = dateOrderOf(context);
  const today = todayOf({ ...context, member });
  const trees = await gardenTrees(context.db, member, today, order);
  return reply({
    title: 'Your record is in',
    text: [
      sourceWords(found),
      ...found.remarks,
      ...(context.member.ownSeriesId === null
        ? []
        : ['Your own readings stand before it, day by day; it fills the days they lack.']),
      ...changedSeason(context.member, member, order),
      gardenStory(member, today, order),
    ].join('\n\n'),
    fields: [...gardenFields(member, context.club, order), ...trees.fields],
    data: {
      ...gardenData(member, context.club),
      trees: trees.items,
      source: { kind: found.source, name: found.name },
    },
  });
}

/** The town's height above the sea, so that a station on a mountain is not taken for the garden's; null unknown. */
async function heightOf({ place, lat, lon }: Member): Promise<number | null> {
  if (place === null) return null;
  const found = await findPlace(place);
  return found.kind === 'one' && found.place.lat === lat && found.place.lon === lon
    ? found.place.elevationM
    : null;
}

function sourceWords({ source, name, distanceKm, heightDifferenceM }: FoundRecord): string {
  if (source === 'power')
    return `No good weather station is near, so the record is the grid cell of NASA POWER around ${name}.`;
  const height =
    heightDifferenceM === null || Math.abs(heightDifferenceM) < 50
      ? ''
      : `, ${Math.abs(Math.round(heightDifferenceM))} m ${heightDifferenceM > 0 ? 'above' : 'below'} your garden`;
  return `The record is that of the weather station ${name}, ${Math.round(distanceKm)} km away${height} (NOAA daily summaries).`;
}
