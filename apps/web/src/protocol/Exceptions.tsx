import type { ProtocolView } from '@twelvemonth/exchange';
import { shortDay } from '../words/dates.ts';
import { counted, sentence } from '../words/texts.ts';
import css from './Protocol.module.css';

/** Exceptions that became a habit say that a rule, or how people are got ready for it, wants looking at. */
export function Exceptions({ from, until, doses, rules }: NonNullable<ProtocolView['exceptions']>) {
  const days = `${shortDay(from)} to ${shortDay(until)}`;
  return (
    <section aria-labelledby="exceptions">
      <h3 id="exceptions">Prescribers' exceptions, by rule</h3>
      <p className="quiet">
        {days}: {counted(doses, 'dose')} given here.{' '}
        {rules.length === 0
          ? 'No exception was written.'
          : 'A rule that is often passed over wants looking at: the rule itself, or how people are got ready.'}
      </p>
      {rules.length > 0 && (
        <table className={`stacks ${css['numbers']}`}>
          <thead>
            <tr>
              <th scope="col">rule</th>
              <th scope="col">exceptions written</th>
              <th scope="col">of how many people</th>
              <th scope="col">doses given while one stood</th>
            </tr>
          </thead>
          <tbody>
            {rules.map((rule) => (
              <tr key={rule.requirement}>
                <th scope="row" style={{ fontWeight: 400 }}>
                  {sentence(rule.requirement)}
                </th>
                <td>{rule.written}</td>
                <td>{rule.people}</td>
                <td>
                  {rule.doses} of {doses}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
