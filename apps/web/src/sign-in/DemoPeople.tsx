import type { StatusView } from '@twelvemonth/exchange';
import css from './SignIn.module.css';

type Props = {
  readonly people: NonNullable<StatusView['demoPeople']>;
  readonly chosen: string;
  readonly choose: (username: string) => void;
};

/** The invented staff of the demonstration: a press fills the form in. */
export function DemoPeople({ people, chosen, choose }: Props) {
  return (
    <section aria-label="People of the demonstration">
      <h2 style={{ marginTop: '0.4rem' }}>In this demonstration you can be</h2>
      <p className="quiet small">Nobody here is real. Press a name, then sign in.</p>
      <div className={css['people']}>
        {people.map((person) => (
          <button
            key={person.username}
            type="button"
            className={css['person']}
            aria-pressed={chosen === person.username}
            onClick={() => choose(person.username)}
          >
            <strong>{person.name}</strong>
            <span>{person.roles.join(', ')}</span>
          </button>
        ))}
      </div>
    </section>
  );
}
