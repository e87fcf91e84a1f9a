import { Link } from '@tanstack/react-router';
import type { EntryView, PersonView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { useUnit } from '../frame/unit.ts';
import { Button } from '../paper/Button.tsx';
import { dayInWords, momentInWords, timeOfDay } from '../words/dates.ts';
import { dotted } from '../words/texts.ts';
import css from './Person.module.css';
import { WithdrawForm } from './WithdrawForm.tsx';
import { MoveForm } from './MoveForm.tsx';
import { isCorrectable, isMovable, isWithdrawable } from './may-change.ts';

export function EntryRow({ entry, person, shown }: { entry: EntryView; person: PersonView; shown: boolean }) {
  const { unit } = useUnit();
  const [open, setOpen] = useState<'withdraw' | 'move'>();
  const toggle = (what: 'withdraw' | 'move'): void => setOpen(open === what ? undefined : what);
  const gone = entry.withdrawnBy !== undefined;
  const replaced = entry.amendedBy !== undefined;
  /** What follows the name of its kind, where the text begins with that. */
  const says = entry.text.startsWith(entry.label) ? entry.text.slice(entry.label.length) : entry.text;
  return (
    <>
      <tr id={`entry-${entry.id}`} className={shown ? css['shown'] : undefined}>
        <td>
          <span className="nowrap">{dayInWords(entry.on)}</span>
          {entry.at !== undefined && <span className="quiet"> {timeOfDay(entry.at, unit?.zone)}</span>}
        </td>
        <td className={gone || replaced ? css['withdrawn'] : undefined}>
          <span className="quiet">{says === entry.text ? `${entry.label}: ` : entry.label}</span>
          {gone || replaced ? <s>{says}</s> : says}
          {gone && <div className="small">withdrawn: {entry.withdrawnBecause}</div>}
          {replaced && (
            <div className="small">
              corrected, see the <a href={`#entry-${entry.amendedBy}`}>newer entry</a>
            </div>
          )}
          {entry.amends !== undefined && (
            <div className="small">
              corrects an <a href={`#entry-${entry.amends}`}>earlier entry</a>
            </div>
          )}
        </td>
        <td className="small quiet">
          {dotted(
            `${entry.by.name}, ${entry.by.role}`,
            momentInWords(entry.recordedAt, unit?.zone),
            entry.late && 'written late',
            entry.from !== undefined && `in notes ${entry.from}`,
          )}
        </td>
        <td>
          {!gone && !replaced && (
            <span className={`${css['entryActs']} screenOnly`}>
              {isCorrectable(entry.kind) && (
                <Link
                  to="/people/$patient"
                  params={{ patient: person.patient }}
                  search={{ record: entry.kind, correct: entry.id }}
                  className="finger"
                >
                  correct
                  <span className="unseen"> {entry.text}</span>
                </Link>
              )}
              {isWithdrawable(entry.kind) && (
                <Button tone="plain" aria-expanded={open === 'withdraw'} onClick={() => toggle('withdraw')}>
                  withdraw
                  <span className="unseen"> {entry.text}</span>
                </Button>
              )}
              {isMovable(entry.kind) && (
                <Button tone="plain" aria-expanded={open === 'move'} onClick={() => toggle('move')}>
                  move
                  <span className="unseen"> {entry.text} to another person</span>
                </Button>
              )}
            </span>
          )}
        </td>
      </tr>
      {open !== undefined && !gone && (
        <tr className={css['open']}>
          <td colSpan={4}>
            {open === 'withdraw' ? (
              <WithdrawForm entry={entry} person={person} close={() => setOpen(undefined)} />
            ) : (
              <MoveForm entry={entry} person={person} close={() => setOpen(undefined)} />
            )}
          </td>
        </tr>
      )}
    </>
  );
}
