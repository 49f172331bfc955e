import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { addDays, type Day, day } from '../engine/day.ts';
import { groupBy } from '../group-by.ts';
import { type DemoGrower, type DemoTree, GROWERS } from './growers.ts';
import { type Nature, natureOf, pickDays, SAYINGS } from './nature.ts';
import { between, type Random, randomOf } from './random.ts';
import { type Nudged, Stage, type StageOptions } from './stage.ts';
import { inventedRecord } from './weather.ts';

export const FIRST_DAY = day('2026-04-06');
export const LAST_DAY = day('2027-01-03');

/** First frost of this season in the vale; from then on nothing is picked. Invented. */
const FROST = day('2026-11-04');
const RECORD_FROM = day('2013-01-01');

/** A tree with what it does, and what its grower has told of it. */
interface Actor {
  readonly grower: DemoGrower;
  readonly tree: DemoTree;
  readonly nature: Nature;
  readonly random: Random;
  toldFruit: boolean;
  tippedOn: Day | null;
}

type Deed = () => Promise<void>;

/**
 * Plays the season of an invented club through the same handlers as anybody's: nature does what it does, the
 * growers note it in their own words and answer their nudges, and the assistant says what it says.
 */
export class DemoSeason {
  readonly #stage: Stage;
  readonly #outFolder: string;
  readonly #actors: readonly Actor[];
  readonly #agenda = new Map<Day, Deed[]>();

  constructor(options: StageOptions) {
    this.#stage = new Stage(options);
    this.#outFolder = options.outFolder;
    this.#actors = GROWERS.flatMap((grower) =>
      grower.trees.map((tree) => ({
        grower,
        tree,
        nature: natureOf(grower, tree),
        random: randomOf(`${tree.name} ${grower.name}`),
        toldFruit: false,
        tippedOn: null,
      })),
    );
  }

  /** What did not go as a grower would expect; empty when all went well. */
  get failures(): readonly string[] {
    return this.#stage.failures;
  }

  async play(): Promise<void> {
    await this.#setUp();
    for (const actor of this.#actors) this.#planTree(actor);
    this.#planLeaves();
    this.#planTalk();
    for (let today = FIRST_DAY; today <= LAST_DAY; today = addDays(today, 1)) {
      const nudged = await this.#stage.moveTo(today);
      for (const nudge of nudged) await this.#answer(nudge);
      // A deed may plan another for the same day.
      const deeds = this.#agenda.get(today) ?? [];
      for (let i = 0; i < deeds.length; i++) await deeds[i]?.();
    }
  }

  async #setUp() {
    mkdirSync(this.#outFolder, { recursive: true });
    await this.#stage.moveTo(FIRST_DAY);
    await this.#stage.tell('Ilva', '/club roundup_day:sunday roundup_hour:9');
    for (const grower of GROWERS) {
      const { name } = grower;
      await this.#stage.tell(name, '/garden set units:C dates:day first');
      if (grower.record) {
        const path = join(this.#outFolder, `invented-record-${name.toLowerCase()}.csv`);
        writeFileSync(path, inventedRecord(name, grower.warmer, RECORD_FROM, addDays(FIRST_DAY, -1)));
        await this.#stage.tell(name, `/garden weather file:${path}`);
      } else {
        await this.#stage.tell(
          name,
          '/garden set heat_end:18 September first_frost:4 November last_frost:12 April',
        );
      }
      const [typed, listed] = [grower.trees.slice(0, 1), grower.trees.slice(1)];
      for (const tree of typed) {
        const options = tree.options === undefined ? '' : ` ${tree.options}`;
        await this.#stage.tell(name, `/tree add name:${tree.name} cultivar:${tree.cultivar}${options}`);
      }
      const path = join(this.#outFolder, `invented-trees-${name.toLowerCase()}.csv`);
      writeFileSync(path, treeList(listed));
      await this.#stage.tell(name, `/tree import file:${path}`);
    }
    await this.#stage.tell(
      'Ilva',
      '/tree add name:Old Wall 2 from:Old Wall cultivar:Chicago Hardy kept:pot started:April 2025 for:both',
    );
    for (const [on, note] of [
      ['5 May 2025', 'Porch leafed out'],
      ['20 June 2025', '5 fruitlets on Porch'],
      ['6 September 2025', 'picked 11 figs from Porch'],
      ['2 December 2025', 'took 8 cuttings from Porch'],
    ]) {
      await this.#stage.tell('Ilva', `/note text:${note} on:${on}`);
    }
    await this.#stage.tell('Ilva', '/garden show');
  }

  /** Each grower goes round on three days and notes which trees have leaves. */
  #planLeaves() {
    const rounds = [addDays(FIRST_DAY, 12), addDays(FIRST_DAY, 19), addDays(FIRST_DAY, 27)];
    for (const [grower, actors] of groupBy(this.#actors, (actor) => actor.grower)) {
      const untold = new Set(actors);
      for (const [i, on] of rounds.entries()) {
        this.#plan(on, async () => {
          const out = [...untold].filter(({ nature }) => nature.leafOut <= on || i === rounds.length - 1);
          for (const actor of out) untold.delete(actor);
          if (out.length === 0) return;
          const names = listed(out.map(({ tree }) => tree.name));
          await this.#stage.tell(grower.name, SAYINGS.leafedOut(randomOf(grower.name + on), names));
        });
      }
    }
  }

  #planTree(actor: Actor) {
    const { grower, tree, nature, random } = actor;
    if (nature.brebas !== null) {
      const { seen, ripe, figs } = nature.brebas;
      this.#say(seen, grower, SAYINGS.brebas(random, tree.name));
      this.#say(ripe, grower, SAYINGS.pickedBrebas(random, tree.name, figs));
    }
    if (tree.options?.includes('for:wood')) return;
    if (random() < 0.7) {
      this.#say(
        addDays(nature.leafOut, between(random, 33, 40)),
        grower,
        SAYINGS.buds(random, tree.name, nature.buds),
      );
    }
    const { setsBy } = nature;
    if (setsBy !== null) {
      this.#plan(addDays(setsBy, between(random, 0, 2)), async () => {
        if (actor.toldFruit) return;
        await this.#stage.tell(grower.name, SAYINGS.fruitlets(random, tree.name));
        this.#fruit(actor, setsBy);
      });
    }
  }

  /** Fruit is on the tree: signs, then picks, until the frost. */
  #fruit(actor: Actor, seen: Day) {
    const { grower, tree, nature, random } = actor;
    actor.toldFruit = true;
    const ripe = addDays(seen, nature.span);
    if (random() < 0.6) {
      this.#say(addDays(ripe, -between(random, 6, 9)), grower, SAYINGS.ripening(random, tree.name));
    }
    for (const on of pickDays(ripe, FROST, random)) {
      this.#say(
        on,
        grower,
        SAYINGS.picked(random, tree.name, Math.max(1, nature.perPick + between(random, -2, 3))),
      );
    }
  }

  async #answer({ member, reply }: Nudged) {
    const items = reply.data.items as readonly { tree: string; kind: string }[];
    for (const { tree: name, kind } of items) {
      const actor = this.#actors.find(({ grower, tree }) => grower.name === member && tree.name === name);
      if (actor === undefined) continue;
      if (kind === 'decision') await this.#decide(actor, reply.buttons);
      if (kind === 'second-look') await this.#lookAgain(actor, reply.buttons);
    }
  }

  async #decide(actor: Actor, buttons: Nudged['reply']['buttons']) {
    const { grower, tree, nature, random } = actor;
    const today = this.#stage.today;
    const press = (label: string) => this.#stage.press(grower.name, buttons, label, tree.name);
    if (nature.setsBy !== null && nature.setsBy <= today && !actor.toldFruit) {
      await press('Fruitlets are showing');
      this.#fruit(actor, nature.setsBy);
      return;
    }
    if (random() < grower.tips) {
      const asked = await press('I tipped it');
      if (asked !== null)
        await this.#stage.press(grower.name, asked.buttons, String(between(random, 2, 3)), tree.name);
      actor.tippedOn = today;
      return;
    }
    await press(nature.setsBy !== null && random() < 0.8 ? 'Remind me in 7 days' : 'Leave it this year');
  }

  async #lookAgain(actor: Actor, buttons: Nudged['reply']['buttons']) {
    const { grower, tree, nature, tippedOn } = actor;
    if (tippedOn === null || actor.toldFruit) return;
    if (nature.tipBrings === null) {
      await this.#stage.press(grower.name, buttons, 'Only branches', tree.name);
      return;
    }
    const shows = addDays(tippedOn, nature.tipBrings);
    if (shows <= this.#stage.today) {
      await this.#stage.press(grower.name, buttons, 'Fruitlets', tree.name);
      this.#fruit(actor, this.#stage.today);
      return;
    }
    this.#plan(shows, async () => {
      if (actor.toldFruit) return;
      await this.#stage.tell(
        grower.name,
        SAYINGS.fruitlets(actor.random, tree.name).replace(' yesterday', ''),
      );
      this.#fruit(actor, shows);
    });
  }

  /** What growers ask in the course of the year, and what they do after the frost. */
  #planTalk() {
    const say = (on: string, name: string, line: string) =>
      this.#plan(day(on), async () => void (await this.#stage.tell(name, line)));
    say('2026-04-30', 'Wendeline', '/due days:90');
    say('2026-05-28', 'Orsolya', 'should I tip Terrace 5?');
    say('2026-06-12', 'Ilva', '/tip');
    say('2026-06-22', 'Bastian', 'should I tip the lock?');
    say('2026-06-22', 'Bastian', 'should I tip the towpath?');
    say('2026-07-02', 'Ilva', 'should I tip Washhouse?');
    say('2026-07-09', 'Tomek', '/tree show tree:Stable');
    say('2026-08-10', 'Neela', 'when will the fountain be ripe?');
    say('2026-08-30', 'Casimir', 'Row 3 figs split in the rain');
    say('2026-09-14', 'Sunniva', '/due whose:club days:30');
    say('2026-10-06', 'Ilva', '/tree show tree:Porch');
    say('2026-11-05', 'Orsolya', 'first frost last night');
    say('2026-11-23', 'Ilva', 'first frost last night');
    say('2026-12-03', 'Ilva', SAYINGS.cuttings(randomOf(''), 'Porch', 6));
    say('2026-12-03', 'Ilva', SAYINGS.cuttings(randomOf(''), 'Cistern', 10));
    say('2026-12-05', 'Tomek', SAYINGS.cuttings(randomOf(''), 'Stable', 12));
    say('2026-12-06', 'Bastian', 'took 15 cuttings from Towpath');
    say('2026-12-07', 'Wendeline', '/tree spare');
    say('2026-12-20', 'Ilva', '/tree show tree:Old Wall 2');
    say('2027-01-02', 'Ilva', '/roundup span:season season:2026');
  }

  #say(on: Day, grower: DemoGrower, line: string) {
    this.#plan(on, async () => void (await this.#stage.tell(grower.name, line)));
  }

  #plan(on: Day, deed: Deed) {
    const deeds = this.#agenda.get(on);
    if (deeds) deeds.push(deed);
    else this.#agenda.set(on, [deed]);
  }
}

/** The list a grower might keep in a spreadsheet, with the columns of /tree import. */
function treeList(trees: readonly DemoTree[]): string {
  const columns = ['kept', 'cover_days', 'for', 'spare'];
  const lines = trees.map(({ name, cultivar, options = '' }) => {
    const optionOf = (column: string) => new RegExp(`(?:^| )${column}:(\\S+)`).exec(options)?.[1] ?? '';
    return [name, cultivar, ...columns.map(optionOf)].join(',');
  });
  return `${['name', 'cultivar', ...columns].join(',')}\n${lines.join('\n')}\n`;
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
