import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

export type Answer = (request: IncomingMessage, response: ServerResponse, url: URL) => void;

export interface StandIn {
  readonly base: string;
  /** Every question it was asked, path and query. */
  readonly asked: URL[];
  /** What it answers from now on, by the beginning of the path. */
  answer(path: string, answer: Answer): void;
  close(): Promise<void>;
}

/** A server on the loopback address that answers as a weather service would. */
export async function openStandIn(): Promise<StandIn> {
  const answers = new Map<string, Answer>();
  const asked: URL[] = [];
  const server = createServer((request, response) => {
    const url = new URL(request.url ?? '/', 'http://stand-in');
    asked.push(url);
    const path = [...answers.keys()].find((beginning) => url.pathname.startsWith(beginning));
    const answer = path === undefined ? undefined : answers.get(path);
    if (answer) answer(request, response, url);
    else response.writeHead(404).end();
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    base: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    asked,
    answer: (path, answer) => answers.set(path, answer),
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

export const json =
  (body: unknown): Answer =>
  (_request, response) =>
    response.writeHead(200, { 'content-type': 'application/json' }).end(JSON.stringify(body));

export const status =
  (code: number, headers: Record<string, string> = {}): Answer =>
  (_request, response) =>
    response.writeHead(code, headers).end('{"errorCode":"trouble"}');

/** The first answers in turn, then the last for ever. */
export function inTurn(...answers: readonly Answer[]): Answer {
  let turn = 0;
  return (request, response, url) => {
    const answer = answers[Math.min(turn++, answers.length - 1)];
    answer?.(request, response, url);
  };
}

/** Takes the question and never answers. */
export const hang: Answer = () => {};

/** A hundred megabytes, as fast as they are taken. */
export const flood: Answer = (_request, response) => {
  response.writeHead(200, { 'content-type': 'application/json' });
  const block = Buffer.alloc(1 << 20, ' ');
  let left = 100;
  const more = () => {
    while (left > 0) {
      left--;
      if (!response.write(block)) return void response.once('drain', more);
    }
    response.end();
  };
  more();
};
