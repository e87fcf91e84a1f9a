import { Link } from '@tanstack/react-router';
import { without } from '../words/without.ts';
import css from './People.module.css';

type Props = {
  readonly standings: readonly { readonly standing: string; readonly count: number }[];
  readonly total: number;
  readonly chosen: string | undefined;
};

/** How many stand where; a press shows them. */
export function StandingFilters({ standings, total, chosen }: Props) {
  return (
    <nav aria-label="Where they are" className="screenOnly">
      <ul className={css['filters']}>
        <li>
          <Link
            to="/people"
            search={(before) => without(before, 'standing')}
            aria-current={chosen === undefined ? 'true' : undefined}
            activeOptions={{ exact: true }}
            activeProps={{}}
          >
            everyone <span>{total}</span>
          </Link>
        </li>
        {standings
          .filter(({ count }) => count > 0)
          .map(({ standing, count }) => (
            <li key={standing}>
              <Link
                to="/people"
                search={(before) => ({ ...before, standing })}
                aria-current={chosen === standing ? 'true' : undefined}
                activeOptions={{ exact: true }}
                activeProps={{}}
              >
                {standing} <span>{count}</span>
              </Link>
            </li>
          ))}
      </ul>
    </nav>
  );
}
