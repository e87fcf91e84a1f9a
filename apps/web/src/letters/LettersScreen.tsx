import { useQuery } from '@tanstack/react-query';
import type { LettersView } from '@twelvemonth/exchange';
import { NoUnitYet } from '../frame/NoUnitYet.tsx';
import { useUnit } from '../frame/unit.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Empty } from '../paper/Empty.tsx';
import { Page } from '../paper/Page.tsx';
import { addressOf } from '../server/paths.ts';
import { letters, queries, writtenLetter } from '../server/queries.ts';
import { counted } from '../words/texts.ts';
import { LetterTable } from './LetterTable.tsx';
import { Reminders } from './Reminders.tsx';
import { drafted, sentBy, signed } from './letter-words.ts';
import type { One } from './use-many.ts';

/** Letters out: what the notes call for, what waits for a signature, for the post, for an answer, and what was sent. */
export function LettersScreen() {
  const { unit } = useUnit();
  const asked = useQuery({ ...letters(unit?.unit), enabled: unit !== undefined });
  return (
    <Page
      title="Letters"
      sub="A person reads and signs each letter, and presses for each reminder or approves it before. Nothing is sent twice."
      acts={<Button onClick={() => window.print()}>Print this list</Button>}
    >
      {unit === undefined ? (
        <NoUnitYet />
      ) : (
        <Awaited query={asked} what="the letters">
          {(data) => (
            <>
              <Reminders unit={data.unit} />
              <Lists data={data} />
            </>
          )}
        </Awaited>
      )}
    </Page>
  );
}

/** The letter as it would be now; one that may not be printed is left, with the reason. */
async function written(asked: Parameters<typeof writtenLetter>[0]) {
  const found = await queries.fetchQuery(writtenLetter(asked));
  return found.notPrintable.length === 0 ? found : { because: found.notPrintable.join('; ') };
}

function Lists({ data }: { data: LettersView }) {
  const { calledFor, toSign, toSend, toAnswer, sent, more, today, unit } = data;
  if (calledFor.length + toSign.length + toSend.length + toAnswer.length + sent.length === 0)
    return <Empty says="No letter is called for, and none was written yet." />;
  const draft = (row: LettersView['calledFor'][number]): One => ({
    who: row.name,
    act: async () => {
      const { patient, to, about } = row;
      const found = await written({ patient, to, about });
      return 'because' in found ? found : drafted(found);
    },
  });
  const sign = (row: LettersView['toSign'][number]): One => ({
    who: row.name,
    act: async () => {
      const { patient, to, about, entry } = row;
      const found = await written({ patient, to, about, draft: entry });
      return 'because' in found ? found : signed(found, entry);
    },
  });
  return (
    <>
      <LetterTable
        id="called-for"
        title="Called for"
        says="The notes ask for these. Write one, or draft the ticked ones for a signature."
        rows={calledFor.map((row) => ({
          ...row,
          key: `${row.patient}/${row.to}/${row.about}`,
          when: row.since,
          note: row.because,
          notNow: row.notPrintable.join('; '),
        }))}
        press={(rows) => `Draft ${counted(rows, 'letter')}`}
        one={(row) => draft(row)}
      />
      <LetterTable
        id="to-sign"
        title="Waiting for a signature"
        says="Read each before you tick it: your name goes under it."
        mustRead
        rows={toSign.map((row) => ({
          ...row,
          key: row.entry,
          when: row.on,
          note: row.state,
          notNow: row.stopped ?? '',
        }))}
        press={(rows) => `Sign ${counted(rows, 'letter')}`}
        one={(row) => sign(row)}
      />
      <LetterTable
        id="to-send"
        title="Signed, to be sent"
        says={
          <a href={addressOf('lettersDocument', { unit })} target="_blank" rel="noreferrer" className="finger">
            print all of them, each on a page of its own
          </a>
        }
        rows={toSend.map((row) => ({
          ...row,
          key: row.entry,
          when: row.on,
          note: row.state,
          notNow: row.stopped ?? '',
        }))}
        press={(rows) => `${counted(rows, 'letter')} in the post`}
        one={(row) => ({ who: row.name, act: async () => sentBy(row, 'post', today) })}
      />
      <LetterTable
        id="to-answer"
        title="Waiting for an answer"
        says="Write down what came back, or that you asked again, from the person's letters."
        rows={toAnswer.map((row) => ({ ...row, key: row.entry, when: row.due, note: row.state, notNow: '' }))}
      />
      <LetterTable
        id="sent"
        title={more === 0 ? 'Sent' : `Sent, the newest ${sent.length}`}
        rows={sent.map((row) => ({ ...row, key: row.entry, when: row.on, note: row.state, notNow: '' }))}
      />
    </>
  );
}
