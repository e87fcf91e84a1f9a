import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useEffect } from 'react';
import { useUnit } from '../frame/unit.ts';
import { useConnection } from '../server/connection.ts';
import { me, queries, status } from '../server/queries.ts';
import { timeOfDay } from '../words/dates.ts';
import { sendAgain } from './send-waiting.ts';
import { readWaiting, useWaiting } from './waiting.ts';

/** While something waits or the server is away, it is asked for this often. */
const askAgainMilliseconds = 5000;

/** Whether what is written here is in the notes: always in sight, in words. Sends what waits as soon as it can. */
export function SyncState() {
  const { awaySince } = useConnection();
  const { unit } = useUnit();
  const staff = useQuery(me).data?.staff;
  const waiting = useWaiting();
  const isAway = awaySince !== undefined;
  const needs = waiting.filter((act) => act.needs !== undefined);
  const held = new Set(needs.map(({ patient }) => patient));
  /** Mine, and nothing before it needs a person. */
  const toSend = waiting.filter(
    (act) => act.needs === undefined && act.staff === staff && (act.patient === undefined || !held.has(act.patient)),
  ).length;
  const later = waiting.length - needs.length - (isAway ? 0 : toSend);
  const unsettled = isAway || toSend > 0;
  useEffect(() => {
    void readWaiting().catch(() => undefined);
  }, []);
  useEffect(() => {
    if (!unsettled) return;
    const again = setInterval(() => {
      void queries.invalidateQueries({ queryKey: status.queryKey });
      if (!isAway) sendAgain();
    }, askAgainMilliseconds);
    return () => clearInterval(again);
  }, [unsettled, isAway]);
  useEffect(() => {
    const online = (): void => void queries.invalidateQueries({ queryKey: status.queryKey });
    window.addEventListener('online', online);
    return () => window.removeEventListener('online', online);
  }, []);
  useEffect(() => {
    if (!isAway && toSend > 0) sendAgain();
  }, [isAway, toSend]);
  const says = [
    isAway ? `offline since ${timeOfDay(new Date(awaySince).toISOString(), unit?.zone)}` : 'online',
    ...(isAway || toSend === 0 ? [] : [`sending ${toSend}`]),
    ...(later === 0 ? [] : [`${later} waiting`]),
    ...(needs.length === 0 ? [] : [`${needs.length} ${needs.length === 1 ? 'needs' : 'need'} you`]),
  ].join(' · ');
  return (
    <output aria-label="Sync" className="screenOnly" style={{ whiteSpace: 'nowrap' }}>
      {waiting.length === 0 ? (
        <>
          <span aria-hidden="true">{isAway ? '○ ' : '● '}</span>
          {says}
        </>
      ) : (
        <Link to="/waiting" className="finger" style={{ fontWeight: 600 }}>
          <span aria-hidden="true">{needs.length > 0 ? '▲ ' : isAway ? '○ ' : '● '}</span>
          {says}
        </Link>
      )}
    </output>
  );
}
