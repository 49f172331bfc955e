import type { Day } from '../engine/day.ts';
import { seasonOf } from '../engine/season.ts';
import { groupBy } from '../group-by.ts';
import type { CultivarSeason } from '../pictures/roundup-input.ts';
import { drawRoundup } from '../pictures/roundup-picture.ts';
import { hemisphereOf } from '../records/garden.ts';
import type { ReplyFile } from './reply.ts';
import { hemisphereOfClub, linesByCultivar, type Roundup, type RoundupTree } from './roundup-data.ts';
import type { Manner } from './roundup-words.ts';
import { rangeWords } from './words.ts';

/**
 * The roundup's one picture; none when it has nothing to show. `season` is the whole season so far, which a
 * week's picture sets its week into.
 */
export async function drawnRoundup(
  club: string,
  roundup: Roundup,
  season: Roundup,
  { order }: Manner,
  today: Day,
): Promise<ReplyFile[]> {
  const { period } = roundup;
  const hemisphere = hemisphereOfClub(roundup.members);
  // Gardens across the equator have another season, which does not lie on this time line.
  const trees = season.trees.filter(({ member }) => hemisphereOf(member) === hemisphere);
  const cultivars = cultivarSeasons(trees);
  if (cultivars.every(({ fruitlets, tips, picks }) => fruitlets.length + tips.length + picks.length === 0))
    return [];
  const shown = trees[0]?.standing.season ?? seasonOf(today, hemisphere);
  const { name, bytes, alt } = await drawRoundup({
    club,
    heading:
      period.span === 'week'
        ? `Week of ${rangeWords(period.from, period.to, order)}`
        : `Season ${shown.label}`,
    season: shown,
    week: period.span === 'week' ? { from: period.from, to: period.to } : null,
    today: today >= shown.from && today <= shown.to ? today : null,
    dates: order,
    cultivars,
  });
  return [{ name, bytes, alt }];
}

function cultivarSeasons(trees: readonly RoundupTree[]): CultivarSeason[] {
  const byCultivar = groupBy(trees, ({ cultivar }) => cultivar);
  return linesByCultivar(trees).map(({ cultivar, main }) => {
    const group = byCultivar.get(cultivar) ?? [];
    return {
      cultivar: cultivar ?? 'Cultivar not known',
      trees: group.length,
      fruitlets: group.flatMap(({ seen }) => seen ?? []),
      tips: group.flatMap(({ tips, results }) =>
        tips.map((on) => ({
          on,
          worked: results.find((result) => result.on === on)?.broughtFruitlets ?? null,
        })),
      ),
      picks: group.flatMap(({ picks }) => picks),
      figs: main.figs > 0 ? main.figs : null,
    };
  });
}
