import { useNavigate } from '@tanstack/react-router';
import { useRef, useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { DateField } from '../fields/DateField.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { NoUnitYet } from '../frame/NoUnitYet.tsx';
import { useServiceToday, useUnit } from '../frame/unit.ts';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { Page } from '../paper/Page.tsx';
import type { ActNamed } from '@twelvemonth/clinical';
import { useAct } from '../server/use-act.ts';
import css from './People.module.css';
import { LookAlikes } from './LookAlikes.tsx';
import { type ReferralForm, emptyReferral, registerAct } from './new-referral.ts';
import { useDateOrder } from '../words/american.ts';
import { longDay, readTypedDate } from '../words/dates.ts';

/** Someone asks the service to treat a person: who they are, how to reach them, who asks and why. */
export function NewPersonScreen() {
  const navigate = useNavigate();
  const { unit, units } = useUnit();
  const today = useServiceToday();
  const patient = useRef(crypto.randomUUID());
  const [form, setForm] = useState<ReferralForm>(() => ({ ...emptyReferral, on: today }));
  const order = useDateOrder();
  const attempt = useAct(() => void navigate({ to: '/people/$patient', params: { patient: patient.current } }));
  const set =
    <Key extends keyof typeof form>(key: Key) =>
    (value: (typeof form)[Key]) =>
      setForm((before) => ({ ...before, [key]: value }));
  if (unit === undefined)
    return (
      <Page title="Register someone">
        <NoUnitYet />
      </Page>
    );
  const born = readTypedDate(form.born, '1999-12-31', order);
  const send = (notTheSameAs: readonly string[] = []): void => {
    void attempt.send(
      registerAct(patient.current, form, form.unit ?? unit.unit, notTheSameAs, order) as ActNamed<'register'>,
    );
  };
  return (
    <Page
      title="Register someone"
      sub="A new referral. Nothing is looked up anywhere else; write what the referral says."
    >
      <ActForm refusals={attempt.refusals} send={send}>
        <Outcome of={attempt} />
        <LookAlikes refusals={attempt.refusals} goOn={send} />
        <div className={css['form']}>
          <div>
            <h2>Who</h2>
            <TextField label="Given names" at="identity.given" value={form.given} onChange={set('given')} />
            <TextField label="Family name" at="identity.family" value={form.family} onChange={set('family')} />
            <TextField
              label="Former name"
              at="identity.formerNames"
              value={form.former}
              onChange={set('former')}
              optional
            />
            <TextField
              label="Birth date"
              at="identity.born"
              help={`${order === 'day first' ? 'Day, month' : 'Month, day'}, year; only the year if that is all that is known.`}
              short
              value={form.born}
              onChange={set('born')}
            />
            {born !== undefined && <p aria-live="polite">born on {longDay(born)}</p>}
            <ChoiceField
              label="Sex as registered"
              at="identity.sex"
              help="The clearance formula needs it. Leave open if it is not recorded."
              value={form.sex}
              onChange={set('sex')}
              options={[{ value: 'female' }, { value: 'male' }]}
            />
            <TextField
              label="Number"
              at="identity.number"
              help="The number this service knows the person by."
              value={form.number}
              onChange={set('number')}
            />
          </div>
          <div>
            <h2>How to reach them</h2>
            <TextField
              label="Telephone"
              at="contact.telephone"
              type="tel"
              value={form.telephone}
              onChange={set('telephone')}
              optional
            />
            <TextField
              label="Address"
              at="contact.address"
              lines="several"
              value={form.address}
              onChange={set('address')}
              optional
            />
            <TextField
              label="Family doctor"
              at="contact.familyDoctor"
              value={form.familyDoctor}
              onChange={set('familyDoctor')}
              optional
            />
            <TextField
              label="What they need on the day"
              at="contact.needs"
              help="One a line: hearing aids, hospital transport, hoist, interpreter."
              lines="several"
              value={form.needs}
              onChange={set('needs')}
              optional
            />
            <ChoiceField
              label="Arm to avoid"
              at="contact.armToAvoid"
              value={form.arm}
              onChange={set('arm')}
              options={[{ value: 'left' }, { value: 'right' }]}
              optional
            />
          </div>
          <div>
            <h2>The referral</h2>
            <TextField label="From" at="referral.from" help="Who asks." value={form.from} onChange={set('from')} />
            <TextField
              label="Reason"
              at="referral.reason"
              lines="several"
              value={form.reason}
              onChange={set('reason')}
            />
            <ChoiceField
              label="How soon"
              at="referral.tier"
              value={form.tier}
              onChange={set('tier')}
              options={[{ value: 'first in line' }, { value: 'high' }, { value: 'routine' }]}
            />
            {units.length > 1 && (
              <ChoiceField
                label="For which unit"
                at="referral.unit"
                value={form.unit ?? unit.unit}
                onChange={set('unit')}
                options={units.map((each) => ({ value: each.unit, says: each.name }))}
              />
            )}
            <DateField label="Received on" at="on" value={form.on} onChange={set('on')} near="past" />
          </div>
        </div>
        <p style={{ marginTop: '1.2rem' }}>
          <Button type="submit" tone="act" busy={attempt.busy}>
            Register
          </Button>
        </p>
      </ActForm>
    </Page>
  );
}
