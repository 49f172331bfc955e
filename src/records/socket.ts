import { connect, type Socket } from 'node:net';

/** What postgres.js hands to a socket factory. */
interface SocketOptions {
  readonly host: readonly string[];
  readonly port: readonly number[];
  readonly path?: string | false;
}

/**
 * Sockets to the database that give up when nothing is heard for a while. A connection whose other end has
 * vanished without a word (a cut cable, a firewall that forgot it) accepts statements and never answers;
 * the driver has no deadline for that, and such connections would use up its pool one by one. An idle
 * connection is closed by the same rule and made anew when it is needed.
 */
export function socketsThatGiveUp(afterMs: number): (options: SocketOptions) => Socket {
  let attempts = 0;
  return ({ host, port, path }) => {
    const at = attempts % Math.max(host.length, 1);
    attempts += 1;
    // The driver writes at once; what it writes waits in the socket until the connection stands.
    const socket = path ? connect(path) : connect(port[at] ?? 5432, host[at] ?? 'localhost');
    socket.setNoDelay(true);
    socket.setTimeout(afterMs, () => socket.destroy(new Error('the database did not answer in time')));
    return socket;
  };
}
