import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { Button } from '../paper/Button.tsx';
import { useConnection } from '../server/connection.ts';
import { queries, status } from '../server/queries.ts';
import css from './Frame.module.css';
import { useUnit } from './unit.ts';

/** What changes what can be done here: no server, a server that only reads, a server newer than this screen, a protocol older than the product. */
export function Banners() {
  const { awaySince } = useConnection();
  const now = useQuery(status).data;
  const { unit } = useUnit();
  const [loadedWith, setLoadedWith] = useState<string>();
  if (loadedWith === undefined && now !== undefined) setLoadedWith(now.version);
  return (
    <output className="screenOnly" style={{ display: 'block' }}>
      {awaySince !== undefined && (
        <p className={css['banner']}>
          The server cannot be reached. What you see may be out of date. Steps of a visit on today’s list, and calls to
          the advice line, are kept on this device and sent later; no infusion is started and no check signed here: use
          the day sheet on paper.{' '}
          <Button tone="plain" onClick={() => void queries.invalidateQueries()}>
            Try again
          </Button>
        </p>
      )}
      {now?.readOnly !== undefined && <p className={css['banner']}>Read only: {now.readOnly}</p>}
      {now?.certificateEnds !== undefined && <p className={css['banner']}>{now.certificateEnds}</p>}
      {now !== undefined && loadedWith !== undefined && loadedWith !== now.version && (
        <p className={css['banner']}>
          The server now runs version {now.version}; this screen is of version {loadedWith}. Finish what you are
          entering, then{' '}
          <Button tone="plain" onClick={() => window.location.reload()}>
            load the new screens
          </Button>
          .
        </p>
      )}
      {unit?.protocolUnsigned !== undefined && (
        <p className={css['banner']}>
          The protocol {unit.protocolVersion} was signed before an upgrade of the product.{' '}
          {unit.protocolUnsigned === 1 ? 'One part of it is' : `${unit.protocolUnsigned} parts of it are`} filled in
          from the starter and not signed here: <Link to="/protocol">a new version</Link> is to be signed by two people.
        </p>
      )}
    </output>
  );
}
