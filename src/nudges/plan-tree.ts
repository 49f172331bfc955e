import { addDays, type Day, earlier, later } from '../engine/day.ts';
import { QUICKEST_RESPONSE_DAYS } from '../engine/ripening.ts';
import type { Season } from '../engine/season.ts';
import type { Nudge, NudgeKind, NudgeState } from '../records/schema.ts';
import type { DueItem } from './due.ts';
import { CANCELLED } from './reasons.ts';

export type NudgeRow = Pick<Nudge, 'id' | 'season' | 'kind' | 'occurrence' | 'due' | 'state' | 'error'>;

export interface TreePlanInput {
  readonly today: Day;
  readonly season: Season;
  readonly items: readonly DueItem[];
  /** This tree's nudges of last, this and next season. */
  readonly rows: readonly NudgeRow[];
  /** The plan before whatever changed. */
  readonly planned: { readonly lookOn: Day | null; readonly decisionOn: Day | null };
  readonly tippedOn: Day | null;
  readonly retired: boolean;
  readonly nudgesOff: boolean;
}

export interface TreePlan {
  /** Next day on which anything is due. */
  readonly lookOn: Day | null;
  readonly decisionOn: Day | null;
  readonly inserts: readonly NewNudge[];
  readonly updates: readonly NudgeUpdate[];
  /** Rows whose day moved ahead again; they come back when it comes. */
  readonly deletes: readonly number[];
  /** What this very change made due. */
  readonly dueAtOnce: readonly NudgeKind[];
  /** What waited to be sent and is not true any more. */
  readonly calledOff: readonly NudgeKind[];
}

export interface NewNudge {
  readonly season: string;
  readonly kind: NudgeKind;
  readonly occurrence: number;
  readonly due: Day;
  readonly state: NudgeState;
  readonly error: string | null;
}

export interface NudgeUpdate {
  readonly id: number;
  readonly state: NudgeState;
  readonly due: Day;
  readonly error: string | null;
}

/**
 * What must become of a tree's nudges. A nudge gets its row on the day it is due; before that `lookOn` alone
 * stands for it, so that nothing has to be moved when a date moves.
 */
export function planTree(input: TreePlanInput): TreePlan {
  const draft = new Draft(input);
  if (input.retired) {
    for (const row of input.rows) draft.callOff(row);
    return { ...draft.plan, lookOn: null, decisionOn: null };
  }
  const items = input.items.filter((item) => !alreadyLooked(item, input));
  for (const item of items) {
    const row = input.rows.find(
      ({ kind, season, occurrence }) =>
        kind === item.kind && season === item.season && occurrence === item.occurrence,
    );
    if (row) draft.keepInStep(row, item);
    else draft.planNew(item);
  }
  for (const row of input.rows) draft.planExtra(row, items);
  const decision = items.find(({ kind, season }) => kind === 'decision' && season === input.season.label);
  return { ...draft.plan, decisionOn: decision?.on ?? null };
}

/** A tip whose day was put right after it had been looked at needs no further look. */
function alreadyLooked(item: DueItem, { tippedOn, rows }: TreePlanInput): boolean {
  if (item.kind !== 'second-look' || tippedOn === null) return false;
  const enough = addDays(tippedOn, QUICKEST_RESPONSE_DAYS);
  return rows.some(
    ({ kind, state, due, occurrence }) =>
      kind === 'second-look' && occurrence !== item.occurrence && state === 'sent' && due >= enough,
  );
}

class Draft {
  readonly #input: TreePlanInput;
  #lookOn: Day | null = null;
  readonly #inserts: NewNudge[] = [];
  readonly #updates: NudgeUpdate[] = [];
  readonly #deletes: number[] = [];
  readonly #dueAtOnce: NudgeKind[] = [];
  readonly #calledOff: NudgeKind[] = [];

  constructor(input: TreePlanInput) {
    this.#input = input;
  }

  get plan(): Omit<TreePlan, 'decisionOn'> {
    return {
      lookOn: this.#lookOn,
      inserts: this.#inserts,
      updates: this.#updates,
      deletes: this.#deletes,
      dueAtOnce: this.#dueAtOnce,
      calledOff: this.#calledOff,
    };
  }

  /** An item that has no row yet. */
  planNew(item: DueItem) {
    const { today, planned, season } = this.#input;
    if (!item.holds) return;
    if (item.on > today) {
      this.#lookAt(item.on);
      return;
    }
    const wasAhead = planned.lookOn !== null && planned.lookOn <= item.on;
    if (wasAhead || item.on === today) {
      this.#insert(item, item.on, 'pending', null);
    } else if (item.season !== season.label) {
      // Last season's; whoever added the tree since does not want to hear of it.
    } else if (item.kind === 'decision' && planned.decisionOn !== null) {
      // It was ahead, or settled, until this change: the member has not been told, and it is not too late.
      this.#insert(item, today, 'pending', null);
      this.#dueAtOnce.push('decision');
    } else {
      this.#insert(item, item.on, 'cancelled', CANCELLED.past);
    }
  }

  keepInStep(row: NudgeRow, item: DueItem) {
    const { today, nudgesOff } = this.#input;
    if (row.state !== 'pending' && row.state !== 'cancelled') return;
    if (item.on > today) {
      this.#deletes.push(row.id);
      if (item.holds) this.#lookAt(item.on);
    } else if (row.state === 'pending') {
      if (!item.holds) this.callOff(row);
    } else if (item.holds && row.error === CANCELLED.settled && row.kind === 'decision') {
      this.#revive(row, today);
    } else if (item.holds && row.error !== CANCELLED.past && row.due >= today && !nudgesOff) {
      this.#revive(row, row.due);
    }
  }

  /** Rows beyond what the season itself asks for: reminders the member wanted, looks after tips taken back. */
  planExtra(row: NudgeRow, items: readonly DueItem[]) {
    const own = items.find(
      (item) => item.kind === row.kind && item.season === row.season && item.occurrence === row.occurrence,
    );
    if (own) return;
    const base =
      row.kind === 'second-look'
        ? undefined
        : items.find((item) => item.kind === row.kind && item.season === row.season);
    const { today } = this.#input;
    if (row.state === 'pending') {
      if (!base?.holds) this.callOff(row);
    } else if (row.state === 'cancelled' && row.error === CANCELLED.settled && base?.holds) {
      this.#revive(row, later(row.due, today));
    }
  }

  callOff(row: NudgeRow) {
    if (row.state !== 'pending') return;
    this.#updates.push({ id: row.id, state: 'cancelled', due: row.due, error: CANCELLED.settled });
    this.#calledOff.push(row.kind);
  }

  #revive(row: NudgeRow, due: Day) {
    this.#updates.push({ id: row.id, state: 'pending', due, error: null });
    if (due <= this.#input.today) this.#dueAtOnce.push(row.kind);
  }

  #insert({ season, kind, occurrence }: DueItem, due: Day, state: NudgeState, error: string | null) {
    this.#inserts.push({ season, kind, occurrence, due, state, error });
  }

  #lookAt(on: Day) {
    this.#lookOn = this.#lookOn === null ? on : earlier(this.#lookOn, on);
  }
}
