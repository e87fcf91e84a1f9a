import css from './Button.module.css';

export type Tone = 'act' | 'quiet' | 'plain';
export type Size = 'slim' | 'usual' | 'big';

/** Class names of a button, for buttons and for links that look like one. */
export const buttonLook = (tone: Tone = 'quiet', size: Size = 'usual'): string =>
  [css['button'], tone === 'quiet' ? '' : css[tone], size === 'usual' ? '' : css[size]].join(' ');
