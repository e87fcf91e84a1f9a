import css from './Frame.module.css';

/** What stands on the screen until the server, or what this device keeps, has said who is here: never a blank page. */
export function Opening() {
  return (
    <main className={css['opening']}>
      <p className={css['openingName']}>Twelvemonth</p>
      <output>asking the server …</output>
      <p className="quiet">Where it does not answer, the day that this device keeps is shown in a moment.</p>
    </main>
  );
}
