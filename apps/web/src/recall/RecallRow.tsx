import { Link } from '@tanstack/react-router';
import type { RecallRow as Row } from '@twelvemonth/exchange';
import { memo, useState } from 'react';
import { Button } from '../paper/Button.tsx';
import { WhyVerdict } from '../verdict/WhyVerdict.tsx';
import { dayInWords, shortDay } from '../words/dates.ts';
import { counted, dotted, sentence, unbroken } from '../words/texts.ts';
import { CallForm } from './CallForm.tsx';
import list from '../paper/PeopleTable.module.css';
import css from './Recall.module.css';
import { InUnitWords } from '../words/InUnitWords.tsx';

const dueWords = ({ due, daysPastDue }: Row): string => {
  if (due === undefined) return 'not set';
  if (daysPastDue === undefined || daysPastDue === 0) return daysPastDue === 0 ? 'today' : '';
  return daysPastDue > 0 ? `${counted(daysPastDue, 'day')} ago` : `in ${counted(-daysPastDue, 'day')}`;
};

export const RecallRow = memo(function RecallRow({ row }: { row: Row }) {
  const [calling, setCalling] = useState(false);
  return (
    <>
      <tr>
        <th scope="row">
          <Link to="/people/$patient" params={{ patient: row.patient }}>
            {row.name}
          </Link>
          <div className={list['detail']}>
            {dotted(unbroken(row.number), row.telephone === undefined ? undefined : unbroken(row.telephone))}
          </div>
          {row.speakTo.map((one) => (
            <div key={one} className={list['detail']}>
              {one}
            </div>
          ))}
        </th>
        <td>
          {row.due !== undefined && dayInWords(row.due)}
          <div className={list['detail']}>
            {dotted(dueWords(row), row.dose, row.lastDose !== undefined && `last dose ${shortDay(row.lastDose)}`)}
          </div>
          <div className={css['window']}>
            <InUnitWords>{row.window}</InUnitWords>
          </div>
          <div className={list['detail']}>
            <InUnitWords>
              {dotted(
                row.booked !== undefined && `booked ${dayInWords(row.booked)}`,
                row.bloodsBetween !== undefined &&
                  `bloods ${shortDay(row.bloodsBetween.from)} to ${shortDay(row.bloodsBetween.until)}`,
              )}
            </InUnitWords>
          </div>
        </td>
        <td>
          <InUnitWords>{row.nextStep}</InUnitWords>
          <WhyVerdict patient={row.patient} on={row.booked} about={row.name} />
          <div className={list['detail']}>{row.lastCall ?? 'not called yet'}</div>
          {row.tried !== '' && row.tried !== 'not tried yet' && <div className={list['detail']}>{row.tried}</div>}
          {row.open.length > 0 && (
            <div className={list['detail']}>
              to ask: <InUnitWords>{row.open.join(', ')}</InUnitWords>
            </div>
          )}
        </td>
        <td style={{ textAlign: 'end' }}>
          {row.standing.standing === 'in review' && (
            <div className="screenOnly nowrap">
              <Link to="/people/$patient/review" params={{ patient: row.patient }}>
                open the review<span className="unseen"> of {row.name}</span>
              </Link>
            </div>
          )}
          <div className="screenOnly nowrap">
            <Link to="/people/$patient/coming-back" params={{ patient: row.patient }}>
              ask<span className="unseen"> {row.name}</span>
            </Link>
          </div>
          <Button
            size="slim"
            className="screenOnly nowrap"
            aria-expanded={calling}
            onClick={() => setCalling(!calling)}
          >
            Log a call<span className="unseen"> to {row.name}</span>
          </Button>
        </td>
      </tr>
      {row.clock !== undefined && row.clock.tier !== 'running' && (
        <tr className={css['open']}>
          <td colSpan={4}>
            <strong>{row.clock.tier}</strong>: {row.clock.says}
            {row.clock.prescriberToday !== undefined && <strong>. {sentence(row.clock.prescriberToday)}</strong>}
          </td>
        </tr>
      )}
      {calling && (
        <tr className={css['open']}>
          <td colSpan={4}>
            <CallForm patient={row.patient} close={() => setCalling(false)} />
          </td>
        </tr>
      )}
    </>
  );
});
