import { numberGroups } from '@twelvemonth/clinical';
import { numbersAnchor } from './Numbers.tsx';
import css from './Protocol.module.css';

export const partsOfVersion = {
  regimens: 'Regimens',
  switches: 'From one medicine to another',
  'carry-on': 'What speaks for carrying on after the planned doses',
  paracetamol: 'Paracetamol by mouth after the dose',
  'questions-of-the-day': 'Questions of the day',
  policies: 'Policies',
} as const;

/** Where each part of a long sheet begins. */
export function PartsOfVersion() {
  return (
    <nav aria-label="Parts of the sheet" className={`screenOnly ${css['partsList']}`}>
      <ul>
        {numberGroups.map(({ title, keys }) => (
          <li key={title}>
            <a href={`#${numbersAnchor(title)}`}>{title}</a> <span className="quiet small">{keys.length}</span>
          </li>
        ))}
        {Object.entries(partsOfVersion).map(([id, title]) => (
          <li key={id}>
            <a href={`#${id}`}>{title}</a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
