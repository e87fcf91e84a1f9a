import css from './Frame.module.css';

/** Hatched and always in sight. */
export const DemoMark = () => <p className={css['demo']}>demo · nobody here is real</p>;
