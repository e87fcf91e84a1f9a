import { useQuery } from '@tanstack/react-query';
import { recall, status, today, waitingRows } from '../server/queries.ts';
import { DemoMark } from './DemoMark.tsx';
import type { RouteName } from '../server/paths.ts';
import css from './Frame.module.css';
import { Places } from './Places.tsx';
import { useMay } from './may.ts';
import { showUnit, useUnit } from './unit.ts';

/** Where one can go, with how much waits there. */
export function Side() {
  const { unit, units } = useUnit();
  const may = useMay();
  const asking = (route: RouteName) => ({ enabled: unit !== undefined && may(route) });
  const day = useQuery({ ...today(unit?.unit), ...asking('today') }).data;
  const listed = day?.counts.listed;
  const atPharmacy = day?.work.reduce((sum, { to, count }) => (to === '/pharmacy' ? sum + count : sum), 0);
  const due = useQuery({ ...recall(unit?.unit), ...asking('recall') }).data?.people.length;
  const rows = useQuery({ ...waitingRows(), ...asking('waitingRows') }).data?.rows.length;
  const demo = useQuery(status).data?.demo === true;
  const places = [
    { to: '/', route: 'today', says: 'Today', count: listed },
    { to: '/people', route: 'people', says: 'People', count: undefined },
    { to: '/sessions', route: 'sessions', says: 'Sessions', count: undefined },
    { to: '/recall', route: 'recall', says: 'Recall', count: due },
    { to: '/aftercare', route: 'aftercare', says: 'Aftercare', count: undefined },
    { to: '/letters', route: 'letters', says: 'Letters', count: undefined },
    { to: '/import', route: 'dryRun', says: 'Import', count: rows },
    { to: '/pharmacy', route: 'pharmacy', says: 'Pharmacy', count: atPharmacy },
    { to: '/stock', route: 'stock', says: 'Stock', count: undefined },
    { to: '/protocol', route: 'protocols', says: 'Protocol', count: undefined },
    { to: '/settings', route: 'settings', says: 'Settings', count: undefined },
  ] as const;
  return (
    <header className={css['side']}>
      <div className={css['brand']}>
        <strong>Twelvemonth</strong>
        <div className={css['unit']}>
          {units.length > 1 ? (
            <select aria-label="Unit shown" value={unit?.unit} onChange={(event) => showUnit(event.target.value)}>
              {units.map((each) => (
                <option key={each.unit} value={each.unit}>
                  {each.name}
                </option>
              ))}
            </select>
          ) : (
            (unit?.name ?? 'no unit yet')
          )}
        </div>
      </div>
      <Places places={places.filter(({ route }) => may(route))} />
      {demo && <DemoMark />}
    </header>
  );
}
