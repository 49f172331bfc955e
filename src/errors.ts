/**
 * Something to tell a person: what was wrong and what to type instead. `identifier` is for machines and
 * stands in a reply's `data.error`; `message` is the sentence people read.
 */
export class UserError extends Error {
  readonly identifier: string;

  constructor(identifier: string, message: string) {
    super(message);
    this.name = 'UserError';
    this.identifier = identifier;
  }
}

/** A start that cannot go on: one sentence for the operator, exit status 1. */
export class StartError extends Error {
  constructor(message: string, options?: ErrorOptions) {
    super(message, options);
    this.name = 'StartError';
  }
}
