import type { SettingsView } from '@twelvemonth/exchange';
import { Note } from '../paper/Note.tsx';

/** Whether this browser trusts the connection, and how long the server's certificate holds: without either a tablet keeps no day. */
export function Connection({ certificate }: Pick<SettingsView, 'certificate'>) {
  return (
    <section aria-labelledby="connection">
      <h2 id="connection">Connection</h2>
      <p>
        {window.isSecureContext
          ? 'This browser trusts the connection: it can keep today’s session for the time without a network, and use its camera.'
          : 'This browser does not trust the connection: it keeps nothing for the time without a network, and its camera is not used.'}
      </p>
      {certificate !== undefined && (
        <Note tone={certificate.warns ? 'caution' : 'quiet'}>
          {certificate.says} It is for {certificate.names}.
        </Note>
      )}
    </section>
  );
}
