import type { IncomingMessage, ServerResponse } from 'node:http';
import type { Answer } from './rest.ts';

export function failureAnswer(failure: {
  status: number;
  code: number;
  message: string;
  errors?: unknown;
}): Answer {
  const { status, ...body } = failure;
  return { status, body };
}

export function limited(
  retryAfterSeconds: number,
  global: boolean,
  scope: string,
  code: number,
): [Answer, Record<string, string>] {
  const body = { message: 'You are being rate limited.', retry_after: retryAfterSeconds, global, code };
  const headers = {
    'retry-after': String(retryAfterSeconds),
    'x-ratelimit-scope': scope,
    ...(global && { 'x-ratelimit-global': 'true' }),
  };
  return [{ status: 429, body }, headers];
}

export function write(response: ServerResponse, answer: Answer, headers: Record<string, string> = {}): void {
  if (answer.body === undefined) {
    response.writeHead(answer.status, headers).end();
    return;
  }
  response.writeHead(answer.status, { 'content-type': 'application/json', ...headers });
  response.end(JSON.stringify(answer.body));
}

export async function collect(request: IncomingMessage): Promise<Buffer> {
  const chunks: Buffer[] = [];
  for await (const chunk of request) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks);
}
