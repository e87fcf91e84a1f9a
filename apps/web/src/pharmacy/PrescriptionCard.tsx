import { Link } from '@tanstack/react-router';
import type { PrescriptionToVerify } from '@twelvemonth/exchange';
import { useState } from 'react';
import { useActingRole } from '../frame/acting-role.ts';
import { Button } from '../paper/Button.tsx';
import { Verdict } from '../verdict/Verdict.tsx';
import { dayInWords, shortDay } from '../words/dates.ts';
import { dotted, sentence, unbroken } from '../words/texts.ts';
import { AnswerForm } from './AnswerForm.tsx';
import css from './Pharmacy.module.css';
import { type Said, SayForm, sayWords } from './SayForm.tsx';

/** One prescription with what a pharmacist reads beside it, and what can be said about it. */
export function PrescriptionCard({ row }: { row: PrescriptionToVerify }) {
  const { roles } = useActingRole();
  const [open, setOpen] = useState<Said | 'answer'>();
  const close = (): void => setOpen(undefined);
  const toggle = (what: Said | 'answer'): void => setOpen(open === what ? undefined : what);
  const sayable =
    row.state.is === 'verified' ? (['asked', 'refused'] as const) : (['verified', 'asked', 'refused'] as const);
  return (
    <li className={css['card']}>
      <h3>
        <Link to="/people/$patient" params={{ patient: row.patient }}>
          {row.name}
        </Link>
        <span className={css['who']}>{dotted(`born ${row.born}`, unbroken(row.number))}</span>
      </h3>
      <p className={css['order']}>{sentence(row.says)}</p>
      <dl className={css['facts']}>
        <div>
          <dt>order</dt>
          <dd>
            {row.orderedAs}, by {row.by} on {shortDay(row.on)}
          </dd>
        </div>
        <div>
          <dt>valid</dt>
          <dd>
            {shortDay(row.validFrom)} to {shortDay(row.validUntil)}
          </dd>
        </div>
        <div>
          <dt>conditions</dt>
          <dd>{row.conditions ?? 'none written'}</dd>
        </div>
        <div>
          <dt>allergies</dt>
          <dd>{row.allergies}</dd>
        </div>
        <div>
          <dt>kidneys</dt>
          <dd>{row.clearance ?? 'not known'}</dd>
        </div>
        <div>
          <dt>other medicines</dt>
          <dd>{row.medicines.length === 0 ? 'none in the notes' : row.medicines.join(', ')}</dd>
        </div>
        <div>
          <dt>last dose</dt>
          <dd>{row.lastDose === undefined ? 'none in the notes' : sentence(row.lastDose)}</dd>
        </div>
        <div>
          <dt>place</dt>
          <dd>{row.place === undefined ? 'none booked' : dayInWords(row.place.on)}</dd>
        </div>
        <div>
          <dt>readiness {row.place === undefined ? 'today' : 'for that day'}</dt>
          <dd>{row.verdict === undefined ? 'no protocol' : <Verdict is={row.verdict}>{row.headline}</Verdict>}</dd>
        </div>
      </dl>
      <p className={row.state.holds ? css['holds'] : css['state']}>
        <strong>{row.state.holds ? 'Nothing is prepared: ' : ''}</strong>
        {row.state.holds ? row.state.says : sentence(row.state.says)}
      </p>
      {row.question !== undefined && row.state.is === 'answered' && (
        <p className="quiet">
          Asked by {row.question.by} on {shortDay(row.question.on)}: {row.question.says}
        </p>
      )}
      <div className={`${css['acts']} screenOnly`}>
        {roles.includes('pharmacist') &&
          !row.own &&
          sayable.map((what) => (
            <Button
              key={what}
              size="big"
              tone={what === 'verified' ? 'act' : 'quiet'}
              aria-expanded={open === what}
              onClick={() => toggle(what)}
            >
              {sayWords[what].button}
              <span className="unseen"> {row.name}</span>
            </Button>
          ))}
        {roles.includes('pharmacist') && row.own && <p>You wrote it: another pharmacist verifies it.</p>}
        {roles.includes('prescriber') && row.question !== undefined && row.state.is === 'asked' && (
          <Button size="big" tone="act" aria-expanded={open === 'answer'} onClick={() => toggle('answer')}>
            Answer<span className="unseen"> about {row.name}</span>
          </Button>
        )}
        {roles.includes('prescriber') && (
          <Link
            className={css['link']}
            to="/people/$patient"
            params={{ patient: row.patient }}
            search={{ record: 'prescription', correct: row.prescription }}
          >
            Correct the prescription<span className="unseen"> of {row.name}</span>
          </Link>
        )}
      </div>
      {open !== undefined && open !== 'answer' && <SayForm key={open} row={row} what={open} close={close} />}
      {open === 'answer' && row.question !== undefined && (
        <AnswerForm patient={row.patient} check={row.question.check} close={close} />
      )}
    </li>
  );
}
