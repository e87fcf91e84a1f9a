/** Set where steps are typed in from a day sheet: each needs the time that stands there, and a check the name that signed it. */
import { createContext, useContext } from 'react';

export type FromPaper = { readonly checkers: readonly { readonly staff: string; readonly name: string }[] };

const fromPaper = createContext<FromPaper | undefined>(undefined);
export const FromPaperPlace = fromPaper.Provider;
export const useFromPaper = (): FromPaper | undefined => useContext(fromPaper);
