import type { APIApplicationCommand } from 'discord-api-types/v10';
import { FAILURES, invalidForm, Refusal } from './errors.ts';
import { checkCommand } from './limits.ts';
import type { World } from './world.ts';

type Body = Record<string, unknown>;

export const GLOBAL = 'global';

// Documentation: Application Commands, "global rate limit of 200 application command creates per day, per guild".
const CREATES_A_DAY = 200;

/** Application commands of one scope (`global` or a guild's id). */
export class CommandStore {
  readonly #world: World;
  readonly #created = new Map<string, number>();

  constructor(world: World) {
    this.#world = world;
  }

  list(scope: string): APIApplicationCommand[] {
    return this.#world.commands.get(scope) ?? [];
  }

  /** Creates, or overwrites what has the same name and type. */
  create(scope: string, body: Body): APIApplicationCommand {
    const problems = checkCommand(body as unknown as Parameters<typeof checkCommand>[0]);
    if (problems.length > 0) throw new Refusal(invalidForm(problems));
    const list = this.list(scope);
    const at = list.findIndex((c) => c.name === body.name && c.type === (body.type ?? 1));
    if (at < 0) this.#count(scope);
    const command = this.#stored(scope, body, list[at]?.id ?? this.#world.newId());
    const rest = list.filter((_, index) => index !== at);
    this.#world.commands.set(scope, [...rest, command]);
    return command;
  }

  edit(scope: string, id: string, body: Body): APIApplicationCommand {
    const list = this.list(scope);
    const old = list.find((command) => command.id === id);
    if (old === undefined) throw new Refusal(FAILURES[10063]);
    const whole = { ...old, ...body } as Body;
    const problems = checkCommand(whole as unknown as Parameters<typeof checkCommand>[0]);
    if (problems.length > 0) throw new Refusal(invalidForm(problems));
    const command = this.#stored(scope, whole, id);
    this.#world.commands.set(
      scope,
      list.map((c) => (c.id === id ? command : c)),
    );
    return command;
  }

  remove(scope: string, id: string): void {
    const list = this.list(scope);
    if (!list.some((command) => command.id === id)) throw new Refusal(FAILURES[10063]);
    this.#world.commands.set(
      scope,
      list.filter((command) => command.id !== id),
    );
  }

  replaceAll(scope: string, bodies: Body[]): APIApplicationCommand[] {
    const old = this.list(scope);
    this.#world.commands.set(
      scope,
      old.filter((c) => bodies.some((b) => b.name === c.name && (b.type ?? 1) === c.type)),
    );
    for (const body of bodies) this.create(scope, body);
    return this.list(scope);
  }

  #count(scope: string): void {
    const count = (this.#created.get(scope) ?? 0) + 1;
    if (count > CREATES_A_DAY) throw new Refusal(FAILURES[30034]);
    this.#created.set(scope, count);
  }

  /** As Discord gives it back: permissions as text, defaults filled in, empty lists left out. */
  #stored(scope: string, body: Body, id: string): APIApplicationCommand {
    const permissions = body.default_member_permissions ?? null;
    return {
      id,
      application_id: this.#world.applicationId,
      version: this.#world.newId(),
      type: (body.type ?? 1) as 1,
      name: String(body.name),
      name_localizations: null,
      description: String(body.description ?? ''),
      description_localizations: null,
      ...(scope !== GLOBAL && { guild_id: scope }),
      ...(Array.isArray(body.options) &&
        body.options.length > 0 && {
          options: withoutDefaults(body.options) as APIApplicationCommand['options'],
        }),
      default_member_permissions: permissions === null ? null : String(permissions),
      dm_permission: true,
      contexts: scope === GLOBAL ? ((body.contexts ?? null) as APIApplicationCommand['contexts']) : null,
      integration_types: (body.integration_types ?? [0]) as APIApplicationCommand['integration_types'],
      nsfw: false,
    } as APIApplicationCommand;
  }
}

/** Discord leaves `required: false` and `autocomplete: false` out of what it gives back. */
function withoutDefaults(options: readonly unknown[]): unknown[] {
  return options.map((option) => {
    const entries = Object.entries(option as Body).filter(
      ([key, value]) => !((key === 'required' || key === 'autocomplete') && value === false),
    );
    const kept = Object.fromEntries(entries);
    return Array.isArray(kept.options) ? { ...kept, options: withoutDefaults(kept.options) } : kept;
  });
}
