import type { VisitView } from '@twelvemonth/exchange';
import { Why } from '../../paper/Why.tsx';
import { Verdict } from '../../verdict/Verdict.tsx';
import { useUnitWords } from '../../words/american.ts';
import { counted, sentence } from '../../words/texts.ts';
import css from '../Visit.module.css';

type Go = NonNullable<VisitView['go']>;

/** What keeps the dose from being given stands open with its reason; today's clearance too; the rest is one tap away. */
export function GoItems({ go }: { go: Go }) {
  const inUnitWords = useUnitWords();
  const holding = go.items.filter(({ verdict }) => verdict === 'not ready' || verdict === 'cannot say');
  const others = go.items.filter((item) => !holding.includes(item));
  return (
    <>
      {holding.length > 0 && <Items items={inUnitWords(holding)} />}
      {go.clearance !== undefined && (
        <p className={css['clearance']}>
          <strong>Clearance today:</strong> {go.clearance}
          {go.nearLimit && <strong> Near the limit.</strong>}
        </p>
      )}
      {others.length > 0 && (
        <div style={{ marginBottom: '1rem' }}>
          <Why
            about="for today"
            word={
              holding.length === 0
                ? `all ${counted(others.length, 'thing')}: ready, or does not apply`
                : `the other ${counted(others.length, 'thing')}: ready, or does not apply`
            }
          >
            <Items items={inUnitWords(others)} />
          </Why>
        </div>
      )}
    </>
  );
}

const Items = ({ items }: { items: Go['items'] }) => (
  <ul className={css['items']}>
    {items.map((item) => (
      <li key={`${item.title} ${item.says}`}>
        <strong>{item.title}</strong>
        <span>
          <Verdict is={item.verdict} />{' '}
          {item.says !== '' && item.verdict !== 'does not apply' && <span>{sentence(item.says)}</span>}
        </span>
      </li>
    ))}
  </ul>
);
