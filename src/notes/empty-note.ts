import type { ObservationKind } from '../engine/observation.ts';
import type { NoteReading, Setting } from './contract.ts';
import type { Saying } from './sayings.ts';

/** Nothing but trees and announcements: what was seen has to be asked. */
export function isEmptyNote(sayings: readonly Saying[]): boolean {
  return sayings.every(
    (saying) =>
      saying.hits.length === 0 &&
      (saying.empty || saying.bare) &&
      !saying.items.some((item) => item.type === 'quantity'),
  );
}

/** The question what was seen, on the tree that was named. */
export function askKindOfAll(sayings: readonly Saying[], setting: Setting): NoteReading {
  const mention = sayings.flatMap((saying) => saying.mentions)[0];
  if (!mention) {
    const about = setting.about?.length === 1 ? setting.about[0] : undefined;
    return {
      logged: [],
      ask: {
        what: 'kind',
        trees: [],
        kinds: USUAL_KINDS,
        open: [{ ...(about === undefined ? {} : { tree: about }), on: setting.today }],
      },
    };
  }
  if (mention.ids.length !== 1) {
    return {
      logged: [],
      ask: { what: 'tree', trees: mention.ids.slice(0, 5), kinds: [], open: [{ on: setting.today }] },
    };
  }
  return {
    logged: [],
    ask: {
      what: 'kind',
      trees: [],
      kinds: USUAL_KINDS,
      open: [{ tree: mention.ids[0] ?? null, on: setting.today }],
    },
  };
}

const USUAL_KINDS: readonly ObservationKind[] = ['fruitlets', 'no-fruitlets', 'tipped', 'ripening', 'remark'];
