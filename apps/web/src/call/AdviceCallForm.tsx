import { useQuery } from '@tanstack/react-query';
import { type ActNamed, type AskedFlag, type PlainDate, callers, flagsIn } from '@twelvemonth/clinical';
import { useEffect, useRef, useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { DateField } from '../fields/DateField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { useUnit } from '../frame/unit.ts';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { adviceLine } from '../server/queries.ts';
import { useAct } from '../server/use-act.ts';
import { RedFlags } from './RedFlags.tsx';
import type { Known } from './WhoIsIt.tsx';

const somebodyElse = 'somebody else';
const present = (text: string): string | undefined => (text.trim() === '' ? undefined : text.trim());

/** The call as it goes: red flags, their words, what was advised, who takes it on. `about` undefined: nobody found here. */
export function AdviceCallForm({
  about,
  touched,
  done,
}: {
  about: Known | undefined;
  touched: () => void;
  done: (says: string) => void;
}) {
  const { unit } = useUnit();
  const [nameSaid, setNameSaid] = useState('');
  const heard = useRef<string>(undefined);
  const attempt = useAct(({ says }) => void (heard.current = says), undefined, {
    patient: about?.patient,
    name: about === undefined ? nameSaid.trim() : about.name,
    zone: unit?.zone ?? 'Europe/London',
  });
  const takers = useQuery({ ...adviceLine(unit?.unit), enabled: unit !== undefined }).data?.takers ?? [];
  const [knownOfThem, setKnownOfThem] = useState('');
  const [asked, setAsked] = useState<readonly AskedFlag[]>([]);
  const [words, setWords] = useState('');
  const [caller, setCaller] = useState<(typeof callers)[number]>();
  const [callerName, setCallerName] = useState('');
  const [telephone, setTelephone] = useState('');
  const [advice, setAdvice] = useState('');
  const [taker, setTaker] = useState<string>();
  const [otherTaker, setOtherTaker] = useState('');
  const [callBackOn, setCallBackOn] = useState<string>();
  const fields = useRef<HTMLDivElement>(null);
  useEffect(() => {
    // Ready for typing, with the red flags still in sight.
    fields.current?.querySelector(about === undefined ? 'input' : 'textarea')?.focus({ preventScroll: true });
  }, [about]);
  const flags = flagsIn(asked);
  const passedTo = taker === somebodyElse ? present(otherTaker) : taker;
  const missing =
    about === undefined && nameSaid.trim() === ''
      ? 'What name was said?'
      : asked.length === 0
        ? 'Ask about the red flags'
        : words.trim() === '' || caller === undefined
          ? 'What do they say, and who rings?'
          : advice.trim() === ''
            ? 'What did you advise?'
            : flags.length > 0 && passedTo === undefined
              ? 'Who takes the red flag on?'
              : undefined;
  const send = async (): Promise<void> => {
    if (missing !== undefined || caller === undefined) return;
    const said: ActNamed<'write advice call'>['body'] = {
      caller,
      ...(present(callerName) === undefined ? {} : { callerName: callerName.trim() }),
      ...(present(telephone) === undefined ? {} : { callerTelephone: telephone.trim() }),
      redFlags: asked,
      about: words.trim(),
      advice: advice.trim(),
      ...(flags.length === 0 || passedTo === undefined ? {} : { passedTo }),
      ...(callBackOn === undefined ? {} : { callBackOn: callBackOn as PlainDate }),
    };
    const answer = await attempt.send(
      about === undefined
        ? {
            name: 'write unknown call',
            unit: unit?.unit ?? '',
            body: {
              ...said,
              nameSaid: nameSaid.trim(),
              ...(present(knownOfThem) === undefined ? {} : { knownOfThem: knownOfThem.trim() }),
            },
          }
        : { name: 'write advice call', patient: about.patient, body: said },
    );
    if (answer === undefined) {
      if (heard.current === undefined) return;
      const toTell =
        flags.length === 0
          ? ''
          : ` Nobody else sees the red flag until then: ${passedTo ?? 'somebody'} has to have been told by you.`;
      done(`${heard.current}${toTell}`);
      return;
    }
    const waits =
      about === undefined ? 'It waits under “calls about somebody not found” until the person is found. ' : '';
    done(
      `Written down. ${waits}${flags.length === 0 ? '' : `${passedTo ?? 'Somebody'} takes the red flag on; it stands under “red flags from calls” until it is answered.`}`,
    );
  };
  return (
    <ActForm refusals={attempt.refusals} send={() => void send()}>
      <div onChange={touched} ref={fields}>
        {about === undefined && (
          <>
            <Note tone="caution">
              Search once more by birth date or number before you go on: what is not in their notes holds no dose.
            </Note>
            <TextField label="The name as it was said" at="body.nameSaid" value={nameSaid} onChange={setNameSaid} />
            <TextField
              label="What else is known of them"
              help="Birth date, number, town, who treats them."
              optional
              at="body.knownOfThem"
              value={knownOfThem}
              onChange={setKnownOfThem}
            />
          </>
        )}
        <RedFlags asked={asked} setAsked={setAsked} />
        <TextField
          label="What they say, in their words"
          at="body.about"
          lines="several"
          value={words}
          onChange={setWords}
        />
        <ChoiceField
          label="Who rings"
          at="body.caller"
          size="big"
          value={caller}
          onChange={setCaller}
          options={callers.map((value) => ({ value }))}
        />
        <TextField
          label="Name of the caller"
          optional
          at="body.callerName"
          value={callerName}
          onChange={setCallerName}
        />
        <TextField
          label="Number to ring back"
          optional
          type="tel"
          at="body.callerTelephone"
          value={telephone}
          onChange={setTelephone}
        />
        <TextField label="What you advised" at="body.advice" lines="several" value={advice} onChange={setAdvice} />
        {flags.length > 0 && (
          <>
            <ChoiceField
              label="Who takes the red flag on"
              help="Tell them now, then say whom you told."
              at="body.passedTo"
              size="big"
              value={taker}
              onChange={setTaker}
              options={[
                ...takers.map(({ name, role }) => ({ value: name, says: `${name}, ${role}` })),
                { value: somebodyElse },
              ]}
            />
            {taker === somebodyElse && (
              <TextField label="Whom you told" at="body.passedTo" value={otherTaker} onChange={setOtherTaker} />
            )}
          </>
        )}
        <DateField
          label="To be rung back on"
          optional
          at="body.callBackOn"
          value={callBackOn}
          onChange={setCallBackOn}
        />
      </div>
      <Outcome of={attempt} />
      <p style={{ marginTop: '1rem' }}>
        <Button type="submit" tone="act" size="big" busy={attempt.busy} disabled={missing !== undefined}>
          {missing ?? 'Write the call down'}
        </Button>
      </p>
    </ActForm>
  );
}
