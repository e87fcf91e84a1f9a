import { Children, type ReactNode } from 'react';
import { useUnitWords } from './american.ts';

/** Sentences of ours in the words of the unit: every text that stands directly inside; what stands in an element of its own does not. */
export function InUnitWords({ children }: { readonly children: ReactNode }) {
  const words = useUnitWords();
  return Children.map(children, (child) => (typeof child === 'string' ? words(child) : child));
}
