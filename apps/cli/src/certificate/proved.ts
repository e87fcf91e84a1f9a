/** A certificate proved before it is used: a connection is made with it, and whoever trusts only the authority has to accept it. */
import { once } from 'node:events';
import { type AddressInfo, isIP } from 'node:net';
import { checkServerIdentity, connect, createServer } from 'node:tls';
import type { Certified } from './certificates.ts';

/** For each of the names; undefined: all of them hold. The reason is OpenSSL's own, as Node carries it. */
export async function refusedBy(
  authority: string,
  server: Certified,
  names: readonly string[],
): Promise<string | undefined> {
  const listener = createServer({ cert: server.certificate, key: server.key }, (socket) => void socket.end());
  listener.listen(0, '127.0.0.1');
  await once(listener, 'listening');
  const { port } = listener.address() as AddressInfo;
  try {
    for (const name of names) {
      const socket = connect({
        port,
        host: '127.0.0.1',
        ca: authority,
        ...(isIP(name) === 0 ? { servername: name } : {}),
        checkServerIdentity: (_host, shown) => checkServerIdentity(name, shown),
      });
      try {
        await once(socket, 'secureConnect');
      } catch (error) {
        return `${name}: ${error instanceof Error ? error.message : String(error)}`;
      } finally {
        socket.destroy();
      }
    }
    return undefined;
  } finally {
    listener.close();
  }
}
