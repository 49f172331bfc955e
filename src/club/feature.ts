import type { Context } from './context.ts';
import type { Reply, Visibility } from './reply.ts';

/**
 * One thing a member can ask, in one file: the command as channels must show it, and the handler. A channel
 * needs to know nothing else of it.
 */
export interface Feature {
  readonly command: CommandDefinition;
  readonly handle: Handler;
}

export type Handler = (context: Context, input: Input) => Promise<Reply>;

/** What was typed, by option name. Text is trimmed and never empty. */
export interface Input {
  readonly [option: string]: InputValue | undefined;
}

export type InputValue = string | number | boolean | InputFile;

export interface InputFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface CommandDefinition {
  /** "garden set" or "note": a command, or a group and its sub-command. */
  readonly name: string;
  readonly description: string;
  readonly options: readonly OptionDefinition[];
  /** Declared ahead, so that a channel can acknowledge before any work is done. */
  readonly visibility: Visibility;
  /** Only for those who manage the club. */
  readonly managersOnly?: boolean;
}

interface OptionBase {
  readonly name: string;
  readonly description: string;
  readonly required?: boolean;
}

export type OptionDefinition =
  /** Free text; `complete` names what a channel may offer while it is typed. */
  | (OptionBase & { readonly type: 'text'; readonly complete?: Completion; readonly maxLength?: number })
  | (OptionBase & { readonly type: 'integer' | 'number'; readonly min?: number; readonly max?: number })
  | (OptionBase & { readonly type: 'choice'; readonly choices: readonly Choice[] })
  | (OptionBase & { readonly type: 'file' });

export type Completion = 'tree' | 'cultivar' | 'place';

export interface Choice {
  readonly value: string;
  readonly label: string;
}

/** What a pressed button does. `args` are the parts of its action after the verb. */
export interface ButtonVerb {
  readonly verb: string;
  readonly press: (context: Context, args: readonly string[]) => Promise<Reply>;
}
