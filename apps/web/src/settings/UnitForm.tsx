import type { PlainDate } from '@twelvemonth/clinical';
import type { UnitView } from '@twelvemonth/exchange';
import { useRef, useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { FieldGroup } from '../fields/FieldGroup.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { TicksField } from '../fields/TicksField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { useServiceToday } from '../frame/unit.ts';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import { useDateOrder } from '../words/american.ts';
import { readTypedDate, shortDay } from '../words/dates.ts';
import css from './Settings.module.css';
import { weekdayOptions } from './weekdays.ts';

const asTexts = (days: readonly number[]): readonly string[] => days.map(String);
const asNumbers = (days: readonly string[]): readonly number[] => days.map(Number).toSorted((a, b) => a - b);

const paths: Readonly<Record<string, string>> = {
  closed: 'closedDays',
  postalAddress: 'letters.postalAddress',
  remindDays: 'reminders.daysBefore',
  fromTime: 'reminders.fromTime',
  untilTime: 'reminders.untilTime',
  lineFrom: 'adviceLine.fromTime',
  lineUntil: 'adviceLine.untilTime',
};
const letterLanguages = [
  { value: 'en-GB', says: 'English (British)' },
  { value: 'en-US', says: 'English (American)' },
] as const;

/** What a unit is. The newest entry holds; older ones stay readable. */
export function UnitForm({ unit, close }: { unit: UnitView | undefined; close: () => void }) {
  const today = useServiceToday();
  const id = useRef(unit?.unit ?? crypto.randomUUID());
  const attempt = useAct(close);
  const [texts, setTexts] = useState({
    name: unit?.name ?? '',
    zone: unit?.zone ?? new Intl.DateTimeFormat().resolvedOptions().timeZone,
    opensAt: unit?.opensAt ?? '',
    closesAt: unit?.closesAt ?? '',
    telephone: unit?.telephone ?? '',
    remindDays: unit?.reminders?.daysBefore.join(', ') ?? '',
    fromTime: unit?.reminders?.fromTime ?? '',
    untilTime: unit?.reminders?.untilTime ?? '',
    lineFrom: unit?.adviceLine?.fromTime ?? '',
    lineUntil: unit?.adviceLine?.untilTime ?? '',
    postalAddress: unit?.letters?.postalAddress ?? '',
    emergencyNumber: unit?.emergencyNumber ?? '',
    closed: unit?.closedDays.map(shortDay).join('\n') ?? '',
  });
  const [chairs, setChairs] = useState<number | undefined>(unit?.chairs);
  const [minutes, setMinutes] = useState<number | undefined>(unit?.minutesBetweenArrivals);
  const [language, setLanguage] = useState<'en-GB' | 'en-US' | undefined>(unit?.letters?.language);
  const [answerWithin, setAnswerWithin] = useState<number | undefined>(unit?.letters?.answerWithinDays);
  const [leadDays, setLeadDays] = useState<number | undefined>(unit?.stock?.leadDays);
  const [reserve, setReserve] = useState<number | undefined>(unit?.stock?.reservePacks);
  const [sessionDays, setSessionDays] = useState(asTexts(unit?.sessionWeekdays ?? []));
  const [bloodDays, setBloodDays] = useState(asTexts(unit?.bloodWeekdays ?? [1, 2, 3, 4, 5]));
  const [byItself, setByItself] = useState<readonly 'yes'[]>(unit?.reminders?.byItself === true ? ['yes'] : []);
  const [lineDays, setLineDays] = useState(asTexts(unit?.adviceLine?.weekdays ?? []));
  const order = useDateOrder();
  const closedLines = texts.closed
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
  const unread = closedLines.filter((line) => readTypedDate(line, today, order) === undefined);
  const noSuchDates =
    unread.length === 0 ? undefined : `No such date: ${unread.join(', ')}. Write 25 Dec 2026, one a line.`;
  const text = (key: keyof typeof texts, label: string, help?: string, several = false) => (
    <TextField
      label={label}
      help={help}
      at={paths[key] ?? key}
      lines={several ? 'several' : 'one'}
      trouble={key === 'closed' ? noSuchDates : undefined}
      value={texts[key]}
      onChange={(value) => setTexts((before) => ({ ...before, [key]: value }))}
    />
  );
  const send = (): void => {
    const closedDays = closedLines.map((line) => (readTypedDate(line, today, order) ?? line) as PlainDate);
    void attempt.send({
      name: 'set unit',
      unit: id.current,
      body: {
        name: texts.name,
        zone: texts.zone,
        opensAt: texts.opensAt,
        closesAt: texts.closesAt,
        telephone: texts.telephone,
        ...(texts.emergencyNumber.trim() === '' ? {} : { emergencyNumber: texts.emergencyNumber }),
        closedDays,
        chairs: chairs ?? 0,
        minutesBetweenArrivals: minutes ?? 0,
        sessionWeekdays: asNumbers(sessionDays),
        bloodWeekdays: asNumbers(bloodDays),
        demo: unit?.demo ?? false,
        ...(unit?.planning === undefined ? {} : { planning: unit.planning }),
        ...(leadDays === undefined && reserve === undefined
          ? {}
          : { stock: { leadDays: leadDays as number, reservePacks: reserve as number } }),
        ...(texts.remindDays.trim() === ''
          ? {}
          : {
              reminders: {
                daysBefore: texts.remindDays.split(/[\s,]+/).map(Number),
                fromTime: texts.fromTime,
                untilTime: texts.untilTime,
                ...(byItself.length > 0 ? { byItself: true } : {}),
              },
            }),
        ...(lineDays.length === 0
          ? {}
          : {
              adviceLine: { weekdays: asNumbers(lineDays), fromTime: texts.lineFrom, untilTime: texts.lineUntil },
            }),
        ...(texts.postalAddress.trim() === '' && language === undefined && answerWithin === undefined
          ? {}
          : {
              letters: {
                postalAddress: texts.postalAddress,
                language: language ?? 'en-GB',
                answerWithinDays: answerWithin ?? 0,
              },
            }),
      },
    });
  };
  return (
    <ActForm refusals={attempt.refusals} send={send}>
      <h3>{unit === undefined ? 'A new unit' : `Change ${unit.name}`}</h3>
      <div className={css['grid']}>
        {text('name', 'Name')}
        {text('telephone', 'Telephone', 'The number patients ring.')}
        {text(
          'emergencyNumber',
          'Emergency number',
          'Rung when somebody collapses. It stands on the anaphylaxis card.',
        )}
        {text('opensAt', 'Opens at', 'HH:MM')}
        {text('closesAt', 'Closes at', 'HH:MM')}
        <NumberField label="Chairs" at="chairs" value={chairs} onChange={setChairs} />
        <NumberField
          label="Minutes between arrivals"
          at="minutesBetweenArrivals"
          unit="minutes"
          value={minutes}
          onChange={setMinutes}
        />
        {text('zone', 'Time zone', 'For example Europe/London.')}
      </div>
      <TicksField
        label="Session days"
        at="sessionWeekdays"
        value={sessionDays}
        onChange={setSessionDays}
        options={weekdayOptions}
      />
      <TicksField
        label="Days on which bloods can be taken"
        at="bloodWeekdays"
        value={bloodDays}
        onChange={setBloodDays}
        options={weekdayOptions}
      />
      {text('closed', 'Closed days', 'One date a line: 25 Dec 2026.', true)}
      <FieldGroup label="Advice line" optional>
        <TicksField
          label="Days on which it is answered"
          help="Those who had a first dose are rung on these days."
          at="adviceLine.weekdays"
          value={lineDays}
          onChange={setLineDays}
          options={weekdayOptions}
        />
        {text('lineFrom', 'Answered from', 'HH:MM')}
        {text('lineUntil', 'Answered until', 'HH:MM')}
      </FieldGroup>
      <FieldGroup label="Letters" optional>
        {text('postalAddress', 'Postal address', 'Where forms are sent back to.')}
        <ChoiceField
          label="Language of letters"
          at="letters.language"
          value={language}
          onChange={setLanguage}
          options={letterLanguages}
        />
        <NumberField
          label="Days to answer a letter"
          help="After that somebody asks again."
          at="letters.answerWithinDays"
          unit="days"
          value={answerWithin}
          onChange={setAnswerWithin}
        />
      </FieldGroup>
      <FieldGroup label="Stock" optional>
        <NumberField
          label="Days an order takes to come"
          help="The lead time: from ordering until the packs lie on the shelf."
          at="stock.leadDays"
          unit="days"
          value={leadDays}
          onChange={setLeadDays}
        />
        <NumberField
          label="Packs that are always to lie there"
          help="The reserve, for each product the unit gives."
          at="stock.reservePacks"
          unit="packs"
          value={reserve}
          onChange={setReserve}
        />
      </FieldGroup>
      <FieldGroup label="Reminders of a place" optional>
        {text('remindDays', 'Days before', 'For example 28, 7, 2. Empty: nobody is reminded.')}
        {text('fromTime', 'Not before', 'HH:MM')}
        {text('untilTime', 'Not after', 'HH:MM')}
        <TicksField
          label="Without a press each"
          at="reminders.byItself"
          help="Off: a person presses for every list. On: what a person approved once goes on its day."
          value={byItself}
          onChange={setByItself}
          options={[{ value: 'yes', says: 'approved reminders go by themselves' }]}
        />
      </FieldGroup>
      <Outcome of={attempt} />
      <div className={css['acts']}>
        <Button type="submit" tone="act" busy={attempt.busy}>
          Record
        </Button>
        <Button onClick={close}>Leave</Button>
      </div>
    </ActForm>
  );
}
