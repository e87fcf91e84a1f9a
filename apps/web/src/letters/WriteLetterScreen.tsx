import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate, useParams, useSearch } from '@tanstack/react-router';
import type { LettersOfPersonView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { TicksField } from '../fields/TicksField.tsx';
import { useActingRole } from '../frame/acting-role.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { Page } from '../paper/Page.tsx';
import { lettersOfPerson, writtenLetter } from '../server/queries.ts';
import { useAct } from '../server/use-act.ts';
import { dotted, unbroken } from '../words/texts.ts';
import { LettersKept } from './LettersKept.tsx';
import { drafted, letterName, signed } from './letter-words.ts';
import css from './Letters.module.css';
import { Sheet } from './Sheet.tsx';

/** One person's letters: choose one, read it, sign it or leave it for a signature; and what became of the others. */
export function WriteLetterScreen() {
  const { patient } = useParams({ from: '/people/$patient/letters' });
  const asked = useQuery(lettersOfPerson(patient));
  return (
    <Awaited query={asked} what="the letters">
      {(data) => (
        <Page
          title="Letters"
          sub={dotted(data.name, `born ${data.born}`, unbroken(data.number))}
          acts={
            <Link to="/people/$patient" params={{ patient }}>
              back to the person
            </Link>
          }
        >
          <Write data={data} />
          <LettersKept data={data} />
        </Page>
      )}
    </Awaited>
  );
}

const languages = [
  { value: 'en-GB', says: 'English (British)' },
  { value: 'en-US', says: 'English (American)' },
] as const;
const wantedOptions = ['bloods', 'medicines', 'vitamin D course', 'weight'].map((value) => ({ value }));

function Write({ data }: { data: LettersOfPersonView }) {
  const { to, about } = useSearch({ from: '/people/$patient/letters' });
  const navigate = useNavigate();
  const [language, setLanguage] = useState<'en-GB' | 'en-US'>(data.language);
  const [wanted, setWanted] = useState<readonly string[]>([]);
  const [typed, setTyped] = useState('');
  const [words, setWords] = useState('');
  const options = data.choices.map((choice) => ({
    value: `${choice.to}/${choice.about}`,
    says: choice.calledFor ? `${letterName(choice)} (called for)` : letterName(choice),
  }));
  const chosen = data.choices.find((choice) => choice.to === to && choice.about === about);
  const asksDoctor = to === 'family doctor' && about === 'request';
  return (
    <div className={css['columns']}>
      <section aria-label="Which letter">
        <ChoiceField
          label="Which letter"
          value={chosen === undefined ? undefined : `${chosen.to}/${chosen.about}`}
          onChange={(value) => {
            const [reader, subject] = (value ?? '/').split('/');
            void navigate({
              to: '/people/$patient/letters',
              params: { patient: data.patient },
              search: { to: reader ?? '', about: subject ?? '' },
              replace: true,
            });
          }}
          options={options}
        />
        {asksDoctor && (
          <TicksField label="What is asked for" value={wanted} onChange={setWanted} options={wantedOptions} />
        )}
        <ChoiceField
          label="Language"
          value={language}
          onChange={(value) => setLanguage(value ?? data.language)}
          options={languages}
        />
        <TextField
          label={about === 'put off' ? 'What comes next, in words for them' : 'Your own words, at the end'}
          help="Short sentences. What is too hard to read is not printed."
          lines="several"
          value={typed}
          onChange={setTyped}
          optional
        />
        {typed.trim() !== words && <Button onClick={() => setWords(typed.trim())}>Put these words in</Button>}
      </section>
      {chosen === undefined ? (
        <Note>Choose a letter to read it here.</Note>
      ) : chosen.because !== undefined ? (
        <Note tone="caution">Nothing to write: {chosen.because}.</Note>
      ) : asksDoctor && wanted.length === 0 ? (
        <Note>Tick what is asked for: then the letter stands here.</Note>
      ) : (
        <Preview
          wordsLeftOut={typed.trim() !== words}
          asked={{
            patient: data.patient,
            to: chosen.to,
            about: chosen.about,
            language,
            wanted: wanted.length === 0 ? undefined : wanted.join(','),
            words: words === '' ? undefined : words,
          }}
        />
      )}
    </div>
  );
}

const mayNotSign = new Set(['clerk', 'assistant']);

function Preview({
  asked,
  wordsLeftOut,
}: {
  asked: Parameters<typeof writtenLetter>[0];
  /** Something was typed that does not stand in the letter yet. */
  wordsLeftOut: boolean;
}) {
  const found = useQuery(writtenLetter(asked));
  const { roles } = useActingRole();
  const signs = roles.some((role) => !mayNotSign.has(role));
  const attempt = useAct();
  return (
    <Awaited query={found} what="the letter">
      {(letter) => (
        <section aria-label="The letter">
          {letter.notPrintable.length > 0 && (
            <Note tone="caution">
              <p>
                <strong>Not printable.</strong> {letter.notPrintable.join('; ')}.
              </p>
            </Note>
          )}
          <Sheet letter={letter.sheet} />
          <Outcome of={attempt} />
          {wordsLeftOut && <Note>What you typed is not in the letter yet: put it in, or take it out, then sign.</Note>}
          {letter.notPrintable.length === 0 && !wordsLeftOut && !found.isPlaceholderData && (
            <div className={`${css['acts']} screenOnly`}>
              {signs && (
                <Button tone="act" size="big" busy={attempt.busy} onClick={() => void attempt.send(signed(letter))}>
                  I read it: sign
                </Button>
              )}
              <Button busy={attempt.busy} onClick={() => void attempt.send(drafted(letter))}>
                Leave it for a signature
              </Button>
            </div>
          )}
        </section>
      )}
    </Awaited>
  );
}
