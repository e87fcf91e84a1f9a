import { describe, expect, test } from 'vitest';
import { readCommandLine } from '../src/command-line.ts';

const read = (...args: string[]) => readCommandLine(args, {});
const refusedBy = (...args: string[]): string => {
  const line = read(...args);
  return 'refused' in line ? line.refused : '';
};

describe('the command line', () => {
  test('alone starts the demo on this machine', () => {
    expect(read()).toEqual({
      options: expect.objectContaining({ kind: 'demo', host: '127.0.0.1', port: 4310, data: 'data', demoSeed: 1 }),
    });
  });

  test('takes the port from the environment, and from --port before it', () => {
    expect(readCommandLine([], { PORT: '5000' })).toMatchObject({ options: { port: 5000 } });
    expect(readCommandLine(['--port', '6000'], { PORT: '5000' })).toMatchObject({ options: { port: 6000 } });
  });

  test('an address that other machines reach needs TLS or a proxy', () => {
    for (const host of ['0.0.0.0', '::', '192.0.2.1', 'thornbeck.example', '127.example']) {
      expect(refusedBy('--host', host)).toContain(`${host} can be reached from other machines: give --tls-cert`);
      expect(refusedBy('--host', host, '--behind-proxy')).toBe('');
      expect(refusedBy('--host', host, '--tls-cert', 'c.pem', '--tls-key', 'k.pem')).toBe('');
    }
    for (const host of ['127.0.0.1', 'localhost', '::1']) expect([host, refusedBy('--host', host)]).toEqual([host, '']);
  });

  test('refuses in a sentence what cannot be meant', () => {
    expect(refusedBy('--port', 'many')).toContain('--port');
    expect(refusedBy('--port', '70000')).toContain('--port');
    expect(refusedBy('--tls-cert', 'c.pem')).toContain('belong together');
    expect(refusedBy('--demo-date', '2026-02-30')).toContain('--demo-date');
    expect(refusedBy('--demo-date', '2026-11-25T9')).toContain('--demo-date');
    expect(refusedBy('--empty', '--reset-demo')).toContain('--empty');
    expect(refusedBy('--what')).toContain('--help');
    expect(refusedBy('--demo-date', '2026-11-25T09:00')).toBe('');
  });
});
