import type { Day } from '../engine/day.ts';
import { UserError } from '../errors.ts';
import { hemisphereOf } from '../records/garden.ts';
import {
  readWeatherFile,
  type WeatherFileOptions,
  type WeatherFileProblem,
  type WeatherFileProblemKind,
} from '../weather/files.ts';
import { type ImportReport, importOwnReadings } from '../weather/own-readings.ts';
import type { Context } from './context.ts';
import { dateOrderOf, todayOf } from './date-option.ts';
import type { ButtonVerb, Feature, InputFile } from './feature.ts';
import { changedSeason } from './garden-change.ts';
import { lookUpWeather } from './garden-lookup.ts';
import { saveGarden } from './garden-save.ts';
import { gardenTrees } from './garden-trees.ts';
import { gardenData, gardenFields, gardenStory } from './garden-words.ts';
import { choiceOption } from './option-kinds.ts';
import { type Reply, reply } from './reply.ts';
import { keepFile, keptFile } from './waiting-files.ts';
import { countWords } from './words.ts';

/** Places offered as buttons, the longest records first. */
const MOST_PLACES = 10;
const LABEL_CHARACTERS = 60;

export const gardenWeather: Feature = {
  command: {
    name: 'garden weather',
    description: 'Work out your season from daily temperatures: a file, or looked up for your place',
    visibility: 'everyone',
    options: [
      { name: 'file', type: 'file', description: 'a CSV file of daily highs and lows' },
      choiceOption('unit', 'degrees in the file, if it does not tell', { F: '°F', C: '°C' }),
    ],
  },
  async handle(context, input) {
    if (input.file === undefined) return lookUpWeather(context);
    return takeFile(
      context,
      input.file as InputFile,
      input.unit === 'F' || input.unit === 'C' ? input.unit : undefined,
    );
  },
};

/** `weather-place:<token>:<n>`: the n-th place of a file that was sent. */
export const weatherPlaceVerb: ButtonVerb = {
  verb: 'weather-place',
  async press(context, [token, index]) {
    const kept = keptFile(token, context.member.id, context.clock.now());
    const place = kept?.places[Number(index)];
    if (kept === null || place === undefined) {
      throw new UserError(
        'file-not-kept',
        'I do not have that file any more; send it again with /garden weather.',
      );
    }
    return takeFile(context, kept.file, kept.unit, place);
  },
};

async function takeFile(
  context: Context,
  file: InputFile,
  unit: 'F' | 'C' | undefined,
  place?: string,
): Promise<Reply> {
  const today = todayOf(context);
  const order = dateOrderOf(context);
  const stated = context.member.dates ?? context.localeDates;
  const options: WeatherFileOptions = {
    today,
    progress: context.progress,
    ...(unit === undefined ? {} : { unit }),
    ...(place === undefined ? {} : { place }),
    // An order nobody stated would be a guess; the file itself or the member must tell.
    ...(stated === undefined ? {} : { order: stated }),
  };
  const read = await readWeatherFile(file.bytes, options);
  if (read.kind === 'problem') {
    if (read.places !== undefined) return askWhichPlace(context, { file, unit, problem: read });
    throw new UserError(
      `weather-${read.problem}`,
      `${file.name}: ${read.message}${hintFor(read.problem)} Nothing was changed.`,
    );
  }
  const { member, report } = await context.db.transaction(async (tx) => {
    const imported = await importOwnReadings(tx, context.member, read, hemisphereOf(context.member));
    const set = { ownSeriesId: imported.seriesId };
    const saved = await saveGarden(tx, context, { set, summarise: true, record: imported.record });
    return { member: saved, report: imported };
  });
  const trees = await gardenTrees(context.db, member, today, order);
  const from = place === undefined ? file.name : `${file.name}, ${place},`;
  return reply({
    title: 'Your record is in',
    text: [
      importWords(from, report),
      ...read.remarks,
      ...changedSeason(context.member, member, order),
      gardenStory(member, today, order),
    ].join('\n\n'),
    fields: [...gardenFields(member, context.club, order), ...trees.fields],
    data: { ...gardenData(member, context.club), trees: trees.items, imported: importData(report) },
  });
}

interface ManyPlaces {
  readonly file: InputFile;
  readonly unit: 'F' | 'C' | undefined;
  readonly problem: WeatherFileProblem;
}

/** Which of the file's places is the member's; the file is kept for as long as a reply may be answered. */
function askWhichPlace(context: Context, { file, unit, problem }: ManyPlaces): Reply {
  const places = (problem.places ?? []).slice(0, MOST_PLACES).map(({ name }) => name);
  const token = keepFile({ memberId: context.member.id, file, unit, places }, context.clock.now());
  return reply({
    ok: false,
    title: 'Which place is yours?',
    text: `${file.name}: ${problem.message} Or press the one you mean. Nothing was changed.`,
    buttons: places.map((name, index) => ({
      label: name.slice(0, LABEL_CHARACTERS),
      action: `weather-place:${token}:${index}`,
    })),
    data: { error: `weather-${problem.problem}`, places: problem.places ?? [] },
  });
}

/** How to say here what the file left open. */
function hintFor(problem: WeatherFileProblemKind): string {
  switch (problem) {
    case 'unit-unknown':
    case 'unit-implausible':
      return ' Send it again with unit:F or unit:C.';
    case 'date-order-unknown':
      return ' Set /garden set dates:month first or dates:day first, then send it again.';
    default:
      return '';
  }
}

function importWords(name: string, { from, to, added, replaced, unchanged, seasons }: ImportReport): string {
  const changes = [
    added > 0 ? `${countWords(added, 'day')} added` : '',
    replaced > 0 ? `${countWords(replaced, 'day')} replaced by yours` : '',
    unchanged > 0 ? `${countWords(unchanged, 'day')} the same as before` : '',
  ].filter((part) => part !== '');
  return `${name} holds ${countWords(seasons.length, 'season')}, ${spanOf(from, to)}: ${changes.join(', ')}.`;
}

function spanOf(from: Day, to: Day): string {
  return `${from} to ${to}`;
}

function importData({ from, to, added, replaced, unchanged }: ImportReport) {
  return { from, to, added, replaced, unchanged };
}
