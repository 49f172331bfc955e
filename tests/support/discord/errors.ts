/** An answer of Discord's that is not a success: HTTP status, its own error code, and its words for it. */
export interface ApiFailure {
  readonly status: number;
  readonly code: number;
  readonly message: string;
  readonly errors?: unknown;
}

// Codes, statuses and words as in Discord's documentation, "Opcodes and Status Codes", JSON error codes.
export const FAILURES = {
  10003: { status: 404, code: 10003, message: 'Unknown Channel' },
  10004: { status: 404, code: 10004, message: 'Unknown Guild' },
  10008: { status: 404, code: 10008, message: 'Unknown Message' },
  10013: { status: 404, code: 10013, message: 'Unknown User' },
  10015: { status: 404, code: 10015, message: 'Unknown Webhook' },
  10062: { status: 404, code: 10062, message: 'Unknown interaction' },
  10063: { status: 404, code: 10063, message: 'Unknown application command' },
  30034: {
    status: 429,
    code: 30034,
    message: 'Max number of daily application command creates has been reached',
  },
  40060: { status: 400, code: 40060, message: 'Interaction has already been acknowledged.' },
  50001: { status: 403, code: 50001, message: 'Missing Access' },
  50006: { status: 400, code: 50006, message: 'Cannot send an empty message' },
  50007: { status: 403, code: 50007, message: 'Cannot send messages to this user' },
  50013: { status: 403, code: 50013, message: 'Missing Permissions' },
  50027: { status: 401, code: 50027, message: 'Invalid Webhook Token' },
} as const satisfies Record<number, ApiFailure>;

export const UNAUTHORIZED: ApiFailure = { status: 401, code: 0, message: '401: Unauthorized' };
export const SERVER_ERROR: ApiFailure = { status: 500, code: 0, message: '500: Internal Server Error' };

/** 50035 with what was wrong with the body. */
export function invalidForm(problems: readonly string[]): ApiFailure {
  return {
    status: 400,
    code: 50035,
    message: 'Invalid Form Body',
    errors: { _errors: problems.map((message) => ({ code: 'INVALID', message })) },
  };
}

/** Thrown by a route; becomes the response. */
export class Refusal extends Error {
  readonly failure: ApiFailure;

  constructor(failure: ApiFailure) {
    super(failure.message);
    this.failure = failure;
  }
}
