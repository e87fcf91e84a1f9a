/** A network of its own between one browser and the server, that can be cut: at once, or between a question and its answer. */
import { type AddressInfo, type Socket, connect, createServer } from 'node:net';

export async function cuttableNetwork(serverPort: number, scheme: 'http' | 'https' = 'http') {
  const open = new Set<Socket>();
  let isCut = false;
  let losesAnswers = false;
  const network = createServer((near) => {
    if (isCut) {
      near.destroy();
      return;
    }
    const far = connect(serverPort, '127.0.0.1');
    for (const socket of [near, far]) {
      open.add(socket);
      socket.on('error', () => undefined);
      socket.on('close', () => {
        open.delete(socket);
        near.destroy();
        far.destroy();
      });
    }
    near.pipe(far);
    far.on('data', (answer) => {
      if (!losesAnswers) near.write(answer);
    });
  });
  await new Promise<void>((resolve) => {
    network.listen(0, '127.0.0.1', resolve);
  });
  const cut = (): void => {
    isCut = true;
    for (const socket of open) socket.destroy();
  };
  return {
    url: `${scheme}://127.0.0.1:${(network.address() as AddressInfo).port}`,
    cut,
    /** What is asked still arrives; no answer comes back, and then nothing does. */
    loseAnswers: (): void => {
      losesAnswers = true;
    },
    restore: (): void => {
      losesAnswers = false;
      isCut = false;
    },
    close: async (): Promise<void> => {
      cut();
      await new Promise((resolve) => {
        network.close(resolve);
      });
    },
  };
}
