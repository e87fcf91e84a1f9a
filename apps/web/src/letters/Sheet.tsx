import type { WrittenLetterView } from '@twelvemonth/exchange';
import css from './Letters.module.css';

type Letter = WrittenLetterView['sheet'];

/** A letter as it will stand on paper, on the screen. */
export function Sheet({ letter }: { letter: Letter }) {
  return (
    <article className={css['sheet']} lang={letter.language} aria-label={letter.title}>
      <p>{letter.from.join(', ')}</p>
      <p>{letter.dated}</p>
      <p>{letter.to.length === 0 ? 'nobody yet' : letter.to.join(', ')}</p>
      <p className={css['about']}>{letter.about === '' ? letter.title : letter.about}</p>
      <Blocks of={letter.blocks.filter(({ kind }) => kind !== 'reply')} />
      {letter.closing.map((text) => (
        <p key={text}>{text}</p>
      ))}
      <Blocks of={letter.blocks.filter(({ kind }) => kind === 'reply')} />
    </article>
  );
}

function Blocks({ of }: { of: Letter['blocks'] }) {
  return of.map((block, index) => (
    // The blocks of one letter never change places.
    // oxlint-disable-next-line react/no-array-index-key -- the order is the letter's own
    <Block key={index} block={block} />
  ));
}

function Block({ block }: { block: Letter['blocks'][number] }) {
  switch (block.kind) {
    case 'paragraph':
      return <p>{block.text}</p>;
    case 'list':
      return (
        <>
          <p className={css['about']}>{block.heading}</p>
          <ul>
            {block.items.map((item) => (
              <li key={item}>{item}</li>
            ))}
          </ul>
        </>
      );
    case 'facts':
      return (
        <>
          <p className={css['about']}>{block.heading}</p>
          <dl>
            {block.rows.map(([label, text]) => (
              <div key={label}>
                <dt>{label}</dt>
                <dd>{text}</dd>
              </div>
            ))}
          </dl>
        </>
      );
    case 'reply':
      return (
        <section className={css['reply']} aria-label={block.heading}>
          <p className={css['about']}>{block.heading}</p>
          <ol>
            {block.questions.map((question) => (
              <li key={question}>{question}</li>
            ))}
          </ol>
          <p>{block.sendBackTo}</p>
        </section>
      );
  }
}
