/**
 * What was typed and cannot be read is not left out in silence: the browser does not send the form that holds the field, goes to
 * it and says why. As a `ref` of the input; undefined: it can be read, or is empty.
 */
export const unsendable =
  (says: string | undefined) =>
  (input: HTMLInputElement | null): void =>
    input?.setCustomValidity(says ?? '');
