import { kindNamed } from '@twelvemonth/clinical';
import { Link } from '@tanstack/react-router';
import { useUnitWords } from '../../words/american.ts';
import css from './RecordPanel.module.css';
import { type RecordChoice, recordMenu } from './record-menu.ts';

export const choiceLabel = (choice: RecordChoice): string =>
  choice === 'sample' ? 'results of one sample' : kindNamed(choice).label;

/** Everything that can be written by hand, as links, so that a form can be opened in its own tab and the way back works. */
export function RecordMenu({ patient }: { patient: string }) {
  const inUnitWords = useUnitWords();
  return (
    <div className={css['menu']}>
      {recordMenu.map(({ group, choices }) => (
        <section key={group}>
          <h3>{inUnitWords(group)}</h3>
          <ul>
            {choices.map((choice) => (
              <li key={choice}>
                <Link to="/people/$patient" params={{ patient }} search={{ record: choice }}>
                  {choiceLabel(choice)}
                </Link>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </div>
  );
}
