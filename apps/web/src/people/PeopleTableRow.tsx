import { windowBar } from '@twelvemonth/charts';
import { day } from '@twelvemonth/clinical';
import { Link } from '@tanstack/react-router';
import type { PersonRow } from '@twelvemonth/exchange';
import { memo } from 'react';
import { Strip } from '../drawing/Strip.tsx';
import { useServiceToday } from '../frame/unit.ts';
import { Verdict } from '../verdict/Verdict.tsx';
import { WhyVerdict } from '../verdict/WhyVerdict.tsx';
import { bornShort, dayInWords } from '../words/dates.ts';
import { dotted, unbroken } from '../words/texts.ts';
import list from '../paper/PeopleTable.module.css';
import css from './People.module.css';
import { InUnitWords } from '../words/InUnitWords.tsx';

function strip(row: PersonRow, today: string): string {
  const { window, place } = row;
  return windowBar(
    {
      today: day(today),
      waiting: row.headline,
      steps: [],
      ...(window === undefined
        ? {}
        : {
            window: {
              first: day(window.first),
              ...(window.last === undefined ? {} : { last: day(window.last) }),
              ...(window.certain && window.last !== undefined ? { certainUntil: day(window.last) } : {}),
            },
          }),
      ...(place === undefined ? {} : { place: { on: day(place.on), says: '' } }),
    },
    { id: `w-${row.patient}`, width: 220, form: 'strip' },
  ).svg;
}

export const PeopleTableRow = memo(function PeopleTableRow({ row }: { row: PersonRow }) {
  const today = useServiceToday();
  return (
    <tr>
      <th scope="row">
        <Link to="/people/$patient" params={{ patient: row.patient }} preload={false}>
          {row.name}
        </Link>
        <div className={list['detail']}>
          {dotted(`born ${bornShort(row.born)}${row.age === undefined ? '' : ` (${row.age})`}`, unbroken(row.number))}
        </div>
      </th>
      <td>
        {row.standing.standing}
        <div className={list['detail']}>
          {dotted(row.dose, row.standing.on !== undefined && `by ${dayInWords(row.standing.on)}`)}
        </div>
      </td>
      <td>
        <Verdict is={row.verdict} />
        {row.verdict !== 'does not apply' && <WhyVerdict patient={row.patient} on={row.place?.on} about={row.name} />}
      </td>
      <td className={css['window']}>
        {row.window !== undefined && <Strip svg={strip(row, today)} />}
        <div className={list['detail']}>
          <InUnitWords>{row.window?.says ?? (row.verdict === 'does not apply' ? '' : 'no dates yet')}</InUnitWords>
        </div>
      </td>
      <td>
        {row.place === undefined ? (
          <span className="quiet">no place</span>
        ) : (
          <>
            {dayInWords(row.place.on)}
            <div className={list['detail']}>{row.place.arriveAt}</div>
          </>
        )}
      </td>
    </tr>
  );
});
