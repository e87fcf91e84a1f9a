/**
 * A network of its own between one browser and the server, that can be cut: at once, between a question and its answer, in the
 * middle of an answer, or into silence, in which nothing is refused and nothing arrives. A proxy in front of a dead server too.
 */
import { type AddressInfo, type Socket, connect, createServer } from 'node:net';

const gatewayAnswer = 'HTTP/1.1 502 Bad Gateway\r\ncontent-type: text/html\r\ncontent-length: 4\r\n\r\noops';

export async function cuttableNetwork(serverPort: number, scheme: 'http' | 'https' = 'http') {
  const open = new Set<Socket>();
  let isCut = false;
  let isSilent = false;
  let losesAnswers = false;
  let cutsActs = false;
  let isGateway = false;
  const network = createServer((near) => {
    if (isCut) {
      near.destroy();
      return;
    }
    open.add(near);
    near.on('error', () => undefined);
    near.on('close', () => open.delete(near));
    if (isSilent) return;
    if (isGateway) {
      near.on('data', () => near.write(gatewayAnswer));
      return;
    }
    const far = connect(serverPort, '127.0.0.1');
    // Once silent, a connection stays so: what was sent into it never arrives, also when the network is back.
    let isLost = false;
    let isAct = false;
    open.add(far);
    far.on('error', () => undefined);
    for (const socket of [near, far])
      socket.on('close', () => {
        open.delete(socket);
        near.destroy();
        far.destroy();
      });
    near.on('data', (question: Buffer) => {
      isLost ||= isSilent;
      isAct = question.toString('latin1').startsWith('POST /api/acts');
      if (!isLost) far.write(question);
    });
    far.on('data', (answer: Buffer) => {
      isLost ||= isSilent;
      if (isLost || losesAnswers) return;
      if (!(cutsActs && isAct)) near.write(answer);
      else near.write(answer.subarray(0, answer.indexOf('\r\n\r\n') + 8), () => near.destroy());
    });
  });
  await new Promise<void>((resolve) => {
    network.listen(0, '127.0.0.1', resolve);
  });
  const drop = (): void => {
    for (const socket of open) socket.destroy();
  };
  const cut = (): void => {
    isCut = true;
    drop();
  };
  return {
    url: `${scheme}://127.0.0.1:${(network.address() as AddressInfo).port}`,
    cut,
    /** What is asked still arrives; no answer comes back, and then nothing does. */
    loseAnswers: (): void => {
      losesAnswers = true;
    },
    /** The answer to an act is cut after its first few signs. */
    cutActs: (): void => {
      cutsActs = true;
    },
    /** Nothing arrives any more and nothing is refused: packets are swallowed. */
    fallSilent: (): void => {
      isSilent = true;
    },
    /** A proxy answers for a server that is away. */
    answerAsGateway: (): void => {
      isGateway = true;
      drop();
    },
    restore: (): void => {
      losesAnswers = false;
      cutsActs = false;
      isSilent = false;
      isCut = false;
      if (isGateway) drop();
      isGateway = false;
    },
    close: async (): Promise<void> => {
      cut();
      await new Promise((resolve) => {
        network.close(resolve);
      });
    },
  };
}
