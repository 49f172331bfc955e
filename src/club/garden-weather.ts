import type { Day } from '../engine/day.ts';
import { UserError } from '../errors.ts';
import { hemisphereOf } from '../records/garden.ts';
import { readWeatherFile, type WeatherFileOptions, type WeatherFileProblemKind } from '../weather/files.ts';
import { type ImportReport, importOwnReadings } from '../weather/own-readings.ts';
import type { Context } from './context.ts';
import { dateOrderOf, todayOf } from './date-option.ts';
import type { Feature, InputFile } from './feature.ts';
import { lookUpWeather } from './garden-lookup.ts';
import { saveGarden } from './garden-save.ts';
import { gardenData, gardenFields, gardenStory } from './garden-words.ts';
import { choiceOption } from './option-kinds.ts';
import { type Reply, reply } from './reply.ts';
import { countWords } from './words.ts';

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

async function takeFile(context: Context, file: InputFile, unit: 'F' | 'C' | undefined): Promise<Reply> {
  const today = todayOf(context);
  const order = dateOrderOf(context);
  const stated = context.member.dates ?? context.localeDates;
  const options: WeatherFileOptions = {
    today,
    progress: context.progress,
    ...(unit === undefined ? {} : { unit }),
    // An order nobody stated would be a guess; the file itself or the member must tell.
    ...(stated === undefined ? {} : { order: stated }),
  };
  const read = await readWeatherFile(file.bytes, options);
  if (read.kind === 'problem') {
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
  return reply({
    title: 'Your record is in',
    text: [importWords(file.name, report), ...read.remarks, gardenStory(member, today, order)].join('\n\n'),
    fields: gardenFields(member, context.club, order),
    data: { ...gardenData(member, context.club), imported: importData(report) },
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
